package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
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
    private static final Duration START = Duration.ofMinutes(2);
    private static final String EVENT = """
            {"specversion": "1.0", "type": "org.axlecause.vehicle.presented.v1", "source": "/sites/quay-street",
             "id": "presented-%1$d", "subject": "KILL-%1$d", "time": "2026-03-02T08:15:00Z",
             "data": {"site": "quay-street", "reason": "complaint", "regime": "gb-annual",
                      "vehicle": {"category": "N1", "make": "Corvane", "model": "Portal",
                                  "axles": [{"number": 1, "steered": true, "brake": "disc-floating"},
                                            {"number": 2, "brake": "drum-simplex"}]}}}
            """;

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    private Path data;

    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
    private final int port = freePort();
    private Process service;

    @Test
    void what_was_acknowledged_before_a_kill_is_there_once_after_a_restart_and_is_judged() throws Exception {
        start();
        assertThat(putSite().statusCode()).isEqualTo(200);
        ConcurrentSkipListSet<Integer> acknowledged = new ConcurrentSkipListSet<>();
        CountDownLatch enough = new CountDownLatch(ACKNOWLEDGED_BEFORE_THE_KILL);
        ExecutorService senders = Executors.newFixedThreadPool(16);
        List<CompletableFuture<Void>> posts = IntStream.range(0, POSTS)
                .mapToObj(number -> CompletableFuture.runAsync(() -> post(number, acknowledged, enough), senders))
                .toList();
        assertThat(enough.await(60, TimeUnit.SECONDS)).isTrue();

        service.destroyForcibly().waitFor();
        posts.forEach(CompletableFuture::join);
        senders.shutdown();
        start();

        assertThat(acknowledged).hasSizeBetween(ACKNOWLEDGED_BEFORE_THE_KILL, POSTS);
        for (int number : acknowledged) {
            JsonNode events = json("/v1/cases/KILL-" + number + "/events");
            assertThat(events.findValuesAsText("id"))
                    .as("events of case %d", number)
                    .containsExactly("presented-" + number);
        }
        List<String> stored = json("/v1/cases?limit=200").findValuesAsText("reference");
        assertThat(stored).doesNotHaveDuplicates().hasSizeGreaterThanOrEqualTo(acknowledged.size());
        for (String reference : stored) {
            assertThat(json("/v1/cases/" + reference).path("version").asInt())
                    .as("judged version of %s", reference)
                    .isEqualTo(1);
        }
        for (int number : acknowledged) {
            assertThat(send(number).body()).contains("\"duplicate\"");
        }
    }

    @Test
    void the_packaged_service_judges_by_the_rules_that_its_build_compiled() throws Exception {
        start();
        assertThat(putSite().statusCode()).isEqualTo(200);
        Path scenario = Path.of("src/test/resources/scenarios/leaking-cylinder-and-tight-twin");

        HttpResponse<String> answer = client.send(
                HttpRequest.newBuilder(uri("/v1/events"))
                        .header("Content-Type", "application/cloudevents-batch+json")
                        .header("Prefer", "return=representation")
                        .timeout(Duration.ofSeconds(60))
                        .POST(HttpRequest.BodyPublishers.ofFile(scenario.resolve("given.json")))
                        .build(),
                BodyHandlers.ofString());

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
        assertThat(get("/v1/cases").statusCode()).isEqualTo(200);
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
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), port);
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
    void stop() throws InterruptedException {
        if (service != null && service.isAlive()) {
            service.destroy();
            service.waitFor(30, TimeUnit.SECONDS);
        }
    }

    private void start() throws IOException, InterruptedException {
        ProcessBuilder command = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-jar",
                        Path.of("target", "quarkus-app", "quarkus-run.jar").toString())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        data.resolve("service.log").toFile()));
        command.environment()
                .putAll(Map.of(
                        "AXLECAUSE_DATA_DIR",
                        data.resolve("embedded").toString(),
                        "AXLECAUSE_DEMO",
                        "false",
                        "AXLECAUSE_REQUEST_DEADLINE",
                        "PT3S",
                        "QUARKUS_HTTP_PORT",
                        String.valueOf(port)));
        command.environment().remove("QUARKUS_DATASOURCE_JDBC_URL");
        service = command.start();
        long deadline = System.nanoTime() + START.toNanos();
        while (!ready()) {
            assertThat(service.isAlive() && System.nanoTime() < deadline)
                    .as("service is ready; its log: %s", Files.readString(data.resolve("service.log")))
                    .isTrue();
            TimeUnit.MILLISECONDS.sleep(200);
        }
    }

    private boolean ready() throws InterruptedException {
        try {
            return get("/q/health/ready").statusCode() == 200;
        } catch (IOException notYet) {
            return false;
        }
    }

    private void post(int number, ConcurrentSkipListSet<Integer> acknowledged, CountDownLatch enough) {
        try {
            HttpResponse<String> answer = send(number);
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

    private HttpResponse<String> send(int number) throws IOException, InterruptedException {
        return client.send(
                HttpRequest.newBuilder(uri("/v1/events"))
                        .header("Content-Type", "application/cloudevents+json")
                        .timeout(Duration.ofSeconds(30))
                        .POST(HttpRequest.BodyPublishers.ofString(EVENT.formatted(number)))
                        .build(),
                BodyHandlers.ofString());
    }

    private HttpResponse<String> putSite() throws IOException, InterruptedException {
        return client.send(
                HttpRequest.newBuilder(uri("/v1/sites/quay-street"))
                        .header("Content-Type", "application/json")
                        .timeout(Duration.ofSeconds(30))
                        .PUT(HttpRequest.BodyPublishers.ofString("""
                                {"name": "Quay Street", "timeZone": "Europe/London", "currency": "GBP",
                                 "regime": "gb-annual"}
                                """))
                        .build(),
                BodyHandlers.ofString());
    }

    private JsonNode json(String path) throws IOException, InterruptedException {
        HttpResponse<String> answer = get(path);
        assertThat(answer.statusCode())
                .as("status of %s: %s", path, answer.body())
                .isEqualTo(200);
        return Json.mapper().readTree(answer.body());
    }

    private HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return client.send(
                HttpRequest.newBuilder(uri(path))
                        .timeout(Duration.ofSeconds(10))
                        .build(),
                BodyHandlers.ofString());
    }

    private URI uri(String path) {
        return URI.create("http://127.0.0.1:" + port + path);
    }

    private static int freePort() {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        } catch (IOException noPort) {
            throw new IllegalStateException(noPort);
        }
    }
}
