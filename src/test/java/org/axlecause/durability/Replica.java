package org.axlecause.durability;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** The packaged service as a process of its own on a database that several may share. */
final class Replica implements AutoCloseable {

    private static final Duration START = Duration.ofMinutes(2);
    private static final Duration ANSWER = Duration.ofSeconds(30);

    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
    private final int port = freePort();
    private final Path log;
    private final Map<String, String> settings;
    private Process process;

    private Replica(Path folder, Map<String, String> settings) throws IOException {
        log = Files.createTempFile(folder, "replica-", ".log");
        this.settings = Map.copyOf(settings);
        process = launch();
    }

    /** Starts a replica and waits until it is ready. */
    static Replica start(Path folder, Map<String, String> settings) throws IOException, InterruptedException {
        Replica replica = new Replica(folder, settings);
        replica.awaitReady();
        return replica;
    }

    /** Ends the process at once, as a power cut would, and starts another at the same address. */
    void killAndRestart() throws IOException, InterruptedException {
        kill();
        process = launch();
        awaitReady();
    }

    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    boolean isRunning() {
        return process.isAlive();
    }

    /** Posts one event in the JSON format. */
    HttpResponse<String> post(String event) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder(uri("/v1/events"))
                .header("Content-Type", "application/cloudevents+json")
                .timeout(ANSWER)
                .POST(HttpRequest.BodyPublishers.ofString(event)));
    }

    HttpResponse<String> put(String path, String body) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder(uri(path))
                .header("Content-Type", "application/json")
                .timeout(ANSWER)
                .PUT(HttpRequest.BodyPublishers.ofString(body)));
    }

    HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder(uri(path)).timeout(ANSWER));
    }

    void awaitReady() throws IOException, InterruptedException {
        long deadline = System.nanoTime() + START.toNanos();
        while (!isReady()) {
            assertThat(process.isAlive() && System.nanoTime() < deadline)
                    .as("the replica is ready; its log: %s", Files.readString(log))
                    .isTrue();
            TimeUnit.MILLISECONDS.sleep(100);
        }
    }

    private boolean isReady() throws InterruptedException {
        try {
            return get("/q/health/ready").statusCode() == 200;
        } catch (IOException notYet) {
            return false;
        }
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.build(), BodyHandlers.ofString());
    }

    private Process launch() throws IOException {
        ProcessBuilder command = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-jar",
                        Path.of("target", "quarkus-app", "quarkus-run.jar").toString())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
        settings.forEach((name, value) ->
                command.environment().put(name.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "_"), value));
        command.environment().put("QUARKUS_HTTP_PORT", String.valueOf(port));
        command.environment().put("AXLECAUSE_DEMO", "false");
        return command.start();
    }

    private URI uri(String path) {
        return URI.create("http://127.0.0.1:" + port + path);
    }

    private static int freePort() {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(30, TimeUnit.SECONDS)) {
                kill();
            }
        } catch (InterruptedException stopped) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }
}
