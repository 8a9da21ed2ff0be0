package org.axlecause;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Sends requests over a fixed number of kept connections, each the next one after its answer. It costs as little of the
 * machine as it can, since it shares it with what it measures.
 */
final class LoadLoop {

    static final int CONNECTIONS = 16;

    private static final double NANOS = 1e9;
    private static final int TIMEOUT_MILLIS = 60_000;

    private final List<Integer> ports;
    private final int connections;

    LoadLoop(int port, int connections) {
        this(List.of(port), connections);
    }

    /** Sends over connections that take turns at these ports. */
    LoadLoop(List<Integer> ports, int connections) {
        this.ports = List.copyOf(ports);
        this.connections = connections;
    }

    /** The bytes of a request with a body. */
    static byte[] post(String path, String type, String body) {
        byte[] content = body.getBytes(StandardCharsets.UTF_8);
        byte[] head = ("POST " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: " + type + "\r\nContent-Length: "
                        + content.length + "\r\n\r\n")
                .getBytes(StandardCharsets.ISO_8859_1);
        byte[] request = Arrays.copyOf(head, head.length + content.length);
        System.arraycopy(content, 0, request, head.length, content.length);
        return request;
    }

    /** The bytes of a request without a body; headers end each in CR LF. */
    static byte[] get(String path, String headers) {
        return ("GET " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\n" + headers + "\r\n")
                .getBytes(StandardCharsets.ISO_8859_1);
    }

    /** As fast as it goes, until the time is over or nothing is left to send. */
    Outcome fullSpeed(Duration time, Supplier<byte @Nullable []> requests) throws Exception {
        return run(time, 0, requests);
    }

    /** So many requests a second; an answer's time counts from the moment at which its request was due. */
    Outcome paced(Duration time, double perSecond, Supplier<byte @Nullable []> requests) throws Exception {
        return run(time, perSecond, requests);
    }

    private Outcome run(Duration time, double perSecond, Supplier<byte @Nullable []> requests) throws Exception {
        ExecutorService senders = Executors.newFixedThreadPool(connections);
        long begin = System.nanoTime();
        long end = begin + time.toNanos();
        List<Future<List<Long>>> answers = new ArrayList<>();
        for (int number = 0; number < connections; number++) {
            long first = perSecond == 0 ? begin : begin + (long) (number * NANOS / perSecond);
            long step = perSecond == 0 ? 0 : (long) (connections * NANOS / perSecond);
            int port = ports.get(number % ports.size());
            Callable<List<Long>> sender = () -> sent(port, first, step, end, requests);
            answers.add(senders.submit(sender));
        }
        List<Long> nanos = new ArrayList<>();
        double seconds;
        try {
            for (Future<List<Long>> answered : answers) {
                nanos.addAll(answered.get());
            }
            seconds = (System.nanoTime() - begin) / NANOS;
        } finally {
            senders.shutdown();
            senders.awaitTermination(TIMEOUT_MILLIS, TimeUnit.MILLISECONDS);
        }
        Collections.sort(nanos);
        return new Outcome(seconds, List.copyOf(nanos));
    }

    private List<Long> sent(int port, long first, long step, long end, Supplier<byte @Nullable []> requests)
            throws IOException, InterruptedException {
        List<Long> nanos = new ArrayList<>();
        try (Connection connection = new Connection(port)) {
            long due = first;
            while (System.nanoTime() < end) {
                long wait = due - System.nanoTime();
                if (wait > 0) {
                    TimeUnit.NANOSECONDS.sleep(wait);
                }
                byte[] request = requests.get();
                if (request == null) {
                    break;
                }
                long begin = step == 0 ? System.nanoTime() : due;
                connection.exchange(request);
                nanos.add(System.nanoTime() - begin);
                due += step;
            }
        }
        return nanos;
    }

    /**
     * What was sent.
     *
     * @param nanos how long each answer took, from the shortest to the longest
     */
    record Outcome(double seconds, List<Long> nanos) {

        double perSecond() {
            return nanos.size() / seconds;
        }

        double millis(double share) {
            return nanos.get((int) Math.max(0, Math.ceil(nanos.size() * share) - 1)) / 1e6;
        }
    }

    /** One connection that is kept; any answer but a good one is a fault of the benchmark. */
    private static final class Connection implements AutoCloseable {

        private final Socket socket;
        private final InputStream in;

        Connection(int port) throws IOException {
            socket = new Socket(InetAddress.getLoopbackAddress(), port);
            socket.setTcpNoDelay(true);
            socket.setSoTimeout(TIMEOUT_MILLIS);
            in = new BufferedInputStream(socket.getInputStream(), 1 << 16);
        }

        void exchange(byte[] request) throws IOException {
            socket.getOutputStream().write(request);
            String status = line();
            int length = 0;
            boolean chunked = false;
            for (String header = line(); !header.isEmpty(); header = line()) {
                String small = header.toLowerCase(Locale.ROOT);
                if (small.startsWith("content-length:")) {
                    length = Integer.parseInt(
                            small.substring(small.indexOf(':') + 1).strip());
                }
                chunked |= small.startsWith("transfer-encoding:") && small.contains("chunked");
            }
            String body = chunked ? chunks() : new String(in.readNBytes(length), StandardCharsets.UTF_8);
            if (!status.startsWith("HTTP/1.1 2") && !status.startsWith("HTTP/1.1 304")) {
                throw new IOException(new String(request, StandardCharsets.UTF_8)
                                .lines()
                                .findFirst()
                                .orElse("") + ": " + status + ": " + body);
            }
        }

        private String chunks() throws IOException {
            StringBuilder body = new StringBuilder();
            for (int length = Integer.parseInt(line(), 16); length > 0; length = Integer.parseInt(line(), 16)) {
                body.append(new String(in.readNBytes(length), StandardCharsets.UTF_8));
                line();
            }
            line();
            return body.toString();
        }

        private String line() throws IOException {
            StringBuilder line = new StringBuilder();
            for (int next = in.read(); next != '\n'; next = in.read()) {
                if (next < 0) {
                    throw new IOException("The service closed the connection in the middle of an answer");
                }
                if (next != '\r') {
                    line.append((char) next);
                }
            }
            return line.toString();
        }

        @Override
        public void close() throws IOException {
            socket.close();
        }
    }
}
