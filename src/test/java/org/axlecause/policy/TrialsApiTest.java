package org.axlecause.policy;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.axlecause.policy.ChainMessages.as;
import static org.axlecause.policy.ChainMessages.event;
import static org.axlecause.policy.ChainMessages.presentation;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A draft tried over stored cases; batches hold five cases in tests. */
@QuarkusTest
@TestProfile(WithKeys.class)
class TrialsApiTest {

    private static final String DRAFT = """
            {"means": "how we repair", "chain": [
              {"clause": "twin-hydraulic-part", "necessity": "required"},
              {"clause": "pad-renewal-thickness", "value": 3.5, "unit": "mm", "necessity": "recommended"}],
             "sites": {"mill-bridge": [{"clause": "twin-hydraulic-part", "necessity": "none"}]}}""";

    @Inject
    MakeKey makeKey;

    @Inject
    RunTrials runTrials;

    @Inject
    TryPolicies tryPolicies;

    @Inject
    TenantTransaction transaction;

    private final String tenant = "trial-" + UUID.randomUUID().toString().substring(0, 8);
    private String admin = "";

    @BeforeEach
    void a_chain_with_past_cases() {
        admin = key(Role.ADMIN, null);
        for (String site : List.of("quay-street", "mill-bridge")) {
            as(admin)
                    .body("{\"name\": \"Site\", \"timeZone\": \"Etc/UTC\", \"currency\": \"GBP\", \"regime\":"
                            + " \"gb-annual\"}")
                    .put("/v1/sites/" + site)
                    .then()
                    .statusCode(200);
            as(admin)
                    .body("{\"hourlyRate\": 80, \"taxPercent\": 20, \"parts\": {\"wheel-cylinder\": 25.50},"
                            + " \"hours\": {\"renew wheel-cylinder\": 0.5}}")
                    .put("/v1/price-lists/" + site)
                    .then()
                    .statusCode(200);
        }
        List<String> events = new ArrayList<>();
        for (int number = 0; number < 12; number++) {
            String reference = String.format(Locale.ROOT, "QS-%02d", number);
            String site = number < 8 ? "quay-street" : "mill-bridge";
            events.add(presentation(reference, site));
            if (number % 4 != 3) {
                events.add(event(
                        "finding.recorded",
                        reference,
                        "{\"stage\": \"as-found\", \"component\":"
                                + " \"wheel-cylinder\", \"condition\": \"leaking\", \"axle\": 2, \"side\": \"left\"}"));
            }
        }
        events.add(event(
                "departure.recorded",
                "QS-00",
                "{\"clause\": \"twin-hydraulic-part\", \"reason\": \"renewed\"," + " \"by\": \"Rowan Ames\"}"));
        given().header("Authorization", "Bearer " + admin)
                .contentType("application/cloudevents-batch+json; charset=UTF-8")
                .body("[" + String.join(",", events) + "]")
                .post("/v1/events")
                .then()
                .statusCode(200);
        as(admin).body(DRAFT).put("/v1/policies/repairs/draft").then().statusCode(200);
    }

    @Test
    void a_trial_tells_what_the_draft_would_have_done_by_cause_and_by_site_with_examples() {
        Response begun = begin(admin, "{}");
        assertThat(begun.statusCode()).as(begun.asString()).isEqualTo(202);
        assertThat(begun.jsonPath().getString("state")).isEqualTo("running");
        assertThat(begun.jsonPath().getInt("cases")).isEqualTo(12);

        runTrials.run();

        Response done = as(admin).get(begun.header("Location").replaceFirst("^https?://[^/]+", ""));
        assertThat(done.jsonPath().getString("state")).isEqualTo("done");
        assertThat(done.jsonPath().getInt("tried")).isEqualTo(12);
        assertThat(done.jsonPath().getBoolean("departuresIgnored")).isTrue();
        JsonNode all = Json.read(done.asString()).path("result").path("all");
        assertThat(all.path("cases").asInt()).isEqualTo(12);
        assertThat(all.path("changed").asInt()).isEqualTo(9);
        assertThat(all.path("lacking").asInt()).isEqualTo(3);
        assertThat(all.path("withDepartures").asInt()).isEqualTo(1);
        assertThat(all.path("failed").asInt()).isZero();
        assertThat(all.path("linesOfOtherNecessity").asInt()).isEqualTo(6);
        assertThat(all.path("linesDropped").asInt()).isEqualTo(3);
        assertThat(all.path("money").path("GBP").decimalValue()).isEqualByComparingTo("393.00");
        assertThat(all.path("moneyWithRecommended").path("GBP").decimalValue()).isEqualByComparingTo("-196.50");
        assertThat(done.jsonPath().getInt("result.bySite.'quay-street'.changed"))
                .isEqualTo(6);
        assertThat(done.jsonPath().getInt("result.bySite.'mill-bridge'.linesDropped"))
                .isEqualTo(3);
        assertThat(done.jsonPath().getInt("result.byCause.'wheel-cylinder-leaking'.changed"))
                .isEqualTo(9);
        assertThat(done.jsonPath().getList("result.examples.reference"))
                .isEqualTo(List.of("QS-00", "QS-01", "QS-02", "QS-04", "QS-05", "QS-06", "QS-08", "QS-09", "QS-10"));
        Response both = as(admin).get(done.jsonPath().getString("result.examples[0].link"));
        String twin = "scope.find { it.id == 'renew-wheel-cylinder-axle-2-right' }.necessity";
        assertThat(both.jsonPath().getString("before." + twin)).isEqualTo("recommended");
        assertThat(both.jsonPath().getString("after." + twin)).isEqualTo("required");
    }

