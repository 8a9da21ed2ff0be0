package org.axlecause.access;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Problem documents by RFC 9457, section 3; pointers by RFC 6901. */
@QuarkusTest
class ProblemsApiTest {

    @Test
    void an_unknown_address_is_not_found() {
        problem(given().get("/v1/nowhere"), 404, "not-found");
    }

    @Test
    void a_wrong_method_is_named_and_options_lists_the_right_ones() {
        problem(given().delete("/test/faulty"), 405, "method-not-allowed");

        assertThat(given().options("/test/faulty").header("Allow")).contains("GET", "POST");
    }

    @Test
    void a_wrong_format_is_named() {
        problem(given().contentType("text/csv").body("a,b").post("/test/faulty"), 415, "unsupported-format");
        problem(given().accept("text/csv").get("/test/faulty"), 406, "not-acceptable");
    }

    @Test
    void a_fault_shows_an_id_and_nothing_of_the_inside() {
        Response answer = given().get("/test/faulty/fault");

        JsonPath problem = problem(answer, 500, "fault");
        assertThat(problem.getString("instance")).startsWith("urn:uuid:");
        assertThat(answer.asString()).doesNotContain("secret detail").doesNotContain("Exception");
    }

    @Test
    void a_refusal_keeps_its_own_code_and_all_its_causes() {
        JsonPath problem = problem(given().get("/test/faulty/refused"), 422, "unknown-site");

        assertThat(problem.getString("type")).isEqualTo("urn:axlecause:problem:unknown-site");
        assertThat(problem.getString("instance")).isEqualTo("/test/faulty/refused");
        assertThat(problem.<Map<String, String>>getList("causes"))
                .containsExactly(
                        Map.of("pointer", "/data/site", "text", "\"x\" is no site. Make it first, or correct it."));
    }

    @Test
    void broken_json_is_malformed_and_its_place_is_named() {
        JsonPath problem = problem(post("{\"count\": 1,, }"), 400, "malformed-request");

        assertThat(problem.getString("detail")).contains("line 1, column 13");
    }

    @Test
    void duplicate_keys_are_malformed() {
        problem(post("{\"count\": 1, \"count\": 2, \"parts\": []}"), 400, "malformed-request");
    }

    @Test
    void a_wrong_type_is_pointed_at() {
        JsonPath problem = problem(post("{\"count\": 1, \"parts\": [{\"name\": {}}]}"), 400, "malformed-request");

        assertThat(problem.getString("causes[0].pointer")).isEqualTo("/parts/0/name");
    }

    @Test
    void a_broken_constraint_is_pointed_at_without_names_of_methods() {
        JsonPath problem = problem(post("{\"count\": 0, \"parts\": [{}]}"), 422, "invalid-payload");

        assertThat(problem.<String>getList("causes.pointer")).isEqualTo(List.of("/count", "/parts/0/name"));
    }

    @Test
    void a_body_over_the_limit_is_told_so_before_it_is_sent() throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), RestAssured.port)) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream()
                    .write(("POST /test/faulty HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                                    + "Connection: close\r\nContent-Length: 11000000\r\n\r\n{")
                            .getBytes(StandardCharsets.US_ASCII));

            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

            assertThat(answer)
                    .startsWith("HTTP/1.1 413")
                    .contains("application/problem+json", "\"code\":\"too-large\"", "\"instance\":\"/test/faulty\"");
        }
    }

    @Test
    void a_body_over_the_limit_that_announces_nothing_is_told_so_when_it_gets_there() throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), RestAssured.port)) {
            socket.setSoTimeout(10_000);
            OutputStream out = socket.getOutputStream();
            out.write(String.join(
                            "\r\n",
                            "POST /test/faulty HTTP/1.1",
                            "Host: localhost",
                            "Content-Type: application/json",
                            "Transfer-Encoding: chunked",
                            "",
                            "")
                    .getBytes(StandardCharsets.US_ASCII));
            String answer = answerTo(socket, () -> {
                byte[] chunk = ("100000\r\n" + " ".repeat(0x100000) + "\r\n").getBytes(StandardCharsets.US_ASCII);
                for (int sent = 0; sent < 20; sent++) {
                    out.write(chunk);
                }
            });

            assertThat(answer).startsWith("HTTP/1.1 413").contains("\"code\":\"too-large\"");
        }
    }

    @Test
    void a_compressed_body_is_refused_unread() {
        Response answer = given().header("Content-Encoding", "gzip")
                .contentType("application/cloudevents+json")
                .body(new byte[] {0x1f, (byte) 0x8b, 8, 0})
                .post("/v1/events");

        assertThat(problem(answer, 415, "unsupported-format").getString("detail"))
                .isEqualTo("Content-Encoding is gzip; bodies are read uncompressed only. Send it as it is.");
    }

    /** The service closes the connection while it is still written to, which the writer then sees as an error. */
    private static String answerTo(Socket socket, Writing writing) throws IOException {
        try {
            writing.write();
        } catch (IOException closed) {
            assertThat(closed.getMessage()).containsAnyOf("reset", "Broken pipe");
        }
        ByteArrayOutputStream answer = new ByteArrayOutputStream();
        try {
            socket.getInputStream().transferTo(answer);
        } catch (IOException reset) {
            assertThat(reset.getMessage()).contains("reset");
        }
        return answer.toString(StandardCharsets.UTF_8);
    }

    @FunctionalInterface
    private interface Writing {
        void write() throws IOException;
    }

    private static Response post(String body) {
        return given().contentType(ContentType.JSON).body(body).post("/test/faulty");
    }

    private static JsonPath problem(Response answer, int status, String code) {
        assertThat(answer.statusCode()).isEqualTo(status);
        assertThat(answer.contentType()).startsWith("application/problem+json");
        JsonPath problem = answer.jsonPath();
        assertThat(problem.getInt("status")).isEqualTo(status);
        assertThat(problem.getString("code")).isEqualTo(code);
        assertThat(problem.getString("title")).isNotBlank();
        return problem;
    }
}
