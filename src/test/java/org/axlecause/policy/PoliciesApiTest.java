package org.axlecause.policy;

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
import java.util.UUID;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@TestProfile(WithKeys.class)
class PoliciesApiTest {

    private static final String TWIN_REQUIRED = """
            {"means": "how we repair", "chain": [{"clause": "twin-hydraulic-part", "necessity": "required"}]}""";
    private static final String TWIN = "renew-wheel-cylinder-axle-2-right";

    @Inject
    MakeKey makeKey;

    private final String tenant = "chain-" + UUID.randomUUID().toString().substring(0, 8);
    private String admin = "";

    @BeforeEach
    void a_chain_of_three_sites() {
        admin = key(Role.ADMIN, null);
        site("quay-street", "north", "gb-annual");
        site("mill-bridge", "north", "gb-annual");
        site("hill-top", "south", "cz-periodic");
    }

    @Test
    void a_draft_becomes_a_version_that_never_changes_and_history_says_who_when_and_why() {
        String author = key(Role.POLICY, null);
        Response written = write(author, "repairs", TWIN_REQUIRED, null);
        Response published = publish(author, "repairs", tag(written), today(), "callers asked for it");
        Response again = write(author, "repairs", TWIN_REQUIRED.replace("required", "optional"), null);
        publish(author, "repairs", tag(again), today(), "customers declined it");

        assertThat(written.statusCode()).isEqualTo(200);
        assertThat(published.statusCode()).isEqualTo(201);
        assertThat(published.jsonPath().getString("state")).isEqualTo("published");
        Response history = as(author).get("/v1/policies/repairs/versions");
        assertThat(history.jsonPath().getList("version")).isEqualTo(List.of(2, 1));
        assertThat(history.jsonPath().getList("state")).isEqualTo(List.of("published", "superseded"));
        assertThat(history.jsonPath().getList("reason"))
                .isEqualTo(List.of("customers declined it", "callers asked for it"));
        assertThat(history.jsonPath().getList("publishedBy")).doesNotContainNull();
        assertThat(as(author)
                        .get("/v1/policies/repairs/versions/1")
                        .jsonPath()
                        .getString("document.chain[0].necessity"))
                .isEqualTo("required");
        assertThat(as(author).get("/v1/policies/repairs/draft").statusCode()).isEqualTo(404);
        assertThat(as(author).get("/v1/policies").jsonPath().getList("name")).isEqualTo(List.of("repairs"));
        Response comparison = as(author).get("/v1/policies/repairs/comparison?from=1&to=2");
        assertThat(comparison.jsonPath().getString("table[0].before")).isEqualTo("required");
        assertThat(comparison.jsonPath().getString("words[0]"))
                .startsWith("For the chain, how strongly the sound wheel cylinder opposite a failed one is offered")
                .endsWith(": optional; it was required.");
    }

    @Test
    void who_changes_a_draft_names_the_state_that_he_has_seen() {
        String author = key(Role.POLICY, null);
        String first = tag(write(author, "repairs", TWIN_REQUIRED, null));

        assertThat(write(author, "repairs", TWIN_REQUIRED, null).statusCode()).isEqualTo(428);
        String second = tag(write(author, "repairs", TWIN_REQUIRED, first));
        assertThat(write(author, "repairs", TWIN_REQUIRED, first).statusCode()).isEqualTo(412);
        assertThat(publish(author, "repairs", null, today(), "a start").statusCode())
                .isEqualTo(428);
        assertThat(publish(author, "repairs", first, today(), "a start").statusCode())
                .isEqualTo(412);
        assertThat(as(author)
                        .header("If-None-Match", second)
                        .get("/v1/policies/repairs/draft")
                        .statusCode())
                .isEqualTo(304);
        assertThat(publish(author, "repairs", second, today(), "a start").statusCode())
                .isEqualTo(201);
        assertThat(write(author, "repairs", TWIN_REQUIRED, second).statusCode()).isEqualTo(412);
    }

