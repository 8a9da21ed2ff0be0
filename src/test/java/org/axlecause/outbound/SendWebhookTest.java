package org.axlecause.outbound;

import static org.assertj.core.api.Assertions.assertThat;

import io.vertx.core.Vertx;
import io.vertx.core.net.PemTrustOptions;
import io.vertx.core.net.TrustOptions;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One message over TLS, and over connections that are slow on purpose. */
class SendWebhookTest {

    private static final String HOST = "hooks.example.test";
    private static final TrustOptions NO_OTHERS = null;
    private static final char[] PASSWORD = "only-for-this-test".toCharArray();

    @TempDir
    private Path folder;

    private final Vertx vertx = Vertx.vertx();

    @AfterEach
    void closeVertx() {
        vertx.close().toCompletionStage().toCompletableFuture().join();
    }

    @Test
    void a_certificate_of_the_name_that_was_asked_for_is_accepted() throws Exception {
        try (Receiver receiver = Receiver.overTls(contextFor(HOST))) {
            Answer answer = send(trusting(HOST), endpoint(true, receiver.port()));

            assertThat(answer).isEqualTo(Answer.ofStatus(204, null));
            assertThat(receiver.messages())
                    .singleElement()
                    .satisfies(message ->
                            assertThat(message.headers()).containsEntry("Host", HOST + ":" + receiver.port()));
        }
    }

    @Test
    void a_certificate_of_another_name_is_refused_though_its_issuer_is_trusted() throws Exception {
        try (Receiver receiver = Receiver.overTls(contextFor("other.example.test"))) {
            Answer answer = send(trusting("other.example.test"), endpoint(true, receiver.port()));

            assertThat(answer).isEqualTo(Answer.none("TLS can't be agreed on"));
            assertThat(receiver.messages()).isEmpty();
        }
    }

    @Test
    void a_certificate_of_an_unknown_issuer_is_refused() throws Exception {
        try (Receiver receiver = Receiver.overTls(contextFor(HOST))) {
            Answer answer = send(
                    new SendWebhook(vertx, Clock.systemUTC(), Duration.ofSeconds(10), NO_OTHERS),
                    endpoint(true, receiver.port()));

            assertThat(answer).isEqualTo(Answer.none("TLS can't be agreed on"));
            assertThat(receiver.messages()).isEmpty();
        }
    }

    @Test
    void an_endpoint_that_answers_byte_by_byte_has_failed_after_the_time_out() throws Exception {
        CountDownLatch done = new CountDownLatch(1);
        try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            CompletableFuture<Integer> written = CompletableFuture.supplyAsync(() -> dribble(server, done));
            SendWebhook impatient = new SendWebhook(vertx, Clock.systemUTC(), Duration.ofSeconds(2), NO_OTHERS);

            Answer answer = send(impatient, endpoint(false, server.getLocalPort()));
            done.countDown();

            assertThat(answer).isEqualTo(Answer.none("no answer within 2 s"));
            assertThat(written.join()).as("bytes that kept coming").isPositive();
        }
    }

    private static int dribble(ServerSocket server, CountDownLatch done) {
        int written = 0;
        try (Socket socket = server.accept();
                InputStream request = socket.getInputStream();
                OutputStream answer = socket.getOutputStream()) {
            request.read();
            answer.write("HTTP/1.1 200 OK\r\nX: ".getBytes(StandardCharsets.US_ASCII));
            while (!done.await(50, TimeUnit.MILLISECONDS)) {
                answer.write('x');
                written++;
            }
        } catch (IOException | InterruptedException cut) {
            return written;
        }
        return written;
    }

    private static Answer send(SendWebhook webhook, Endpoint endpoint) {
        Delivery delivery = new Delivery(UUID.randomUUID(), UUID.randomUUID(), 1, "{}");
        return webhook.send(endpoint, delivery, List.of(Secret.made()))
                .toCompletableFuture()
                .join();
    }

    private static Endpoint endpoint(boolean secure, int port) {
        return new Endpoint(secure, HOST, port, "/hook", InetAddress.getLoopbackAddress());
    }

    private SendWebhook trusting(String name) {
        PemTrustOptions trusted =
                new PemTrustOptions().addCertPath(folder.resolve(name + ".pem").toString());
        return new SendWebhook(vertx, Clock.systemUTC(), Duration.ofSeconds(10), trusted);
    }

    private SSLContext contextFor(String name) throws Exception {
        String store = folder.resolve(name + ".p12").toString();
        keytool("-genkeypair", "-keyalg", "EC", "-dname", "CN=" + name, "-ext", "san=dns:" + name, "-keystore", store);
        keytool(
                "-exportcert",
                "-rfc",
                "-keystore",
                store,
                "-file",
                folder.resolve(name + ".pem").toString());
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (InputStream stream = Files.newInputStream(Path.of(store))) {
            keys.load(stream, PASSWORD);
        }
        KeyManagerFactory managers = KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
        managers.init(keys, PASSWORD);
        SSLContext context = SSLContext.getInstance("TLS");
        context.init(managers.getKeyManagers(), null, null);
        return context;
    }

    private static void keytool(String... arguments) throws Exception {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "keytool").toString()));
        command.addAll(List.of(arguments));
        command.addAll(List.of("-alias", "endpoint", "-storetype", "PKCS12", "-storepass", String.valueOf(PASSWORD)));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String words = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(words).isZero();
    }
}
