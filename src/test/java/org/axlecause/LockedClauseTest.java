package org.axlecause;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.policy.ChainMessages.as;
import static org.axlecause.policy.ChainMessages.event;
import static org.axlecause.policy.ChainMessages.leak;
import static org.axlecause.policy.ChainMessages.presentation;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.axlecause.Contract.Operation;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A site under a chain with a locked clause sends what could free it to every operation of the contract that writes, with
 * keys of every role that are limited to the site; after each the clause binds the site as before. A new operation is in it
 * by being in the contract.
 */
@QuarkusTest
@TestProfile(WithKeys.class)
class LockedClauseTest {

    private static final String SITE = "quay-street";
    private static final String TWIN = "renew-wheel-cylinder-axle-2-right";
    private static final String LOCKED = """
            {"means": "how we repair", "chain": [{"clause": "twin-hydraulic-part", "necessity": "required", "locked": true}]}""";

    @Inject
    MakeKey makeKey;

    private final String tenant = "locked-" + UUID.randomUUID().toString().substring(0, 8);
    private final Map<String, String> values = new TreeMap<>();
    private String chain = "";

    @BeforeEach
    void a_chain_has_locked_a_clause() {
        chain = key(Role.ADMIN, null);
        for (String site : List.of(SITE, "mill-bridge")) {
            as(chain).body(site("north")).put("/v1/sites/" + site).then().statusCode(200);
        }
        publish("""
                {"means": "how we repaired", "chain": [{"clause": "twin-hydraulic-part", "necessity": "none"}]}""");
        publish(LOCKED);
        values.put("site", SITE);
        values.put("policy", "repairs");
        values.put("version", "1");
        values.put("reference", aCase());
        values.put("key", "none");
        values.put("subscription", "none");
        values.put("trial", UUID.randomUUID().toString());
        values.put("proposal", UUID.randomUUID().toString());
    }

    @Test
    void no_operation_frees_a_site_from_a_clause_that_the_chain_has_locked() {
        List<Operation> writing = Contract.committed().operations().stream()
                .filter(operation -> !operation.method().equals("GET"))
                .toList();

        assertThat(writing).hasSizeGreaterThan(15);
        for (Role role : Role.values()) {
            String key = key(role, List.of(SITE));
            for (Operation operation : writing) {
                for (String body : attempts(operation)) {
                    Response answer = send(key, operation, body);

                    assertThat(answer.statusCode())
                            .as("%s by %s: %s", operation, role, body)
                            .isLessThan(500);
                    if (body.equals(site("south"))) {
                        assertThat(answer.statusCode())
                                .as("another region by %s", role)
                                .isEqualTo(403);
                    }
                    if (operation.path().equals("/v1/keys") && answer.statusCode() == 201) {
                        String made = answer.jsonPath().getString("key");
                        assertThat(as(chain)
                                        .get("/v1/keys")
                                        .jsonPath()
                                        .getList("find { it.key == '" + made + "' }.sites"))
                                .as("sites of a key that %s makes", role)
                                .isEqualTo(List.of(SITE));
                    }
                    if (answer.statusCode() < 300) {
                        assertBound(operation + " by " + role + ": " + body);
                        assertThat(necessity(answer))
                                .as("answer of %s", operation)
                                .isIn("required", "none shown");
                    }
                }
            }
        }
    }

