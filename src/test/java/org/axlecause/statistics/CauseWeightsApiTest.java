package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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

/** Weights that a chain learns from what its technicians confirm, proposed by one and published by another. */
@QuarkusTest
@TestProfile(WithKeys.class)
class CauseWeightsApiTest {

    private static final String OVAL = "{\"code\": \"drum-oval\", \"axle\": 2, \"side\": \"right\"}";
    private static final String ECCENTRIC = "{\"code\": \"drum-eccentric\", \"axle\": 2, \"side\": \"right\"}";
    private static final int VEHICLES = 50;
    private static final int EVERY_FIFTH = 5;

    @Inject
    MakeKey makeKey;

    @Inject
    RunLearning runLearning;

    @Inject
    LearnWeights learnWeights;

    @Inject
    TenantTransaction transaction;

    private final String tenant = Chain.aTenant();
    private Chain chain;
    private String admin = "";
    private String analyst = "";
    private String publisher = "";

    @BeforeEach
    void a_chain_with_an_analyst_and_a_publisher() {
        admin = key(tenant, Role.ADMIN, null);
        analyst = key(tenant, Role.ANALYST, null);
        publisher = key(tenant, Role.POLICY, null);
        chain = new Chain(admin);
        chain.site("quay-street", "coast");
    }

    /** Of 50 vehicles, each twice in the workshop, four in five have an oval drum and the others an eccentric one. */
    @Test
    void what_was_confirmed_is_learned_held_against_cases_held_out_published_and_weighs_what_comes_then() {
        aHundredCases();
        chain.aCase("EARLY", "quay-street", "2026-03-02T08:15:00Z")
                .presented()
                .arrivalTest(6, 39)
                .send();
        String early = document("EARLY");

        Response begun = propose(analyst, "{}");
        assertThat(begun.statusCode()).as(begun.asString()).isEqualTo(202);
        assertThat(begun.jsonPath().getString("state")).isEqualTo("counting");
        assertThat(propose(analyst, "{}").statusCode()).as("one at a time").isEqualTo(409);
        runLearning.run();

        Response answer = chain.as(analyst).get(address(begun));
        JsonPath proposal = answer.jsonPath();
        assertThat(proposal.getString("state")).as(answer.asString()).isEqualTo("proposed");
        long learnedFrom = proposal.getLong("learnedFrom");
        long heldOut = proposal.getLong("heldOut");
        assertThat(learnedFrom + heldOut).isEqualTo(2 * VEHICLES);
        assertThat(heldOut)
                .as("both cases of a vehicle are on one side")
                .isEven()
                .isBetween(8L, 48L);
        assertThat(proposal.getLong("scored")).isEqualTo(heldOut);
        assertThat(proposal.getLong("failed")).isZero();
        JsonNode oval = learned(answer, "drum-oval", "drum-old");
        JsonNode eccentric = learned(answer, "drum-eccentric", "drum-old");
        assertThat(number(oval, "/confirmed/of")).isEqualTo((double) learnedFrom);
        assertThat(number(oval, "/confirmed/count") + number(eccentric, "/confirmed/count"))
                .isEqualTo((double) learnedFrom);
        assertThat(number(oval, "/learnedShare"))
                .as("200 cases of the book and those confirmed, by hand")
                .isCloseTo(
                        (200 * number(oval, "/bookShare") + number(oval, "/confirmed/count")) / (200 + learnedFrom),
                        within(1e-10));
        assertThat(number(oval, "/learnedWeight"))
                .isCloseTo(
                        number(oval, "/bookWeight") * number(oval, "/learnedShare") / number(oval, "/bookShare"),
                        within(1e-9))
                .isGreaterThan(3 * number(oval, "/bookWeight"));
        assertThat(number(oval, "/interval/low")).isLessThan(number(oval, "/learnedShare"));
        assertThat(number(oval, "/interval/high")).isGreaterThan(number(oval, "/learnedShare"));
        assertThat(proposal.getList("learned.findAll { it.group == 'drum-young' }"))
                .as("no young drum was seen")
                .isEmpty();
        assertThat(proposal.getLong("before.probabilities"))
                .isPositive()
                .isEqualTo(proposal.getLong("after.probabilities"));
        assertThat(proposal.getDouble("after.brier")).isLessThan(proposal.getDouble("before.brier"));
        assertThat(proposal.getDouble("after.reliability")).isLessThan(proposal.getDouble("before.reliability"));
        assertThat(proposal.getBoolean("forecastsBetter")).isTrue();
        assertThat(proposal.getList("definitions.word")).contains("held out", "learned");

        assertThat(document(again("EARLY"))).as("a proposal judges nothing").isEqualTo(early);
        OffsetDateTime from = OffsetDateTime.now(ZoneOffset.UTC).plusMinutes(3);
        Response published = publish(publisher, begun, answer.header("ETag"), from, "a year of confirmed causes");
        assertThat(published.statusCode()).as(published.asString()).isEqualTo(201);
        assertThat(published.jsonPath().getString("state")).isEqualTo("to-come");
        assertThat(published.jsonPath().getList("published.findAll { it.cause == 'drum-oval' }.weight"))
                .hasSize(1);

        chain.aCase("BEFORE", "quay-street", from.minusSeconds(1).toString())
                .presented()
                .arrivalTest(6, 39)
                .send();
        chain.aCase("AFTER", "quay-street", from.toString())
                .presented()
                .arrivalTest(6, 39)
                .send();
        assertThat(document(again("EARLY"))).isEqualTo(early);
        assertThat(caseOf("BEFORE").getMap("causeWeights")).isNull();
        assertThat(caseOf("AFTER").getInt("causeWeights.version")).isEqualTo(1);
        assertThat(ovalIn("BEFORE")).isEqualTo(ovalIn("EARLY"));
        assertThat(ovalIn("AFTER")).isGreaterThan(ovalIn("BEFORE") + 0.05);
    }

