package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** Bodies made to harm and senders made to hold, against the packaged service. */
class HostileInputIT {

    private static final long MEGABYTE = 1L << 20;
    private static final long HEAP_GROWTH_BYTES = 50 * MEGABYTE;
    private static final String EVENT = """
            {"specversion": "1.0", "type": "org.axlecause.finding.recorded.v1", "source": "/sites/quay-street",
             "id": "hostile", "subject": "HOSTILE", "time": "2026-03-02T08:15:00Z", "data": %s}""";

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    private Path folder;

    @Test
    void bodies_made_to_harm_are_refused_and_leave_no_memory_behind() throws Exception {
        bodiesMadeToHarm(3);
    }

    @Test
    @Tag("durability")
    void bodies_made_to_harm_are_refused_a_hundred_times_and_leave_no_memory_behind() throws Exception {
        bodiesMadeToHarm(100);
    }

    @Test
    void slow_senders_are_cut_off_and_others_are_served_beside_them() throws Exception {
        slowSenders(100, Duration.ofSeconds(5));
    }

    @Test
    @Tag("durability")
    void a_thousand_slow_senders_are_cut_off_and_others_are_served_beside_them() throws Exception {
        slowSenders(1000, Duration.ofSeconds(30));
    }

    private void bodiesMadeToHarm(int times) throws Exception {
        Map<String, byte[]> bodies = bodies();
        try (PackagedService service = new PackagedService(folder).start()) {
            service.putSite();
            bodies.forEach((name, body) -> refused(service, name, body));
            long before = service.heapAfterCollection();

            Map<String, Long> medians = new LinkedHashMap<>();
            bodies.forEach((name, body) -> {
                long[] millis = new long[times];
                for (int time = 0; time < times; time++) {
                    millis[time] = refused(service, name, body);
                }
                Arrays.sort(millis);
                medians.put(name, millis[times / 2]);
            });

            long growth = service.heapAfterCollection() - before;
            System.out.printf(
                    "bodies made to harm, %d times each, median ms: %s; heap grew by %d kB%n",
                    times, medians, growth / 1024);
            assertThat(growth).isLessThan(HEAP_GROWTH_BYTES);
            assertThat(service.present("AFTER-HARM").body()).contains("\"accepted\"");
            assertThat(service.statusOf("/v1/cases/HOSTILE")).isEqualTo(404);
        }
    }

    /** Sends it as one event; how long the refusal took, in milliseconds. */
    private static long refused(PackagedService service, String name, byte[] body) {
        StringBuilder head = new StringBuilder("POST /v1/events HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n"
                + "Content-Type: application/cloudevents+json\r\nContent-Length: " + body.length + "\r\n");
        if (name.startsWith("compressed")) {
            head.append("Content-Encoding: gzip\r\n");
        }
        head.append("\r\n");
        byte[] request = concatenated(head.toString().getBytes(StandardCharsets.US_ASCII), body);
        try {
            long begin = System.nanoTime();
            RawHttp.Answer answer = RawHttp.exchange(service.port(), request);
            long millis = Duration.ofNanos(System.nanoTime() - begin).toMillis();
            assertThat(answer.status()).as("%s: %s", name, answer.body()).isBetween(400, 499);
            assertThat(answer.headers()).as(name).containsEntry("content-type", "application/problem+json");
            return millis;
        } catch (IOException e) {
            throw new AssertionError(name, e);
        }
    }

