package org.axlecause.access;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.Map;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.Test;

@QuarkusTest
@TestProfile(KeysApiTest.WithKeys.class)
class KeysApiTest {

    @Inject
    MakeKey makeKey;

    @Inject
    MakeKeyCommand command;

    @Inject
    KeyStore keys;

    @Inject
    TenantTransaction transaction;

    /** Access by keys, reachable from everywhere. */
    public static class WithKeys implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of("axlecause.access", "keys", "quarkus.http.host", "0.0.0.0");
        }
    }

    @Test
    void without_a_key_nobody_comes_in() {
        Response answer = given().get("/test/faulty");

        assertThat(answer.statusCode()).isEqualTo(401);
        assertThat(answer.contentType()).startsWith("application/problem+json");
        assertThat(answer.header("WWW-Authenticate")).isEqualTo("Bearer");
        assertThat(answer.jsonPath().getString("code")).isEqualTo("not-authenticated");
    }

    @Test
    void a_key_acts_for_its_tenant_within_its_role() {
        String desk = make("chain-a", Role.DESK);
        String sender = make("chain-b", Role.SENDER);

        assertThat(get(desk, "/test/faulty").asString()).isEqualTo("\"chain-a\"");
        assertThat(get(sender, "/test/faulty").asString()).isEqualTo("\"chain-b\"");
        assertThat(get(desk, "/test/faulty/desk").statusCode()).isEqualTo(200);
        assertThat(get(sender, "/test/faulty/desk").statusCode()).isEqualTo(403);
        assertThat(get(make("chain-a", Role.ADMIN), "/test/faulty/desk").statusCode())
                .isEqualTo(200);
    }

    @Test
    void a_route_that_names_no_role_lets_nobody_in() {
        assertThat(get(make("chain-a", Role.ADMIN), "/test/faulty/nobody").statusCode())
                .isEqualTo(403);
    }

    @Test
    void a_damaged_unknown_revoked_or_expired_key_is_refused() {
        String key = make("chain-a", Role.ADMIN);
        String revoked = make("chain-a", Role.ADMIN);
        String id = revoked.split("_", -1)[1];
        transaction.run("chain-b", () -> assertThat(keys.revoke("chain-a", id)).isFalse());
        assertThat(get(revoked, "/test/faulty").statusCode()).isEqualTo(200);
        transaction.run("chain-a", () -> assertThat(keys.revoke("chain-a", id)).isTrue());
        String expired =
                makeKey.make("chain-a", Role.ADMIN, null, OffsetDateTime.parse("2020-01-01T00:00:00Z"), "old", "test");

        assertThat(get(key, "/test/faulty").statusCode()).isEqualTo(200);
        assertThat(get(key.substring(1), "/test/faulty").statusCode()).isEqualTo(401);
        assertThat(get(ApiKey.made().text(), "/test/faulty").statusCode()).isEqualTo(401);
        assertThat(get(revoked, "/test/faulty").statusCode()).isEqualTo(401);
        assertThat(get(expired, "/test/faulty").statusCode()).isEqualTo(401);
    }

    @Test
    void the_secret_of_another_key_doesnt_open_an_id() {
        String key = make("chain-a", Role.ADMIN);
        ApiKey other = ApiKey.made();
        String id = key.split("_", -1)[1];
        String secret = other.text().split("_", -1)[2];

        assertThat(ApiKey.read("axc_" + id + "_" + secret + "_" + ApiKey.check("axc_" + id + "_" + secret)))
                .hasValueSatisfying(
                        forged -> assertThat(get(forged.text(), "/test/faulty").statusCode())
                                .isEqualTo(401));
    }

    @Test
    void the_command_prints_a_key_that_works() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();

        int code = command.run(
                new String[] {"make-key", "--tenant", "chain-c", "--role", "admin"}, print(out), System.err);

        assertThat(code).isZero();
        String key = out.toString(StandardCharsets.UTF_8).trim();
        assertThat(get(key, "/test/faulty").asString()).isEqualTo("\"chain-c\"");
        transaction.run(
                "chain-c",
                () -> assertThat(keys.all("chain-c"))
                        .singleElement()
                        .satisfies(stored ->
                                assertThat(key).doesNotContain(stored.hash()).contains(stored.id())));
    }

    @Test
    void the_command_says_what_is_wrong_with_its_words() {
        ByteArrayOutputStream problems = new ByteArrayOutputStream();

        int code = command.run(
                new String[] {"make-key", "--tenant", "Chain C", "--role", "admin"}, System.out, print(problems));

        assertThat(code).isEqualTo(2);
        assertThat(problems.toString(StandardCharsets.UTF_8)).startsWith("--tenant is Chain C;");
    }

    private String make(String tenant, Role role) {
        return makeKey.make(tenant, role, null, null, "test", "test");
    }

    private static Response get(String key, String path) {
        return given().header("Authorization", "Bearer " + key).get(path);
    }

    private static PrintStream print(ByteArrayOutputStream bytes) {
        return new PrintStream(bytes, true, StandardCharsets.UTF_8);
    }
}
