package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** The packaged service with its embedded database, killed in the middle of its work and started again. */
class PackagedServiceIT {

    private static final int POSTS = 200;
    private static final int ACKNOWLEDGED_BEFORE_THE_KILL = 60;

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    private Path data;

    private PackagedService service;

    @Test
    void what_was_acknowledged_before_a_kill_is_there_once_after_a_restart_and_is_judged() throws Exception {
        start();
        service.putSite();
        ConcurrentSkipListSet<Integer> acknowledged = new ConcurrentSkipListSet<>();
        CountDownLatch enough = new CountDownLatch(ACKNOWLEDGED_BEFORE_THE_KILL);
        ExecutorService senders = Executors.newFixedThreadPool(16);
        List<CompletableFuture<Void>> posts = IntStream.range(0, POSTS)
                .mapToObj(number -> CompletableFuture.runAsync(() -> post(number, acknowledged, enough), senders))
                .toList();
        assertThat(enough.await(60, TimeUnit.SECONDS)).isTrue();

        service.process().destroyForcibly().waitFor();
        posts.forEach(CompletableFuture::join);
        senders.shutdown();
        start();

        assertThat(acknowledged).hasSizeBetween(ACKNOWLEDGED_BEFORE_THE_KILL, POSTS);
        for (int number : acknowledged) {
            JsonNode events = service.json("/v1/cases/KILL-" + number + "/events");
            assertThat(events.findValuesAsText("id"))
                    .as("events of case %d", number)
                    .containsExactly("presented-KILL-" + number);
        }
        List<String> stored = service.json("/v1/cases?limit=200").findValuesAsText("reference");
        assertThat(stored).doesNotHaveDuplicates().hasSizeGreaterThanOrEqualTo(acknowledged.size());
        for (String reference : stored) {
            assertThat(service.json("/v1/cases/" + reference).path("version").asInt())
                    .as("judged version of %s", reference)
                    .isEqualTo(1);
        }
        for (int number : acknowledged) {
            assertThat(service.present("KILL-" + number).body()).contains("\"duplicate\"");
        }
    }

    @Test
    void the_first_key_is_made_by_a_command_and_opens_a_service_with_the_invented_chain() throws Exception {
        service = new PackagedService(data).with("AXLECAUSE_DEMO", "true").with("AXLECAUSE_ACCESS", "keys");

        String key = service.makeKey("demo", "admin");
        service.start();

        assertThat(service.statusOf("/v1/cases")).isEqualTo(401);
        HttpResponse<String> cases = service.as(key).get("/v1/cases");
        assertThat(cases.statusCode()).isEqualTo(200);
        assertThat(cases.body()).contains("\"site\":\"mill-bridge\"");
    }

    @Test
    void the_packaged_service_judges_by_the_rules_that_its_build_compiled() throws Exception {
        start();
        service.putSite();
        Path scenario = Path.of("src/test/resources/scenarios/leaking-cylinder-and-tight-twin");

        HttpResponse<String> answer = service.send(
                service.events("application/cloudevents-batch+json", Files.readString(scenario.resolve("given.json")))
                        .header("Prefer", "return=representation"));

        ObjectNode document = (ObjectNode) Json.mapper().readTree(answer.body());
        document.remove("rulebook");
        assertThat(document.toPrettyString())
                .isEqualTo(Json.mapper()
                        .readTree(Files.readString(scenario.resolve("expected.json")))
                        .toPrettyString());
    }

    @Test
    void a_sender_that_trickles_is_cut_at_the_deadline() throws Exception {
        start();
        try (Socket head = trickling("GET /v1/cases HTTP/1.1\r\nHost: a\r\n");
                Socket body = trickling("POST /v1/events HTTP/1.1\r\nHost: a\r\nContent-Length: 500\r\n\r\n{")) {
            for (Socket socket : List.of(head, body)) {
                assertThat(answerWhileTrickling(socket))
                        .startsWith("HTTP/1.1 408 ")
                        .contains("\"code\":\"request-timeout\"");
            }
        }
        assertThat(service.get("/v1/cases").statusCode()).isEqualTo(200);
    }

    @Test
    void the_package_holds_no_compiler_and_no_test_code() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("target", "quarkus-app"))) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .contains("quarkus-run.jar")
                    .noneMatch(name -> name.matches(
                            ".*(\\.ecj-|javaparser|model-codegen|mvel|drl-parser|antlr-runtime|jdk\\.compiler).*"))
                    .noneMatch(name -> name.matches(".*(junit|assertj|rest-assured|archunit|jmh).*"));
        }
    }

    private Socket trickling(String begun) throws IOException {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), service.port());
        socket.setSoTimeout(500);
        socket.getOutputStream().write(begun.getBytes(StandardCharsets.US_ASCII));
        return socket;
    }

    /** What comes back while a byte is sent every half second, well before the connection counts as idle. */
    private static String answerWhileTrickling(Socket socket) throws IOException {
        for (int sent = 0; sent < 120; sent++) {
            try {
                return new String(socket.getInputStream().readNBytes(500), StandardCharsets.UTF_8);
            } catch (SocketTimeoutException notYet) {
                socket.getOutputStream().write(' ');
            }
        }
        return "";
    }

    @AfterEach
    void stop() {
        if (service != null) {
            service.close();
        }
    }

    private void start() throws IOException, InterruptedException {
        service = new PackagedService(data)
                .with("AXLECAUSE_REQUEST_DEADLINE", "PT3S")
                .start();
    }

    private void post(int number, ConcurrentSkipListSet<Integer> acknowledged, CountDownLatch enough) {
        try {
            HttpResponse<String> answer = service.present("KILL-" + number);
            if (answer.statusCode() == 200 && answer.body().contains("\"accepted\"")) {
                acknowledged.add(number);
                enough.countDown();
            }
        } catch (IOException killed) {
            // The kill cuts requests off; what was not acknowledged promises nothing.
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