    /** What could free the site, and an empty body where nothing could. */
    private List<String> attempts(Operation operation) {
        String reference = values.get("reference");
        return switch (operation.method() + " " + operation.path()) {
            case "POST /v1/events" ->
                List.of(
                        event("departure.recorded", reference, """
                                {"clause": "twin-hydraulic-part", "reason": "we prefer not to", "by": "Rowan Ames"}"""),
                        event(
                                "departure.recorded",
                                "NEW-" + UUID.randomUUID().toString().substring(0, 8),
                                """
                                {"clause": "twin-hydraulic-part", "reason": "we prefer not to", "by": "Rowan Ames"}"""),
                        event("policy.adopted", reference, """
                                {"policy": "repairs", "version": 1, "reason": "it was cheaper", "by": "Rowan Ames"}"""),
                        event("policy.adopted", reference, """
                                {"policy": "baseline", "version": 1, "reason": "it was cheaper", "by": "Rowan Ames"}"""));
            case "POST /v1/assessments" ->
                List.of("["
                        + String.join(
                                ",",
                                presentation("AS-1", SITE, now()),
                                leak("AS-1"),
                                event("departure.recorded", "AS-1", """
                        {"clause": "twin-hydraulic-part", "reason": "we prefer not to", "by": "Rowan Ames"}"""))
                        + "]");
            case "PUT /v1/sites/{site}" -> List.of(site("south"), site("north"));
            case "PUT /v1/policies/{policy}/draft" ->
                List.of(
                        LOCKED.replace(", \"locked\": true", ""),
                        LOCKED.replace("required", "none"),
                        "{\"means\": \"how we repair\", \"covers\": [\"mill-bridge\"]}",
                        LOCKED.replace(
                                "}]}",
                                "}], \"sites\": {\"quay-street\": [{\"clause\": \"twin-hydraulic-part\","
                                        + " \"necessity\": \"none\"}]}}"),
                        LOCKED);
            case "POST /v1/policies/{policy}/versions" ->
                List.of("{\"effectiveFrom\": \"" + LocalDate.now(ZoneOffset.UTC) + "\", \"reason\": \"ours\"}");
            case "POST /v1/keys" -> List.of("{\"name\": \"free-" + UUID.randomUUID() + "\", \"role\": \"policy\"}");
            default -> List.of("{}");
        };
    }

    private void assertBound(String after) {
        chain = key(Role.ADMIN, null);
        Response effective = as(chain).get("/v1/policies/repairs/effective?site=" + SITE);
        String clause = "clauses.find { it.sets.clause == 'twin-hydraulic-part' }";
        assertThat(effective.jsonPath().getString(clause + ".sets.necessity"))
                .as(after)
                .isEqualTo("required");
        assertThat(effective.jsonPath().getString(clause + ".lockedBy"))
                .as(after)
                .isEqualTo("chain");
        assertThat(necessity(as(chain).get("/v1/cases/" + values.get("reference"))))
                .as(after)
                .isEqualTo("required");
        assertThat(necessity(as(chain).get("/v1/cases/" + aCase()))).as(after).isEqualTo("required");
    }

    /** Necessity of the twin in a case document, where the answer is one that has a scope. */
    private static String necessity(Response answer) {
        for (var line : Json.read(answer.asString().startsWith("{") ? answer.asString() : "{}")
                .path("scope")) {
            if (line.path("id").asText().equals(TWIN)) {
                return line.path("necessity").asText();
            }
        }
        return "none shown";
    }

    private Response send(String key, Operation operation, String body) {
        RequestSpecification request =
                given().header("Authorization", "Bearer " + key).header("If-Match", "*");
        if (operation.content().has("requestBody")) {
            String type = operation.path().equals("/v1/events")
                    ? "application/cloudevents+json"
                    : operation.path().equals("/v1/assessments")
                            ? "application/cloudevents-batch+json"
                            : "application/json";
            request.contentType(type + "; charset=UTF-8").body(body);
        }
        return request.request(operation.method(), operation.pathWith(values));
    }

    private String aCase() {
        String reference = "QS-" + UUID.randomUUID().toString().substring(0, 8);
        for (String sent : List.of(presentation(reference, SITE, now()), leak(reference))) {
            given().header("Authorization", "Bearer " + key(Role.SENDER, null))
                    .contentType("application/cloudevents+json; charset=UTF-8")
                    .body(sent)
                    .post("/v1/events")
                    .then()
                    .statusCode(200);
        }
        return reference;
    }

    private void publish(String document) {
        RequestSpecification first = as(chain).body(document);
        Response written = first.put("/v1/policies/repairs/draft");
        assertThat(written.statusCode()).as(written.asString()).isEqualTo(200);
        as(chain)
                .header("If-Match", "*")
                .body("{\"effectiveFrom\": \"" + LocalDate.now(ZoneOffset.UTC)
                        + "\", \"reason\": \"the chain's word\"}")
                .post("/v1/policies/repairs/versions")
                .then()
                .statusCode(201);
    }

    private static OffsetDateTime now() {
        return OffsetDateTime.now(ZoneOffset.UTC);
    }

    private static String site(String region) {
        return "{\"name\": \"Site\", \"region\": \"" + region
                + "\", \"timeZone\": \"Etc/UTC\", \"currency\": \"GBP\", \"regime\": \"gb-annual\"}";
    }

    private String key(Role role, @Nullable List<String> sites) {
        return makeKey.make(tenant, new KeyTerms(UUID.randomUUID().toString(), role, sites, null), "test");
    }
}
