package org.axlecause.policy;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.policy.ChainMessages.as;

import io.quarkus.arc.Arc;
import io.quarkus.arc.ManagedContext;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.axlecause.facts.Policy;
import org.axlecause.facts.ScopeDecided;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.PastCases;
import org.axlecause.judgement.PastCases.Past;
import org.axlecause.judgement.PastCases.Run;
import org.axlecause.judgement.PastCases.Wanted;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A trial takes what a case was judged to be from its document, where judging it again would say the same. */
@QuarkusTest
@TestProfile(WithKeys.class)
class LastingDocumentsTest {

    private static final Path SCENARIOS = Path.of("src/test/resources/scenarios");
    private static final String LIST = """
            {"hourlyRate": %d, "taxPercent": 20, "parts": {"wheel-cylinder": 25.50, "shoe-set": 38, "drum": 61.20},
             "hours": {"renew wheel-cylinder": 0.5, "renew shoe-set": 0.75}}""";
    private static final List<String> DRAFTS = List.of(
            "{\"clause\": \"hardware-kit-with-shoes\", \"necessity\": \"required\"}",
            "{\"clause\": \"twin-hydraulic-part\", \"necessity\": \"none\"}",
            "{\"clause\": \"retest-imbalance\", \"value\": 12, \"unit\": \"%\"}",
            "{\"clause\": \"one-wheel-low-imbalance\", \"value\": 15, \"unit\": \"%\"}");

    private static final String FINDING = "{\"stage\": \"as-found\", \"component\": \"hub-bearing\", \"condition\":"
            + " \"sound\", \"axle\": 2, \"side\": \"left\"}";

    @Inject
    MakeKey makeKey;

    @Inject
    PastCases pastCases;

    @Inject
    Judge judge;

    @Inject
    TenantTransaction transaction;

    private final String tenant = "lasting-" + UUID.randomUUID().toString().substring(0, 8);
    private String admin = "";

    @BeforeEach
    void a_chain_with_prices_and_the_cases_of_all_scenarios() throws IOException {
        admin = makeKey.make(tenant, new KeyTerms("chain", Role.ADMIN, null, null), "test");
        for (String site : List.of("quay-street", "mill-bridge")) {
            put(
                    "/v1/sites/" + site,
                    "{\"name\": \"Site\", \"timeZone\": \"Europe/London\", \"currency\": \"GBP\","
                            + " \"regime\": \"gb-annual\"}");
            put("/v1/price-lists/" + site, LIST.formatted(80));
        }
        try (Stream<Path> files = Files.walk(SCENARIOS)) {
            for (Path file : files.filter(file -> file.getFileName().toString().startsWith("given"))
                    .sorted()
                    .toList()) {
                send(Files.readString(file));
            }
        }
    }

    @Test
    void a_trial_finds_the_same_from_a_document_as_from_judging_twice() {
        List<Past> cases = recalled();
        Map<String, String> documents = documents(cases);
        assertThat(documents).hasSizeGreaterThan(8);
        assertThat(cases)
                .filteredOn(past -> !documents.containsKey(reference(past)))
                .as("cases decided on before there were prices")
                .allMatch(LastingDocumentsTest::isDecided);
        TryCase tryCase = new TryCase(judge);
        int changed = 0;
        for (String clause : DRAFTS) {
            Policy draft = draft(clause);
            for (Past past : cases) {
                TrialResult judgedTwice = tryCase.tried(past, draft, null);
                assertThat(tryCase.tried(past, draft, documents.get(reference(past))))
                        .as("%s under a draft of %s", reference(past), clause)
                        .isEqualTo(judgedTwice);
                changed += judgedTwice.all().changed();
            }
        }
        assertThat(changed).as("cases that the drafts change").isGreaterThan(10);
    }

    @Test
    void an_event_leaves_a_new_document_that_lasts() {
        Past one = anyCase();
        given().header("Authorization", "Bearer " + admin)
                .contentType("application/cloudevents-batch+json; charset=UTF-8")
                .body("[" + ChainMessages.event("finding.recorded", reference(one), FINDING) + "]")
                .post("/v1/events")
                .then()
                .statusCode(200);

        assertThat(documents(recalled())).containsKey(reference(one));
    }

