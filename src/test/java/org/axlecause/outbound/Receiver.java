package org.axlecause.outbound;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javax.net.ssl.SSLContext;

/** An endpoint of a subscriber that behaves as it is told. */
final class Receiver implements AutoCloseable {

    private final HttpServer server;
    private final ExecutorService threads = Executors.newCachedThreadPool();
    private final CountDownLatch closed = new CountDownLatch(1);
    private final List<Message> messages = new CopyOnWriteArrayList<>();
    private volatile Behaviour behaviour = Behaviour.status(204);

    /** A message as it arrived, by the clock of this virtual machine. */
    record Message(String path, Map<String, String> headers, String body, long arrived) {

        String id() {
            return headers.get("webhook-id");
        }
    }

    /** What it does with a request once it has been read. */
    interface Behaviour {

        void answer(HttpExchange exchange, Message message, CountDownLatch closed)
                throws IOException, InterruptedException;

        static Behaviour status(int status) {
            return (exchange, message, closed) -> exchange.sendResponseHeaders(status, -1);
        }

        static Behaviour status(int status, String header, String value) {
            return (exchange, message, closed) -> {
                exchange.getResponseHeaders().add(header, value);
                exchange.sendResponseHeaders(status, -1);
            };
        }

        /** Takes the message and never says so. */
        static Behaviour silence() {
            return (exchange, message, closed) -> closed.await();
        }

        /** Answers well, with a body of this many bytes. */
        static Behaviour talk(int bytes) {
            return (exchange, message, closed) -> {
                exchange.sendResponseHeaders(200, bytes);
                exchange.getResponseBody().write(new byte[bytes]);
            };
        }
    }

    private Receiver(HttpServer server) {
        this.server = server;
        server.setExecutor(threads);
        server.createContext("/", this::handle);
        server.start();
    }

    static Receiver open() throws IOException {
        return new Receiver(HttpServer.create(anyPort(), 0));
    }

    static Receiver overTls(SSLContext context) throws IOException {
        HttpsServer server = HttpsServer.create(anyPort(), 0);
        server.setHttpsConfigurator(new HttpsConfigurator(context));
        return new Receiver(server);
    }

    void behave(Behaviour wanted) {
        behaviour = wanted;
    }

    int port() {
        return server.getAddress().getPort();
    }

    String address() {
        return "http://127.0.0.1:" + port() + "/hook";
    }

    List<Message> messages() {
        return messages;
    }

    private void handle(HttpExchange exchange) throws IOException {
        Map<String, String> headers = new TreeMap<>(String.CASE_INSENSITIVE_ORDER);
        exchange.getRequestHeaders().forEach((name, values) -> headers.put(name, String.join(",", values)));
        String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
        Message message = new Message(exchange.getRequestURI().toString(), headers, body, System.nanoTime());
        messages.add(message);
        try (exchange) {
            behaviour.answer(exchange, message, closed);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        closed.countDown();
        server.stop(0);
        threads.shutdownNow();
    }

    private static InetSocketAddress anyPort() {
        return new InetSocketAddress(InetAddress.getLoopbackAddress(), 0);
    }
}
