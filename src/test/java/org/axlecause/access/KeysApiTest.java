package org.axlecause.access;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.Stream;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.Test;

@QuarkusTest
@TestProfile(WithKeys.class)
class KeysApiTest {

    @Inject
    MakeKey makeKey;

    @Inject
    MakeKeyCommand command;

    @Inject
    KeyStore keys;

    @Inject
    TenantTransaction transaction;

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
        String expired = makeKey.make(
                "chain-a", new KeyTerms("old", Role.ADMIN, null, OffsetDateTime.parse("2020-01-01T00:00:00Z")), "test");

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

    @Test
    void an_admin_makes_a_key_that_is_shown_once_and_works() {
        String admin = make("chain-d", Role.ADMIN);

        Response made = post(admin, """
                {"name": "workshop system", "role": "desk", "expiresAt": "2099-01-01T00:00:00Z"}""");

        assertThat(made.statusCode()).isEqualTo(201);
        assertThat(made.header("Cache-Control")).contains("no-store");
        String id = made.jsonPath().getString("key");
        assertThat(made.header("Location")).endsWith("/v1/keys/" + id);
        String key = made.jsonPath().getString("text");
        assertThat(get(key, "/test/faulty/desk").statusCode()).isEqualTo(200);
        Response listed = get(admin, "/v1/keys");
        assertThat(listed.jsonPath().getMap("[0]"))
                .containsEntry("key", id)
                .containsEntry("name", "workshop system")
                .containsEntry("role", "desk")
                .containsEntry("createdBy", admin.split("_", -1)[1])
                .containsEntry("expiresAt", "2099-01-01T00:00:00Z")
                .doesNotContainKeys("revokedAt", "text", "hash");
        assertThat(listed.asString()).doesNotContain(key.split("_", -1)[2]);
        assertThat(get(make("chain-e", Role.ADMIN), "/v1/keys").asString()).doesNotContain(id);
    }

    @Test
    void a_revoked_key_opens_nothing_at_once_and_stays_listed() {
        String admin = make("chain-d", Role.ADMIN);
        Response made = post(admin, "{\"name\": \"lane\", \"role\": \"technician\"}");
        String id = made.jsonPath().getString("key");
        String key = made.jsonPath().getString("text");
        assertThat(get(key, "/test/faulty").statusCode()).isEqualTo(200);

        assertThat(delete(make("chain-e", Role.ADMIN), id).statusCode()).isEqualTo(404);
        assertThat(get(key, "/test/faulty").statusCode()).isEqualTo(200);
        assertThat(delete(admin, id).statusCode()).isEqualTo(204);

        assertThat(get(key, "/test/faulty").statusCode()).isEqualTo(401);
        assertThat(get(admin, "/v1/keys").jsonPath().getString("find { it.key == '" + id + "' }.revokedAt"))
                .isNotNull();
        assertThat(delete(admin, "nowhere").statusCode()).isEqualTo(404);
    }

    @Test
    void two_keys_of_one_name_are_good_at_a_time_so_that_a_key_can_be_changed() {
        String admin = make("chain-d", Role.ADMIN);
        String wanted = "{\"name\": \"till\", \"role\": \"sender\"}";
        String first = post(admin, wanted).jsonPath().getString("key");
        assertThat(post(admin, wanted).statusCode()).isEqualTo(201);

        Response third = post(admin, wanted);

        assertThat(third.statusCode()).isEqualTo(409);
        assertThat(third.jsonPath().getString("detail"))
                .isEqualTo("Two keys named 'till' are good already. Revoke the older one first.");
        assertThat(delete(admin, first).statusCode()).isEqualTo(204);
        assertThat(post(admin, wanted).statusCode()).isEqualTo(201);
    }

    @Test
    void an_admin_of_one_site_makes_keys_for_that_site_alone() {
        String chief = make("chain-f", Role.ADMIN);
        for (String site : List.of("quay-street", "mill-bridge")) {
            given().header("Authorization", "Bearer " + chief)
                    .contentType("application/json")
                    .body(
                            "{\"name\":\"%s\",\"timeZone\":\"Europe/London\",\"currency\":\"GBP\",\"regime\":\"gb-annual\"}"
                                    .formatted(site))
                    .put("/v1/sites/" + site)
                    .then()
                    .statusCode(200);
        }
        String local = post(chief, "{\"name\":\"quay\",\"role\":\"admin\",\"sites\":[\"quay-street\"]}")
                .jsonPath()
                .getString("text");

        assertThat(post(local, "{\"name\":\"a\",\"role\":\"desk\",\"sites\":[\"mill-bridge\"]}")
                        .jsonPath()
                        .getString("causes[0].text"))
                .isEqualTo("There is no site 'mill-bridge'.");
        String desk =
                post(local, "{\"name\":\"b\",\"role\":\"desk\"}").jsonPath().getString("key");
        assertThat(get(local, "/v1/keys").jsonPath().getList("key", String.class))
                .contains(desk)
                .doesNotContain(chief.split("_", -1)[1]);
        assertThat(get(local, "/v1/keys").jsonPath().getList("find { it.key == '" + desk + "' }.sites", String.class))
                .containsExactly("quay-street");
        assertThat(delete(local, chief.split("_", -1)[1]).statusCode()).isEqualTo(404);
    }