    @Test
    void a_version_is_not_backdated_and_not_published_without_a_reason() {
        String author = key(Role.POLICY, null);
        String tag = tag(write(author, "repairs", TWIN_REQUIRED, null));

        Response backdated = publish(author, "repairs", tag, today().minusDays(1), "a start");
        assertThat(backdated.statusCode()).isEqualTo(422);
        assertThat(backdated.jsonPath().getString("causes[0].pointer")).isEqualTo("/effectiveFrom");
        assertThat(publish(author, "repairs", tag, today(), " ").jsonPath().getString("causes[0].pointer"))
                .isEqualTo("/reason");
        assertThat(publish(author, "repairs", tag, today().plusDays(10), "a start")
                        .statusCode())
                .isEqualTo(201);
        String next = tag(write(author, "repairs", TWIN_REQUIRED, null));
        assertThat(publish(author, "repairs", next, today().plusDays(9), "sooner")
                        .statusCode())
                .isEqualTo(422);
    }

    @Test
    void a_clause_weaker_than_the_law_is_refused_with_the_source_of_the_law() {
        String author = key(Role.POLICY, null);
        Response weak = write(author, "repairs", """
                {"means": "how we repair", "chain": [{"clause": "retest-imbalance", "value": 35, "unit": "%"}]}""", null);

        assertThat(weak.statusCode()).isEqualTo(422);
        assertThat(weak.jsonPath().getString("causes[0].pointer")).isEqualTo("/chain/0");
        assertThat(weak.jsonPath().getString("causes[0].text"))
                .contains("weaker than the law of the regime", "at most");
        assertThat(as(author).get("/v1/policies/repairs/draft").statusCode()).isEqualTo(404);
        assertThat(write(author, "repairs", """
                {"means": "how we repair", "sites": {"quay-street": [{"clause": "nothing"}]}}""", null).jsonPath().getString("causes[0].pointer"))
                .isEqualTo("/sites/quay-street/0/clause");
    }

    @Test
    void the_effective_view_shows_each_value_with_its_layer() {
        String author = key(Role.POLICY, null);
        published(author, "repairs", """
                {"means": "how we repair",
                 "chain": [{"clause": "retest-imbalance", "value": 14, "unit": "%"},
                           {"clause": "twin-hydraulic-part", "necessity": "required", "locked": true}],
                 "regions": {"north": [{"clause": "retest-imbalance", "value": 12, "unit": "%"}]}}""");

        Response north = as(author).get("/v1/policies/repairs/effective?site=quay-street");
        Response south = as(author).get("/v1/policies/repairs/effective?site=hill-top");

        assertThat(north.jsonPath().getString("clauses.find { it.sets.clause == 'retest-imbalance' }.from"))
                .isEqualTo("region");
        assertThat(south.jsonPath().getString("clauses.find { it.sets.clause == 'retest-imbalance' }.from"))
                .isEqualTo("chain");
        assertThat(south.jsonPath().getString("clauses.find { it.sets.clause == 'twin-hydraulic-part' }.lockedBy"))
                .isEqualTo("chain");
        assertThat(south.jsonPath().getString("clauses.find { it.sets.clause == 'hub-play' }.from"))
                .isEqualTo("baseline");
    }

    @Test
    void a_case_is_judged_by_the_version_in_effect_when_it_was_presented_and_moved_by_adoption_alone() {
        String author = key(Role.POLICY, null);
        String sender = key(Role.SENDER, null);
        String early =
                aCase(sender, "quay-street", OffsetDateTime.now(ZoneOffset.UTC).minusDays(3));
        published(author, "repairs", TWIN_REQUIRED);
        String later = aCase(sender, "quay-street", OffsetDateTime.now(ZoneOffset.UTC));

        assertThat(judgedBy(early)).isEqualTo("baseline 1");
        assertThat(necessityOfTwin(early)).isEqualTo("recommended");
        assertThat(judgedBy(later)).isEqualTo("repairs 1");
        assertThat(necessityOfTwin(later)).isEqualTo("required");
        published(author, "repairs", TWIN_REQUIRED.replace("required", "optional"));
        post(
                sender,
                event(
                        "finding.recorded",
                        later,
                        "{\"stage\": \"as-found\", \"component\": \"drum\","
                                + " \"condition\": \"sound\", \"axle\": 2, \"side\": \"left\"}"));
        assertThat(judgedBy(later)).isEqualTo("repairs 1");
        Response adopted = post(author, adoption(early, "repairs", 2));
        assertThat(adopted.statusCode()).as(adopted.asString()).isEqualTo(200);
        assertThat(judgedBy(early)).isEqualTo("repairs 2");
        assertThat(necessityOfTwin(early)).isEqualTo("optional");
    }

