package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.axlecause.shared.Await;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** What operators see of the packaged service: log, traces, bill of materials. */
class ObservabilityIT {

    private static final String TRACE = "4bf92f3577b34da6a3ce929d0e0e4736";

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    private Path folder;

    /** Source of the header: W3C Trace Context, section 3.2; of the message: OTLP 1, {@code trace_id} as 16 bytes. */
    @Test
    void the_callers_trace_stands_in_the_log_and_goes_to_the_collector() throws Exception {
        List<byte[]> exported = new CopyOnWriteArrayList<>();
        HttpServer collector = collector(exported);
        try (PackagedService service = new PackagedService(folder)
                .with("QUARKUS_LOG_CONSOLE_JSON_ENABLED", "true")
                .with("QUARKUS_LOG_LEVEL", "DEBUG")
                .with("QUARKUS_OTEL_SDK_DISABLED", "false")
                .with("QUARKUS_OTEL_EXPORTER_OTLP_PROTOCOL", "http/protobuf")
                .with(
                        "QUARKUS_OTEL_EXPORTER_OTLP_ENDPOINT",
                        "http://127.0.0.1:" + collector.getAddress().getPort())
                .start()) {
            service.send(HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + service.port() + "/v1/sites"))
                    .header("traceparent", "00-" + TRACE + "-00f067aa0ba902b7-01"));

            Await.until("the collector has the trace", () -> exported.stream().anyMatch(ObservabilityIT::hasTrace));
            assertThat(lines(service))
                    .isNotEmpty()
                    .anySatisfy(
                            line -> assertThat(line.path("mdc").path("traceId").asText())
                                    .isEqualTo(TRACE));
        } finally {
            collector.stop(0);
        }
    }

    @Test
    void without_a_word_of_the_operator_no_trace_is_made_and_each_line_of_the_log_is_an_object_if_wished()
            throws Exception {
        try (PackagedService service = new PackagedService(folder)
                .with("QUARKUS_LOG_CONSOLE_JSON_ENABLED", "true")
                .with("QUARKUS_LOG_LEVEL", "DEBUG")
                .start()) {
            service.get("/v1/sites");

            assertThat(lines(service)).isNotEmpty().allSatisfy(line -> {
                assertThat(line.path("timestamp").asText()).isNotEmpty();
                assertThat(line.path("level").asText()).isNotEmpty();
                assertThat(line.path("message").isTextual()).isTrue();
                assertThat(line.path("mdc").has("traceId")).isFalse();
            });
        }
    }

    /** Source: CycloneDX, {@code bomFormat} and {@code components} with package URLs. */
    @Test
    void the_build_lists_what_the_package_holds() throws IOException {
        JsonNode bill = Json.mapper()
                .readTree(Path.of("target", "quarkus-run-cyclonedx.json").toFile());
        List<String> packages = bill.path("components").findValuesAsText("purl");

        assertThat(bill.path("bomFormat").asText()).isEqualTo("CycloneDX");
        assertThat(packages)
                .anyMatch(name -> name.startsWith("pkg:maven/org.drools/drools-core@"))
                .anyMatch(name -> name.startsWith("pkg:maven/org.postgresql/postgresql@"))
                .noneMatch(name -> name.startsWith("pkg:maven/org.assertj/"));
        try (var jars = Files.list(PackagedService.APPLICATION.resolve(Path.of("lib", "main")))) {
            assertThat(jars.map(jar -> jar.getFileName().toString()))
                    .allSatisfy(jar -> assertThat(listed(packages)).anyMatch(jar::contains));
        }
    }

    private static List<String> listed(List<String> packages) {
        return packages.stream()
                .map(name -> name.replaceFirst("^pkg:maven/[^/]+/", "").replaceFirst("\\?.*", ""))
                .map(name -> name.replace('@', '-'))
                .toList();
    }

    private static List<JsonNode> lines(PackagedService service) throws IOException {
        List<JsonNode> lines = new ArrayList<>();
        for (String line : service.log().lines().toList()) {
            lines.add(Json.mapper().readTree(line));
        }
        return lines;
    }

    private static HttpServer collector(List<byte[]> exported) throws IOException {
        HttpServer collector = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        collector.createContext("/", exchange -> {
            exported.add(exchange.getRequestBody().readAllBytes());
            exchange.getResponseHeaders().add("Content-Type", "application/x-protobuf");
            exchange.sendResponseHeaders(200, -1);
            exchange.close();
        });
        collector.start();
        return collector;
    }

    private static boolean hasTrace(byte[] message) {
        return new String(message, StandardCharsets.ISO_8859_1)
                .contains(new String(HexFormat.of().parseHex(TRACE), StandardCharsets.ISO_8859_1));
    }
}