    @Test
    void the_same_trial_twice_gives_the_same_also_when_a_worker_is_lost_in_the_middle() {
        Response first = begin(admin, "{}");
        runTrials.run();
        Response second = begin(admin, "{}");
        TrialStore.Due due =
                new TrialStore.Due(tenant, UUID.fromString(second.jsonPath().getString("id")));
        assertThat(tryPolicies.doBatch(due)).isTrue();
        assertThat(trial(second).jsonPath().getInt("tried")).isEqualTo(5);
        assertThatThrownBy(() -> transaction.run(tenant, () -> {
                    tryPolicies.doBatch(due);
                    throw new IllegalStateException("the worker is lost before it commits");
                }))
                .hasMessageContaining("lost");
        assertThat(trial(second).jsonPath().getInt("tried")).isEqualTo(5);

        runTrials.run();

        assertThat(result(second)).isEqualTo(result(first));
        assertThat(trial(second).jsonPath().getString("state")).isEqualTo("done");
    }

    @Test
    void a_trial_is_cancelled_and_keeps_what_it_has_found() {
        Response begun = begin(admin, "{}");
        TrialStore.Due due =
                new TrialStore.Due(tenant, UUID.fromString(begun.jsonPath().getString("id")));
        tryPolicies.doBatch(due);

        Response cancelled = as(admin).delete("/v1/trials/" + begun.jsonPath().getString("id"));
        runTrials.run();

        assertThat(cancelled.jsonPath().getString("state")).isEqualTo("cancelled");
        assertThat(trial(begun).jsonPath().getInt("tried")).isEqualTo(5);
        assertThat(tryPolicies.doBatch(due)).isFalse();
    }

    @Test
    void cases_are_chosen_by_site_period_and_cause() {
        assertThat(begin(admin, "{\"sites\": [\"mill-bridge\"]}").jsonPath().getInt("cases"))
                .isEqualTo(4);
        assertThat(begin(admin, "{\"cause\": \"wheel-cylinder-leaking\"}")
                        .jsonPath()
                        .getInt("cases"))
                .isEqualTo(9);
        assertThat(begin(admin, "{\"from\": \"2026-03-03\"}").jsonPath().getInt("cases"))
                .isZero();
        assertThat(begin(admin, "{\"sites\": [\"nowhere\"], \"cause\": \"nothing\"}")
                        .jsonPath()
                        .getList("causes.pointer"))
                .isEqualTo(List.of("/sites/0", "/cause"));
    }

    @Test
    void a_key_of_one_site_tries_and_sees_the_cases_of_that_site_alone() {
        String ofOne = key(Role.POLICY, List.of("mill-bridge"));
        Response own = begin(ofOne, "{}");
        Response ofAll = begin(admin, "{}");

        assertThat(own.jsonPath().getInt("cases")).isEqualTo(4);
        assertThat(as(ofOne)
                        .get("/v1/trials/" + ofAll.jsonPath().getString("id"))
                        .statusCode())
                .isEqualTo(404);
        assertThat(begin(ofOne, "{\"sites\": [\"quay-street\"]}").statusCode()).isEqualTo(422);
    }

    private JsonNode result(Response begun) {
        ObjectNode result = (ObjectNode) Json.read(trial(begun).asString()).path("result");
        result.path("examples").forEach(example -> ((ObjectNode) example).remove("link"));
        return result;
    }

    private Response trial(Response begun) {
        return as(admin).get("/v1/trials/" + begun.jsonPath().getString("id"));
    }

    private Response begin(String key, String wanted) {
        return as(key).body(wanted).post("/v1/policies/repairs/trials");
    }

    private String key(Role role, @Nullable List<String> sites) {
        return makeKey.make(tenant, new KeyTerms(UUID.randomUUID().toString(), role, sites, null), "test");
    }
}