    @Test
    void two_persons_are_needed_where_the_policy_wants_them_and_the_rule_binds_who_would_drop_it() {
        String author = key(Role.POLICY, null);
        String other = key(Role.POLICY, null);
        String wanting = TWIN_REQUIRED.replace("\"chain\"", "\"twoPersons\": true, \"chain\"");
        String tag = tag(write(author, "repairs", wanting, null));

        Response alone = publish(author, "repairs", tag, today(), "a start");
        assertThat(alone.statusCode()).isEqualTo(403);
        assertThat(alone.jsonPath().getString("code")).isEqualTo("two-persons-needed");
        assertThat(publish(other, "repairs", tag, today(), "a start").statusCode())
                .isEqualTo(201);
        String dropped = tag(write(author, "repairs", TWIN_REQUIRED, null));
        assertThat(publish(author, "repairs", dropped, today(), "one will do").statusCode())
                .isEqualTo(403);
    }

    @Test
    void a_site_has_one_policy() {
        String author = key(Role.POLICY, null);
        published(author, "repairs", TWIN_REQUIRED);
        String tag = tag(write(author, "other", TWIN_REQUIRED, null));

        Response both = publish(author, "other", tag, today(), "a second one");

        assertThat(both.statusCode()).isEqualTo(409);
        assertThat(both.jsonPath().getString("detail")).contains("'repairs'");
    }

