package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.Closeable;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.axlecause.shared.FreePort;
import org.axlecause.shared.Json;

/** The folder that the build made, started as an operator starts it: by environment, in a process of its own. */
final class PackagedService implements Closeable {

    static final Path APPLICATION = Path.of("target", "quarkus-app").toAbsolutePath();

    private static final Path OPTIONS = Path.of("deploy", "jvm.options").toAbsolutePath();

    /** Starts in half the time; what is slower afterwards matters to tests of speed alone. */
    private static final List<String> QUICK = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC");

    private static final Duration START = Duration.ofMinutes(5);
    private static final Duration STOP = Duration.ofSeconds(60);
    private static final Pattern HEAP_USED = Pattern.compile("used (\\d+)K");
    private static final Pattern KEY = Pattern.compile("axc_\\S+");
    private static final String EVENT = """
            {"specversion": "1.0", "type": "org.axlecause.vehicle.presented.v1", "source": "/sites/quay-street",
             "id": "presented-%1$s", "subject": "%1$s", "time": "2026-03-02T08:15:00Z",
             "data": {"site": "quay-street", "reason": "complaint", "regime": "gb-annual",
                      "vehicle": {"category": "N1", "make": "Corvane", "model": "Portal",
                                  "axles": [{"number": 1, "steered": true, "brake": "disc-floating"},
                                            {"number": 2, "brake": "drum-simplex"}]}}}
            """;

    private final Map<String, String> environment = new TreeMap<>();
    private final List<String> launcher = new ArrayList<>();
    private final List<String> options = new ArrayList<>(QUICK);
    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
    private final int port = FreePort.find();
    private final Path folder;
    private Path application = APPLICATION;
    private Process process;
    private String bearer = "";

    /** A service that keeps its data and its log in this folder. */
    PackagedService(Path folder) {
        this.folder = folder;
        with("AXLECAUSE_DATA_DIR", folder.resolve("embedded").toString());
        with("AXLECAUSE_DEMO", "false");
        with("QUARKUS_HTTP_PORT", String.valueOf(port));
    }

    PackagedService with(String name, String value) {
        environment.put(name, value);
        return this;
    }

    /** Makes a key by the command of the service, which must not be running. */
    String makeKey(String tenant, String role) throws IOException, InterruptedException {
        assertThat(run("make-key", "--tenant", tenant, "--role", role)).isZero();
        return KEY.matcher(log())
                .results()
                .map(MatchResult::group)
                .reduce((earlier, latest) -> latest)
                .orElseThrow();
    }

    /** Sends this key along from now on. */
    PackagedService as(String key) {
        bearer = key;
        return this;
    }

    PackagedService launchedBy(List<String> command) {
        launcher.addAll(command);
        return this;
    }

    /** Lets the virtual machine do as it does without options. */
    PackagedService atFullSpeed() {
        options.clear();
        return this;
    }

    /** Starts it with the options that ship, and these. */
    PackagedService asShipped(String... more) {
        options.clear();
        options.add("@" + OPTIONS);
        options.addAll(List.of(more));
        return this;
    }

    PackagedService from(Path copy) {
        application = copy;
        return this;
    }

    Process process() {
        return process;
    }

    int port() {
        return port;
    }

    /** Bytes in use on the heap once garbage was collected. */
    long heapAfterCollection() throws IOException, InterruptedException {
        tell("GC.run");
        Matcher used = HEAP_USED.matcher(tell("GC.heap_info"));
        assertThat(used.find()).isTrue();
        return Long.parseLong(used.group(1)) * 1024;
    }