    @Test
    void a_step_of_a_lost_replica_is_done_again_and_nothing_is_counted_twice() {
        aHundredCases();
        Response begun = propose(analyst, "{}");
        ProposalStore.Due due =
                new ProposalStore.Due(tenant, UUID.fromString(begun.jsonPath().getString("id")));
        assertThat(learnWeights.step(due)).isTrue();
        long counted = looked(begun);
        assertThat(counted).as("seven at a time in tests").isEqualTo(7);

        assertThatThrownBy(() -> transaction.run(tenant, () -> {
                    learnWeights.step(due);
                    throw new IllegalStateException("the replica is lost before it commits");
                }))
                .hasMessageContaining("lost");
        assertThat(looked(begun)).isEqualTo(counted);
        runLearning.run();

        assertThat(looked(begun)).isEqualTo(2 * VEHICLES);
        assertThat(learnWeights.step(due)).as("nothing is left").isFalse();
    }

    @Test
    void a_few_cases_teach_nothing_and_nothing_of_it_can_be_published() {
        chain.aCase("QS-1", "quay-street", "2026-03-02T08:15:00Z")
                .presented()
                .arrivalTest(6, 39)
                .closed("refused", OVAL)
                .send();
        Response begun = propose(analyst, "{\"weights\": \"learned\"}");

        runLearning.run();

        Response answer = chain.as(analyst).get(address(begun));
        assertThat(answer.jsonPath().getString("state")).isEqualTo("nothing-learned");
        assertThat(publish(publisher, begun, answer.header("ETag"), soon(), "any")
                        .statusCode())
                .isEqualTo(409);
    }

    @Test
    void whoever_publishes_names_the_state_he_has_seen_a_reason_and_a_moment_that_is_not_past() {
        Response book = propose(analyst, "{\"weights\": \"book\"}");
        String tag = book.header("ETag");
        assertThat(book.jsonPath().getString("state")).isEqualTo("proposed");

        assertThat(publish(publisher, book, null, soon(), "any").statusCode()).isEqualTo(428);
        assertThat(publish(publisher, book, "\"other\"", soon(), "any").statusCode())
                .isEqualTo(412);
        Response past = publish(publisher, book, tag, OffsetDateTime.now(ZoneOffset.UTC), " ");
        assertThat(past.statusCode()).isEqualTo(422);
        assertThat(past.jsonPath().getList("causes.pointer")).isEqualTo(List.of("/effectiveFrom", "/reason"));
        assertThat(publish(
                                publisher,
                                book,
                                tag,
                                OffsetDateTime.now(ZoneOffset.UTC).plusYears(11),
                                "any")
                        .statusCode())
                .isEqualTo(422);
        assertThat(chain.as(publisher)
                        .header("If-Match", tag)
                        .body("{\"reason\": \"any\"}")
                        .post("/v1/cause-weights/versions")
                        .jsonPath()
                        .getString("causes[0].pointer"))
                .isEqualTo("/proposal");
        assertThat(propose(analyst, "{\"weights\": \"guessed\"}").jsonPath().getString("causes[0].pointer"))
                .isEqualTo("/weights");
        assertThat(chain.as(analyst)
                        .header("If-None-Match", tag)
                        .get(address(book))
                        .statusCode())
                .isEqualTo(304);
        assertThat(publish(publisher, book, tag, soon().plusHours(1), "a start").statusCode())
                .isEqualTo(201);
        assertThat(publish(publisher, book, "*", soon().plusHours(2), "again").statusCode())
                .as("published once")
                .isEqualTo(409);
        Response next = propose(analyst, "{\"weights\": \"book\"}");
        assertThat(publish(publisher, next, "*", soon(), "sooner").statusCode())
                .as("versions begin in their order")
                .isEqualTo(422);
    }