    @Test
    void a_departure_acts_on_its_line_is_shown_and_counted_and_a_locked_clause_refuses_it() {
        String author = key(Role.POLICY, null);
        String sender = key(Role.SENDER, List.of("quay-street"));
        published(author, "repairs", TWIN_REQUIRED);
        String open = aCase(sender, "quay-street", OffsetDateTime.now(ZoneOffset.UTC));

        Response departed = post(sender, departure(open, "twin-hydraulic-part"));
        Response none = post(sender, departure(open, "retest-noise"));

        assertThat(departed.statusCode()).as(departed.asString()).isEqualTo(200);
        assertThat(necessityOfTwin(open)).isNull();
        assertThat(document(open).jsonPath().getString("departures[0].clause")).isEqualTo("twin-hydraulic-part");
        assertThat(document(open).jsonPath().getString("departures[0].reason")).isEqualTo("renewed last month");
        assertThat(document(open).jsonPath().getBoolean("departures[0].acts")).isTrue();
        assertThat(none.statusCode()).isEqualTo(422);
        assertThat(none.jsonPath().getString("code")).isEqualTo("clause-not-departed-from");
        Response counted = as(author).get("/v1/departures");
        assertThat(counted.jsonPath().getList("clause")).isEqualTo(List.of("twin-hydraulic-part"));
        assertThat(counted.jsonPath().getInt("[0].cases")).isOne();
        assertThat(counted.jsonPath().getString("[0].site")).isEqualTo("quay-street");

        published(author, "repairs", TWIN_REQUIRED.replace("\"required\"", "\"required\", \"locked\": true"));
        String locked = aCase(sender, "quay-street", OffsetDateTime.now(ZoneOffset.UTC));
        Response refused = post(sender, departure(locked, "twin-hydraulic-part"));
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.jsonPath().getString("code")).isEqualTo("clause-locked");
        assertThat(refused.jsonPath().getString("causes[0].text")).contains("twin-hydraulic-part", "locked");
        assertThat(necessityOfTwin(locked)).isEqualTo("required");
    }

    @Test
    void a_departure_that_comes_before_its_case_is_kept_and_without_effect_where_the_clause_is_locked() {
        String author = key(Role.POLICY, null);
        String sender = key(Role.SENDER, null);
        published(author, "repairs", TWIN_REQUIRED.replace("\"required\"", "\"required\", \"locked\": true"));
        String reference = "QS-" + UUID.randomUUID().toString().substring(0, 8);

        assertThat(post(sender, departure(reference, "twin-hydraulic-part")).statusCode())
                .isEqualTo(200);
        present(sender, reference, "quay-street", OffsetDateTime.now(ZoneOffset.UTC));

        assertThat(necessityOfTwin(reference)).isEqualTo("required");
        assertThat(document(reference).jsonPath().getBoolean("departures[0].acts"))
                .isFalse();
        assertThat(document(reference).jsonPath().getList("questions.code")).contains("departure-without-effect");
    }

    private void published(String key, String name, String document) {
        Response written = write(key, name, document, null);
        assertThat(written.statusCode()).as(written.asString()).isEqualTo(200);
        Response answer = publish(key, name, tag(written), today(), "the chain decided it");
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(201);
    }

    private Response write(String key, String name, String document, @Nullable String tag) {
        RequestSpecification request = as(key).body(document);
        return (tag == null ? request : request.header("If-Match", tag)).put("/v1/policies/" + name + "/draft");
    }

    private Response publish(String key, String name, @Nullable String tag, LocalDate from, String reason) {
        RequestSpecification request =
                as(key).body("{\"effectiveFrom\": \"" + from + "\", \"reason\": \"" + reason + "\"}");
        return (tag == null ? request : request.header("If-Match", tag)).post("/v1/policies/" + name + "/versions");
    }

    private String aCase(String key, String site, OffsetDateTime presented) {
        String reference = "QS-" + UUID.randomUUID().toString().substring(0, 8);
        present(key, reference, site, presented);
        return reference;
    }

    private void present(String key, String reference, String site, OffsetDateTime presented) {
        for (String sent : List.of(presentation(reference, site, presented), leak(reference, presented))) {
            Response answer = post(key, sent);
            assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        }
    }

    private static String adoption(String reference, String policy, int version) {
        return event(
                "policy.adopted",
                reference,
                "{\"policy\": \"" + policy + "\", \"version\": " + version
                        + ", \"reason\": \"the chain decided it\", \"by\": \"Rowan Ames\"}");
    }

    private static String departure(String reference, String clause) {
        return event(
                "departure.recorded",
                reference,
                "{\"clause\": \"" + clause + "\", \"line\": \"" + TWIN
                        + "\", \"reason\": \"renewed last month\", \"by\": \"Rowan Ames\"}");
    }

    private Response post(String key, String event) {
        return given().header("Authorization", "Bearer " + key)
                .contentType("application/cloudevents+json; charset=UTF-8")
                .body(event)
                .post("/v1/events");
    }

    private Response document(String reference) {
        return as(admin).get("/v1/cases/" + reference);
    }

    private String judgedBy(String reference) {
        Response document = document(reference);
        return document.jsonPath().getString("policy.code") + " "
                + document.jsonPath().getString("policy.version");
    }

    private @Nullable String necessityOfTwin(String reference) {
        return document(reference).jsonPath().getString("scope.find { it.id == '" + TWIN + "' }?.necessity");
    }

    private void site(String code, String region, String regime) {
        as(admin)
                .body("{\"name\": \"Site\", \"region\": \"" + region + "\", \"timeZone\": \"Etc/UTC\","
                        + " \"currency\": \"GBP\", \"regime\": \"" + regime + "\"}")
                .put("/v1/sites/" + code)
                .then()
                .statusCode(200);
    }

    private static LocalDate today() {
        return LocalDate.now(ZoneOffset.UTC);
    }

    private static String tag(Response answer) {
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        return answer.header("ETag");
    }

    private String key(Role role, @Nullable List<String> sites) {
        return makeKey.make(tenant, new KeyTerms(UUID.randomUUID().toString(), role, sites, null), "test");
    }
}