    private String tell(String command) throws IOException, InterruptedException {
        Process jcmd = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "jcmd").toString(),
                        String.valueOf(process.pid()),
                        command)
                .redirectErrorStream(true)
                .start();
        String answer = new String(jcmd.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(jcmd.waitFor()).as(answer).isZero();
        return answer;
    }

    String log() throws IOException {
        return Files.readString(folder.resolve("service.log"));
    }

    /** Starts the service and waits until it is ready. */
    PackagedService start() throws IOException, InterruptedException {
        process = launch(List.of());
        long deadline = System.nanoTime() + START.toNanos();
        while (statusOf("/q/health/ready") != 200) {
            assertThat(process.isAlive() && System.nanoTime() < deadline)
                    .as("service is ready; its log: %s", log())
                    .isTrue();
            TimeUnit.MILLISECONDS.sleep(100);
        }
        return this;
    }

    /** Runs a command of the service, or a service that refuses to start, to its end; its exit code. */
    int run(String... arguments) throws IOException, InterruptedException {
        return run(START, arguments);
    }

    /** Runs a command that may take so long. */
    int run(Duration most, String... arguments) throws IOException, InterruptedException {
        Process command = launch(List.of(arguments));
        assertThat(command.waitFor(most.toSeconds(), TimeUnit.SECONDS))
                .as("it ends; its log: %s", log())
                .isTrue();
        return command.exitValue();
    }

    /** Asks the service to stop, as an operator does, and waits for its end; how long that took. */
    Duration stop() {
        long begin = System.nanoTime();
        process.destroy();
        assertThat(process.onExit()).as("the service ends").succeedsWithin(STOP);
        return Duration.ofNanos(System.nanoTime() - begin);
    }

    @Override
    public void close() {
        if (process != null && process.isAlive()) {
            stop();
        }
    }

    HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send(request(path));
    }

    /** The status, or 0 where nobody answers. */
    int statusOf(String path) throws InterruptedException {
        try {
            return get(path).statusCode();
        } catch (IOException nobody) {
            return 0;
        }
    }

    JsonNode json(String path) throws IOException, InterruptedException {
        HttpResponse<String> answer = get(path);
        assertThat(answer.statusCode())
                .as("status of %s: %s", path, answer.body())
                .isEqualTo(200);
        return Json.mapper().readTree(answer.body());
    }

    void putSite() throws IOException, InterruptedException {
        HttpResponse<String> answer = send(request("/v1/sites/quay-street")
                .header("Content-Type", "application/json")
                .PUT(BodyPublishers.ofString("""
                        {"name": "Quay Street", "timeZone": "Europe/London", "currency": "GBP", "regime": "gb-annual"}
                        """)));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    }

    /** Sends the first event of a case. */
    HttpResponse<String> present(String reference) throws IOException, InterruptedException {
        return take(EVENT.formatted(reference));
    }

    /** Sends one event in its JSON format. */
    HttpResponse<String> take(String event) throws IOException, InterruptedException {
        return send(events("application/cloudevents+json", event));
    }

    /** Sends a batch of events. */
    HttpResponse<String> batch(String events) throws IOException, InterruptedException {
        return send(events("application/cloudevents-batch+json", events));
    }

    /** Puts a document; it must be taken. */
    JsonNode put(String path, String body) throws IOException, InterruptedException {
        return taken(request(path).header("Content-Type", "application/json").PUT(BodyPublishers.ofString(body)));
    }

    /** Posts a document, over whatever is there; it must be taken. */
    JsonNode post(String path, String body) throws IOException, InterruptedException {
        return taken(request(path)
                .header("Content-Type", "application/json")
                .header("If-Match", "*")
                .POST(BodyPublishers.ofString(body)));
    }

    private JsonNode taken(HttpRequest.Builder request) throws IOException, InterruptedException {
        HttpResponse<String> answer = send(request);
        assertThat(answer.statusCode()).as(answer.body()).isBetween(200, 299);
        return Json.mapper().readTree(answer.body());
    }

    HttpRequest.Builder events(String type, String body) {
        return request("/v1/events").header("Content-Type", type).POST(BodyPublishers.ofString(body));
    }

    HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.build(), BodyHandlers.ofString());
    }

    private HttpRequest.Builder request(String path) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
                .timeout(Duration.ofSeconds(60));
        return bearer.isEmpty() ? request : request.header("Authorization", "Bearer " + bearer);
    }

    private Process launch(List<String> arguments) throws IOException {
        List<String> line = new ArrayList<>(launcher);
        line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        line.addAll(options);
        line.add("-jar");
        line.add(application.resolve("quarkus-run.jar").toString());
        line.addAll(arguments);
        ProcessBuilder command = new ProcessBuilder(line)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        folder.resolve("service.log").toFile()));
        List.of("QUARKUS_DATASOURCE_JDBC_URL", "JAVA_TOOL_OPTIONS").forEach(command.environment()::remove);
        command.environment().putAll(environment);
        return command.start();
    }
}