    @Test
    void history_says_who_when_and_why_and_the_book_published_again_weighs_as_the_book() {
        chain.aCase("EARLY", "quay-street", "2026-03-02T08:15:00Z")
                .presented()
                .arrivalTest(6, 39)
                .send();
        Response first = propose(analyst, "{\"weights\": \"book\"}");
        OffsetDateTime from = soon();
        publish(publisher, first, "*", from, "a start");
        Response second = propose(publisher, "{\"weights\": \"book\"}");
        publish(publisher, second, "*", from.plusMinutes(5), "once more");

        JsonPath history = chain.as(analyst).get("/v1/cause-weights/versions").jsonPath();
        assertThat(history.getList("version")).isEqualTo(List.of(2, 1));
        assertThat(history.getList("state")).isEqualTo(List.of("to-come", "to-come"));
        assertThat(history.getList("reason")).isEqualTo(List.of("once more", "a start"));
        assertThat(history.getList("weights")).isEqualTo(List.of("book", "book"));
        assertThat(history.getList("publishedBy")).doesNotContainNull().hasSize(2);
        assertThat(history.getString("[1].authors[0]"))
                .isNotEqualTo(history.getString("[1].publishedBy"))
                .isEqualTo(chain.as(analyst).get(address(first)).jsonPath().getString("createdBy"));
        assertThat(chain.as(analyst)
                        .get("/v1/cause-weights/versions/1")
                        .jsonPath()
                        .getList("published"))
                .isEmpty();
        chain.aCase("AFTER", "quay-street", from.toString())
                .presented()
                .arrivalTest(6, 39)
                .send();
        assertThat(caseOf("AFTER").getInt("causeWeights.version")).isEqualTo(1);
        assertThat(ovalIn("AFTER")).isEqualTo(ovalIn("EARLY"));
        assertThat(acts())
                .containsExactly(
                        "cause-weights-proposed",
                        "cause-weights-published",
                        "cause-weights-proposed",
                        "cause-weights-published");
    }

    @Test
    void a_withdrawn_proposal_is_not_published_and_a_published_one_not_withdrawn() {
        Response kept = propose(analyst, "{\"weights\": \"book\"}");
        Response gone = propose(analyst, "{\"weights\": \"book\"}");

        assertThat(chain.as(analyst).delete(address(gone)).jsonPath().getString("state"))
                .isEqualTo("withdrawn");
        assertThat(publish(publisher, gone, "*", soon(), "any").statusCode()).isEqualTo(409);
        assertThat(publish(publisher, kept, "*", soon(), "any").statusCode()).isEqualTo(201);
        assertThat(chain.as(analyst).delete(address(kept)).statusCode()).isEqualTo(409);
        assertThat(chain.as(analyst)
                        .get("/v1/cause-weights/proposals")
                        .jsonPath()
                        .getList("state"))
                .isEqualTo(List.of("withdrawn", "published"));
    }

    @Test
    void two_persons_are_needed_where_a_policy_wants_them() {
        chain.as(publisher)
                .body("{\"means\": \"how we repair\", \"twoPersons\": true}")
                .put("/v1/policies/repairs/draft")
                .then()
                .statusCode(200);
        chain.as(admin)
                .header("If-Match", "*")
                .body("{\"effectiveFrom\": \"2100-01-01\", \"reason\": \"a start\"}")
                .post("/v1/policies/repairs/versions")
                .then()
                .statusCode(201);
        Response own = propose(publisher, "{\"weights\": \"book\"}");

        Response alone = publish(publisher, own, "*", soon(), "any");

        assertThat(alone.statusCode()).isEqualTo(403);
        assertThat(alone.jsonPath().getString("code")).isEqualTo("two-persons-needed");
        assertThat(publish(admin, own, "*", soon(), "any").statusCode()).isEqualTo(201);
    }