    private static Map<String, byte[]> bodies() throws IOException {
        Map<String, byte[]> bodies = new LinkedHashMap<>();
        bodies.put("longer than the limit", new byte[(int) (9 * MEGABYTE) + 1]);
        bodies.put("levels", event("[".repeat(5000) + "]".repeat(5000)));
        bodies.put("array of a million", event("[" + "1,".repeat(999_999) + "1]"));
        bodies.put("string of eight megabytes", event('"' + "x".repeat((int) (8 * MEGABYTE)) + '"'));
        bodies.put("names twice", event("{\"stage\": \"as-found\", \"stage\": \"after-work\"}"));
        bodies.put("U+0000", event("{\"note\": \"\\u0000\"}"));
        bodies.put("half a surrogate", event("{\"note\": \"\\ud800\"}"));
        bodies.put("no UTF-8", EVENT.formatted("\"\u00ff\"").getBytes(StandardCharsets.ISO_8859_1));
        bodies.put("no number", event("{\"value\": NaN}"));
        bodies.put("huge number", event("{\"value\": 1e999999999}"));
        bodies.put("long number", event("{\"value\": " + "9".repeat(500_000) + "}"));
        ByteArrayOutputStream bomb = new ByteArrayOutputStream();
        try (OutputStream compressed = new GZIPOutputStream(bomb)) {
            byte[] zeros = new byte[(int) MEGABYTE];
            for (int megabyte = 0; megabyte < 200; megabyte++) {
                compressed.write(zeros);
            }
        }
        bodies.put("compressed 200 megabytes", bomb.toByteArray());
        return bodies;
    }

    private static byte[] event(String data) {
        return text(EVENT.formatted(data));
    }

    private void slowSenders(int count, Duration deadline) throws Exception {
        try (PackagedService service = new PackagedService(folder)
                .with("AXLECAUSE_REQUEST_DEADLINE", deadline.toString())
                .start()) {
            service.putSite();
            long[] alone = latencies(service, "ALONE", 200);
            List<Socket> slow = new ArrayList<>();
            long begin = System.nanoTime();
            for (int number = 0; number < count; number++) {
                Socket socket = new Socket(InetAddress.getLoopbackAddress(), service.port());
                slow.add(socket);
                socket.getOutputStream()
                        .write(text(
                                number % 2 == 0
                                        ? "POST /v1/events HTTP/1.1\r\nHost: a\r\nX-Slow: "
                                        : "POST /v1/events HTTP/1.1\r\nHost: a\r\nContent-Type: application/cloudevents+json\r\n"
                                                + "Content-Length: 1000000\r\n\r\n{"));
            }
            long[] beside = latencies(service, "BESIDE", 200);
            int trickles = 0;
            while (!slow.isEmpty()
                    && System.nanoTime() - begin < deadline.multipliedBy(3).toNanos()) {
                slow.removeIf(HostileInputIT::isCutOff);
                trickles++;
            }
            Duration cutOff = Duration.ofNanos(System.nanoTime() - begin);

            System.out.printf(
                    "%d slow senders, %d rounds of a byte each, all cut off after %d ms; p99 of others alone %d us, beside %d us%n",
                    count, trickles, cutOff.toMillis(), alone[198], beside[198]);
            assertThat(slow).as("senders that still hold a connection").isEmpty();
            assertThat(cutOff).isLessThan(deadline.plusSeconds(5));
            assertThat(service.statusOf("/q/health/live")).isEqualTo(200);
        }
    }

    /** Sends one byte more; whether the other side has closed. */
    private static boolean isCutOff(Socket socket) {
        try {
            socket.getOutputStream().write('a');
            socket.setSoTimeout(1);
            if (socket.getInputStream().read() < 0) {
                socket.close();
                return true;
            }
            return false;
        } catch (SocketTimeoutException open) {
            return false;
        } catch (IOException closed) {
            return true;
        }
    }

    private static long[] latencies(PackagedService service, String name, int count) throws Exception {
        long[] micros = new long[count];
        for (int number = 0; number < count; number++) {
            long begin = System.nanoTime();
            assertThat(service.present(name + "-" + number).statusCode()).isEqualTo(200);
            micros[number] = (System.nanoTime() - begin) / 1000;
        }
        Arrays.sort(micros);
        return micros;
    }

    private static byte[] text(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] concatenated(byte[] one, byte[] other) {
        byte[] both = Arrays.copyOf(one, one.length + other.length);
        System.arraycopy(other, 0, both, one.length, other.length);
        return both;
    }
}
