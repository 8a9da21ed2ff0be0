package org.axlecause.access;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.RestAssured;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What a service with four places for requests and a mebibyte for large bodies does when more come. */
@QuarkusTest
@TestProfile(WithKeys.class)
class BusyServiceTest {

    private static final int PLACES = 4;

    @Inject
    MakeKey makeKey;

    private String key;

    @BeforeEach
    void somebody_has_a_key() {
        key = makeKey.make("busy", new KeyTerms(UUID.randomUUID().toString(), Role.ADMIN, null, null), "test");
    }

    @Test
    void beyond_its_places_requests_are_refused_and_health_stays_served() throws InterruptedException {
        ExecutorService senders = Executors.newFixedThreadPool(PLACES);
        List<CompletableFuture<Response>> waiting = IntStream.range(0, PLACES)
                .mapToObj(place -> CompletableFuture.supplyAsync(() -> get("/test/faulty/wait"), senders))
                .toList();
        FaultyResource.WAITING.acquire(PLACES);

        Response refused = get("/test/faulty");
        int live = given().get("/q/health/live").statusCode();
        int ready = given().get("/q/health/ready").statusCode();
        FaultyResource.GOING_ON.release(PLACES);
        waiting.forEach(answer -> assertThat(answer.join().asString()).isEqualTo("\"done\""));
        senders.shutdown();

        assertThat(refused.statusCode()).isEqualTo(503);
        assertThat(refused.contentType()).startsWith("application/problem+json");
        assertThat(refused.header("Retry-After")).isEqualTo("2");
        assertThat(refused.jsonPath().getString("detail"))
                .isEqualTo("The service is at its limit of 4 requests at once; nothing was read. Send it again.");
        assertThat(List.of(live, ready)).containsOnly(200);
        assertThat(get("/test/faulty").statusCode()).isEqualTo(200);
    }

    @Test
    void bodies_that_are_still_on_their_way_hold_no_place() throws IOException {
        List<Socket> slow = new ArrayList<>();
        try {
            for (int sender = 0; sender < 3 * PLACES; sender++) {
                slow.add(begun(100, 10));
            }

            assertThat(get("/test/faulty").statusCode()).isEqualTo(200);
        } finally {
            close(slow);
        }
    }

    @Test
    void large_bodies_wait_for_memory_and_small_ones_dont() throws IOException {
        List<Socket> large = new ArrayList<>();
        try {
            large.add(begun(2_000_000, 900_000));
            large.add(begun(2_000_000, 900_000));
            String first = firstAnswer(large);

            assertThat(first)
                    .startsWith("HTTP/1.1 503")
                    .containsIgnoringCase("retry-after: 2")
                    .contains("The service reads as many large bodies as it has memory for");
            assertThat(given().header("Authorization", "Bearer " + key)
                            .contentType("application/json")
                            .body("{\"count\": 1, \"parts\": []}" + " ".repeat(60_000))
                            .post("/test/faulty")
                            .statusCode())
                    .isEqualTo(200);
        } finally {
            close(large);
        }
    }

    /** One of them is refused at once, the other waits for the rest of its body. */
    private static String firstAnswer(List<Socket> sockets) throws IOException {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(8);
        while (System.nanoTime() < deadline) {
            for (Socket socket : sockets) {
                if (socket.getInputStream().available() > 0) {
                    return new String(socket.getInputStream().readNBytes(600), StandardCharsets.UTF_8);
                }
            }
            Thread.onSpinWait();
        }
        throw new AssertionError("neither of the bodies was refused");
    }

    /** A body of which so much is sent; the service may refuse it and close before it has all of that. */
    private static Socket begun(int length, int sent) throws IOException {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), RestAssured.port);
        socket.setSoTimeout(10_000);
        try {
            socket.getOutputStream()
                    .write(("POST /test/faulty HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                                    + "Content-Length: " + length + "\r\n\r\n" + " ".repeat(sent))
                            .getBytes(StandardCharsets.US_ASCII));
            return socket;
        } catch (SocketException refusedMeanwhile) {
            return socket;
        }
    }

    private static void close(List<Socket> sockets) throws IOException {
        for (Socket socket : sockets) {
            socket.close();
        }
    }

    private Response get(String path) {
        return given().header("Authorization", "Bearer " + key).get(path);
    }
}