    @Test
    void only_who_speaks_for_all_sites_sees_them_only_who_writes_policies_publishes_and_strangers_find_nothing() {
        Response book = propose(analyst, "{\"weights\": \"book\"}");
        publish(publisher, book, "*", soon(), "any");
        String ofOne = key(tenant, Role.ADMIN, List.of("quay-street"));
        String stranger = key(Chain.aTenant(), Role.ADMIN, null);

        assertThat(publish(analyst, book, "*", soon(), "any").statusCode()).isEqualTo(403);
        assertThat(propose(key(tenant, Role.TECHNICIAN, null), "{}").statusCode())
                .isEqualTo(403);
        for (String path : List.of("/v1/cause-weights/proposals", "/v1/cause-weights/versions", address(book))) {
            assertThat(chain.as(ofOne).get(path).statusCode()).as(path).isEqualTo(403);
        }
        assertThat(chain.as(stranger).get("/v1/cause-weights/proposals").asString())
                .isEqualTo("[]");
        assertThat(chain.as(stranger).get("/v1/cause-weights/versions").asString())
                .isEqualTo("[]");
        assertThat(chain.as(stranger).get(address(book)).statusCode()).isEqualTo(404);
        assertThat(chain.as(stranger).delete(address(book)).statusCode()).isEqualTo(404);
        assertThat(chain.as(stranger).get("/v1/cause-weights/versions/1").statusCode())
                .isEqualTo(404);
        assertThat(publish(stranger, book, "*", soon(), "any").statusCode()).isEqualTo(422);
    }

    private void aHundredCases() {
        for (int vehicle = 0; vehicle < VEHICLES; vehicle++) {
            String confirmed = vehicle % EVERY_FIFTH == 0 ? ECCENTRIC : OVAL;
            for (String visit : List.of("A", "B")) {
                chain.aCase(
                                String.format(Locale.ROOT, "QS-%02d-%s", vehicle, visit),
                                "quay-street",
                                visit.equals("A") ? "2026-03-02T08:15:00Z" : "2026-05-02T08:15:00Z")
                        .registered(String.format(Locale.ROOT, "LN%02d ABC", vehicle))
                        .presented()
                        .arrivalTest(6, 39)
                        .closed("refused", confirmed)
                        .send();
            }
        }
    }

    /** What was done about weights, in its order. */
    private List<String> acts() {
        return transaction.call(
                tenant,
                () -> transaction.jdbc((connection, open) -> {
                    try (PreparedStatement query = connection.prepareStatement(
                            "SELECT action FROM audit_note WHERE tenant_id = ? AND action LIKE 'cause-weights%' ORDER BY note")) {
                        query.setString(1, open);
                        List<String> acts = new ArrayList<>();
                        try (ResultSet row = query.executeQuery()) {
                            while (row.next()) {
                                acts.add(row.getString(1));
                            }
                        }
                        return acts;
                    }
                }));
    }

    /** Judges the case again without any new entry. */
    private String again(String reference) {
        chain.as(admin).post("/v1/cases/" + reference + "/judgements").then().statusCode(200);
        return reference;
    }

    private String document(String reference) {
        return chain.as(admin).get("/v1/cases/" + reference).asString();
    }

    private JsonPath caseOf(String reference) {
        return chain.as(admin).get("/v1/cases/" + reference).jsonPath();
    }

    private double ovalIn(String reference) {
        return caseOf(reference)
                .getDouble("causes.find { it.code == 'drum-oval' && it.place.side == 'right' }.probability");
    }

    private long looked(Response begun) {
        JsonPath proposal = chain.as(analyst).get(address(begun)).jsonPath();
        return proposal.getLong("learnedFrom") + proposal.getLong("heldOut");
    }

    private static JsonNode learned(Response proposal, String cause, String group) {
        List<JsonNode> found = new ArrayList<>();
        Json.read(proposal.asString()).path("learned").forEach(weight -> {
            if (weight.path("cause").asText().equals(cause)
                    && weight.path("group").asText().equals(group)) {
                found.add(weight);
            }
        });
        assertThat(found).as("%s in %s", cause, group).hasSize(1);
        return found.get(0);
    }

    private static double number(JsonNode view, String pointer) {
        return view.at(pointer).doubleValue();
    }

    private Response propose(String key, String body) {
        return chain.as(key).body(body).post("/v1/cause-weights/proposals");
    }

    private Response publish(String key, Response proposal, @Nullable String tag, OffsetDateTime from, String reason) {
        RequestSpecification request = chain.as(key);
        return (tag == null ? request : request.header("If-Match", tag))
                .body(Map.of(
                        "proposal", proposal.jsonPath().getString("id"),
                        "effectiveFrom", from.toString(),
                        "reason", reason))
                .post("/v1/cause-weights/versions");
    }

    private static OffsetDateTime soon() {
        return OffsetDateTime.now(ZoneOffset.UTC).plusMinutes(2);
    }

    private static String address(Response proposal) {
        return "/v1/cause-weights/proposals/" + proposal.jsonPath().getString("id");
    }

    private String key(String of, Role role, @Nullable List<String> sites) {
        return makeKey.make(of, new KeyTerms(UUID.randomUUID().toString(), role, sites, null), "test");
    }
}