    @Test
    void admins_who_make_a_key_of_one_name_at_once_get_two_between_them() {
        String admin = make("chain-h", Role.ADMIN);
        ExecutorService admins = Executors.newFixedThreadPool(3);

        List<Integer> statuses = Stream.generate(() -> CompletableFuture.supplyAsync(
                        () -> post(admin, "{\"name\": \"lane\", \"role\": \"sender\"}")
                                .statusCode(),
                        admins))
                .limit(3)
                .toList()
                .stream()
                .map(CompletableFuture::join)
                .sorted()
                .toList();
        admins.shutdown();

        assertThat(statuses).containsExactly(201, 201, 409);
    }

    @Test
    void all_that_is_wrong_with_a_wanted_key_is_said_at_once() {
        String admin = make("chain-d", Role.ADMIN);

        Response answer = post(admin, """
                {"name": " ", "role": "boss", "sites": ["nowhere"], "expiresAt": "2020-01-01T00:00:00Z"}""");

        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.jsonPath().getList("causes.pointer", String.class))
                .containsExactly("/name", "/role", "/expiresAt", "/sites/0");
        assertThat(answer.asString()).contains("expected is one of sender, technician, desk, policy, analyst, admin");
        assertThat(post(admin, "").statusCode()).isEqualTo(422);
        assertThat(post(make("chain-d", Role.DESK), "{}").statusCode()).isEqualTo(403);
    }

    /** Header fields of draft-ietf-httpapi-ratelimit-headers: structured fields of a quoted name and parameters. */
    @Test
    void a_key_that_asks_too_often_is_told_how_long_to_wait_and_no_other_key_with_it() {
        String busy = make("chain-g", Role.DESK);
        Response first = get(busy, "/test/faulty");
        assertThat(first.header("RateLimit-Policy")).isEqualTo("\"key\";q=200;w=60");
        assertThat(first.header("RateLimit")).matches("\"key\";r=199;t=[1-9][0-9]*");

        Response last = Stream.generate(() -> get(busy, "/test/faulty"))
                .limit(300)
                .filter(answer -> answer.statusCode() != 200)
                .findFirst()
                .orElseThrow();

        assertThat(last.statusCode()).isEqualTo(429);
        assertThat(last.contentType()).startsWith("application/problem+json");
        assertThat(last.jsonPath().getString("code")).isEqualTo("too-many-requests");
        assertThat(last.jsonPath().getString("detail"))
                .startsWith("Too many requests with this key: at most 200 in 60 s. Wait ");
        assertThat(last.header("RateLimit")).isEqualTo("\"key\";r=0;t=" + last.header("Retry-After"));
        assertThat(Integer.parseInt(last.header("Retry-After"))).isBetween(1, 2);
        assertThat(get(make("chain-g", Role.DESK), "/test/faulty").statusCode()).isEqualTo(200);
    }

    @Test
    void a_refused_stranger_spends_nobodys_quota() {
        String key = make("chain-g", Role.DESK);
        String damaged = key.substring(0, key.length() - 1);
        for (int attempt = 0; attempt < 40; attempt++) {
            assertThat(get(damaged, "/test/faulty").statusCode()).isEqualTo(401);
        }

        assertThat(get(key, "/test/faulty").header("RateLimit")).startsWith("\"key\";r=199;");
    }

    private static Response post(String key, String body) {
        return given().header("Authorization", "Bearer " + key)
                .contentType("application/json; charset=UTF-8")
                .body(body)
                .post("/v1/keys");
    }

    private static Response delete(String key, String id) {
        return given().header("Authorization", "Bearer " + key).delete("/v1/keys/" + id);
    }

    private String make(String tenant, Role role) {
        return makeKey.make(tenant, new KeyTerms("test", role, null, null), "test");
    }

    private static Response get(String key, String path) {
        return given().header("Authorization", "Bearer " + key).get(path);
    }

    private static PrintStream print(ByteArrayOutputStream bytes) {
        return new PrintStream(bytes, true, StandardCharsets.UTF_8);
    }
}