    @Test
    void no_document_lasts_once_the_prices_are_others() {
        Set<String> elsewhere = lastingAt("mill-bridge");
        put("/v1/price-lists/quay-street", LIST.formatted(95));
        assertThat(documents(recalled()).keySet()).isNotEmpty().isEqualTo(elsewhere);
    }

    @Test
    void no_document_lasts_once_the_site_is_described_otherwise() {
        Set<String> elsewhere = lastingAt("mill-bridge");
        put(
                "/v1/sites/quay-street",
                "{\"name\": \"Site\", \"timeZone\": \"Europe/London\", \"currency\": \"GBP\","
                        + " \"regime\": \"eu-periodic\"}");
        assertThat(documents(recalled()).keySet()).isNotEmpty().isEqualTo(elsewhere);
    }

    @Test
    void a_document_that_another_release_wrote_does_not_last() throws SQLException {
        Past one = anyCase();
        for (String told : List.of("judged_of = NULL", "judging = 'failed'", "rulebook = 'another'")) {
            assertThat(documents(recalled())).containsKey(reference(one));
            change(told, reference(one));
            assertThat(documents(recalled()))
                    .as(told)
                    .doesNotContainKey(reference(one))
                    .isNotEmpty();
            change(
                    "judging = 'done', judged_of = '" + one.judgedOf() + "', rulebook = '"
                            + String.valueOf(one.judgedOf()).split(" ")[1] + "'",
                    reference(one));
        }
    }

    private static Policy draft(String clause) {
        return MergedPolicy.of(
                        PolicyDocument.of("{\"means\": \"a draft\", \"chain\": [" + clause + "]}"), null, "quay-street")
                .toPolicy("draft", 0, PolicyFile.baseline());
    }

    private Past anyCase() {
        List<Past> cases = recalled();
        Map<String, String> documents = documents(cases);
        return cases.stream()
                .filter(past -> documents.containsKey(reference(past)))
                .findFirst()
                .orElseThrow();
    }

    private static boolean isDecided(Past past) {
        return past.matter().history().entries().stream()
                .anyMatch(recorded -> recorded.entry() instanceof ScopeDecided);
    }

    private Set<String> lastingAt(String site) {
        List<Past> cases = recalled();
        Set<String> there = cases.stream()
                .filter(past -> past.matter().site().site().equals(site))
                .map(LastingDocumentsTest::reference)
                .collect(Collectors.toSet());
        there.retainAll(documents(cases).keySet());
        return there;
    }

    private static String reference(Past past) {
        return past.matter().history().reference();
    }

    private List<Past> recalled() {
        return inTransaction(() -> pastCases.recall(new Wanted(null, null, null, null), new Run("", "~", 1000)));
    }

    private Map<String, String> documents(List<Past> cases) {
        return inTransaction(() -> pastCases.lastingDocuments(cases));
    }

    private <T> T inTransaction(Supplier<T> work) {
        ManagedContext context = Arc.container().requestContext();
        context.activate();
        try {
            return transaction.call(tenant, work);
        } finally {
            context.terminate();
        }
    }

    private void change(String told, String reference) throws SQLException {
        try (Connection connection = TestDatabase.superuser();
                PreparedStatement update = connection.prepareStatement(
                        "UPDATE case_file SET " + told + " WHERE tenant_id = ? AND reference = ?")) {
            update.setString(1, tenant);
            update.setString(2, reference);
            assertThat(update.executeUpdate()).isEqualTo(1);
        }
    }

    private void put(String path, String body) {
        as(admin).body(body).put(path).then().statusCode(200);
    }

    private void send(String events) {
        given().header("Authorization", "Bearer " + admin)
                .contentType("application/cloudevents-batch+json; charset=UTF-8")
                .body(events)
                .post("/v1/events")
                .then()
                .statusCode(200);
    }
}
