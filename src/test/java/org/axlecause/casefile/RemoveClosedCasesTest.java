package org.axlecause.casefile;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.axlecause.casefile.Cases.NOON;
import static org.axlecause.casefile.Cases.aJudgedCase;
import static org.axlecause.casefile.Cases.anEvent;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.Period;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.axlecause.access.ActStore;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Two closed cases of one vehicle; ten years later the older one has lain long enough. */
@QuarkusTest
class RemoveClosedCasesTest {

    private static final String TENANT = "demo";
    private static final Period KEPT = Period.ofYears(10);
    private static final OffsetDateTime CLOSED = NOON.minusYears(8);
    private static final OffsetDateTime LATER = CLOSED.plusYears(1);
    private static final List<String> ROWS = List.of(
            "case_cause", "case_departure", "case_identity", "case_scope_line", "event", "judgement", "test_figures");

    /** Identities are known for good; a tombstone says what was; statistics keep numbers of nobody's. */
    private static final List<String> STAYING =
            List.of("case_tombstone", "event_identity", "statistics_case", "statistics_repair");

    @Inject
    TenantTransaction transaction;

    @Inject
    CaseStore cases;

    @Inject
    EventStore events;

    @Inject
    FiguresStore figures;

    @Inject
    JudgementStore judgements;

    @Inject
    VehicleIdentityStore identities;

    @Inject
    TombstoneStore tombstones;

    @Inject
    ActStore acts;

    private final String older = "OLD-" + UUID.randomUUID().toString().substring(0, 8);
    private final String newer = "NEW-" + UUID.randomUUID().toString().substring(0, 8);
    private final PersonalValue registration = new PersonalValue("registration", older);
    private final PersonalValue by = new PersonalValue("by", "Odile " + older);
    private String plate;
    private String name;

    @BeforeEach
    void two_cases_are_closed() {
        transaction.run(TENANT, () -> {
            Map<PersonalValue, String> tokens = identities.tokens(List.of(registration, by));
            plate = tokens.get(registration);
            name = tokens.get(by);
        });
        closed(older, CLOSED, List.of(plate, name));
        closed(newer, LATER, List.of(plate));
    }

    @AfterEach
    void what_is_closed_goes() {
        removalAt(LATER.plusYears(10).plusSeconds(1)).removeOlderThan(KEPT);
    }

    @Test
    void a_case_goes_whole_on_the_day_and_leaves_a_tombstone_and_an_act() {
        assertThat(removalAt(CLOSED.plusYears(10)).removeOlderThan(KEPT)).isZero();
        assertThat(rowsOf(older)).doesNotContain(0L);

        int removed = removalAt(CLOSED.plusYears(10).plusSeconds(1)).removeOlderThan(KEPT);

        assertThat(removed).isEqualTo(1);
        assertThat(rowsOf(older)).containsOnly(0L);
        assertThat(rowsOf(newer)).doesNotContain(0L);
        assertThat(transaction.call(TENANT, () -> tombstones.find(older)))
                .contains(new TombstoneStore.Tombstone(
                        "quay-street", CLOSED.plusYears(10).toLocalDate()));
        assertThat(count("audit_note", "object", older)).isEqualTo(1);
        assertThat(transaction
                        .call(
                                TENANT,
                                () -> cases.lock(
                                        "ASKED-" + older, List.of(new EntryId("/sites/quay-street", older)), LATER))
                        .known())
                .as("its identities stay known")
                .hasSize(1);
    }

    @Test
    void every_table_that_names_a_case_is_among_those_that_are_looked_at_here() {
        List<String> naming = transaction.call(
                TENANT,
                () -> transaction.jdbc((connection, tenant) -> {
                    try (PreparedStatement query = connection.prepareStatement("""
                                    SELECT a.attrelid::regclass::text
                                      FROM pg_attribute a
                                      JOIN pg_class t ON t.oid = a.attrelid AND t.relkind = 'r'
                                     WHERE a.attname = 'reference' AND t.relnamespace = 'public'::regnamespace
                                       AND NOT EXISTS (SELECT 1 FROM pg_constraint k
                                                        WHERE k.conrelid = t.oid AND k.confdeltype = 'c'
                                                          AND k.confrelid = 'case_file'::regclass)
                                    """);
                            ResultSet rows = query.executeQuery()) {
                        List<String> tables = new ArrayList<>();
                        while (rows.next()) {
                            tables.add(rows.getString(1));
                        }
                        return tables;
                    }
                }));

        assertThat(naming)
                .as("but for those whose rows go with the case's by themselves")
                .containsExactlyInAnyOrderElementsOf(Stream.of(List.of("case_file"), ROWS, STAYING)
                        .flatMap(List::stream)
                        .toList());
    }

    @Test
    void personal_data_goes_with_the_last_case_that_names_it() {
        removalAt(CLOSED.plusYears(10).plusSeconds(1)).removeOlderThan(KEPT);

        assertThat(original(plate)).contains(registration.text());
        assertThat(original(name)).isEmpty();

        removalAt(LATER.plusYears(10).plusSeconds(1)).removeOlderThan(KEPT);

        assertThat(original(plate)).isEmpty();
    }

    @Test
    void what_is_open_again_or_not_yet_in_the_audit_chain_stays() {
        transaction.run(TENANT, () -> cases.save(newer, aJudgedCase("quay-street", "scoped", LATER, "Portal"), LATER));
        transaction.run(
                TENANT,
                () -> events.append(
                        cases.lock(older, List.of(), LATER), List.of(anEvent(older + "-2", "2026-03-02T09:00:00Z"))));

        assertThat(removalAt(LATER.plusYears(10).plusSeconds(1)).removeOlderThan(KEPT))
                .isZero();
    }

    @Test
    void a_case_that_was_closed_again_counts_from_then() {
        transaction.run(
                TENANT,
                () -> judgements.save(
                        older, new PastJudgement(2, "rules-1", PastJudgement.Occasion.CLOSING, "{}", LATER)));

        assertThat(removalAt(CLOSED.plusYears(10).plusSeconds(1)).removeOlderThan(KEPT))
                .isZero();
    }

    @Test
    void a_removed_case_is_told_from_one_that_never_was_and_does_not_begin_anew() {
        removalAt(CLOSED.plusYears(10).plusSeconds(1)).removeOlderThan(KEPT);

        given().get("/v1/cases/" + older).then().statusCode(410);
        given().get("/v1/cases/" + older + "/events").then().statusCode(410);
        given().get("/v1/cases/NEVER-WAS").then().statusCode(404);
        String answer = given().contentType("application/cloudevents+json;charset=UTF-8")
                .body("""
                        {"specversion": "1.0", "type": "org.axlecause.finding.recorded.v1", "source": "/sites/quay-street",
                         "id": "late", "subject": "%s", "time": "2036-03-03T08:00:00Z",
                         "data": {"stage": "as-found", "component": "shoe-lining", "condition": "worn", "axle": 2,
                                  "side": "left"}}""".formatted(older))
                .post("/v1/events")
                .then()
                .statusCode(410)
                .extract()
                .asString();
        assertThat(answer).contains("\"gone\"", older);
        assertThat(rowsOf(older)).containsOnly(0L);
    }

    @Test
    void a_single_event_can_still_not_be_removed() {
        assertThatThrownBy(() -> transaction.run(
                        TENANT,
                        () -> transaction.jdbc((connection, tenant) -> {
                            try (PreparedStatement delete = connection.prepareStatement(
                                    "DELETE FROM event WHERE tenant_id = ? AND reference = ?")) {
                                delete.setString(1, tenant);
                                delete.setString(2, older);
                                return delete.executeUpdate();
                            }
                        })))
                .hasMessageContaining("permission denied");
    }

    private RemoveClosedCases removalAt(OffsetDateTime now) {
        return new RemoveClosedCases(
                tombstones, acts, transaction, Clock.fixed(now.toInstant(), ZoneOffset.UTC), Optional.empty());
    }

    private void closed(String reference, OffsetDateTime at, List<String> tokens) {
        transaction.run(TENANT, () -> {
            events.append(cases.lock(reference, List.of(), at), List.of(anEvent(reference, "2026-03-02T08:00:00Z")));
            identities.tie(reference, tokens);
            cases.save(reference, aJudgedCase("quay-street", "closed", at, "Portal"), at);
            departFromAClause(reference);
            writeALineOfTheScope(reference);
            figures.save(reference, Map.of(new EntryId("/sites/quay-street", reference), "{}"));
            judgements.save(reference, new PastJudgement(1, "rules-1", PastJudgement.Occasion.CLOSING, "{}", at));
            transaction.jdbc((connection, tenant) -> {
                try (PreparedStatement tie = connection.prepareStatement(
                        "UPDATE case_file SET chained_length = chain_length WHERE tenant_id = ? AND reference = ?")) {
                    tie.setString(1, tenant);
                    tie.setString(2, reference);
                    return tie.executeUpdate();
                }
            });
        });
    }

    private void departFromAClause(String reference) {
        write(
                reference,
                "INSERT INTO case_departure (tenant_id, reference, source, id, clause, acts)"
                        + " VALUES (?, ?, '/sites/quay-street', 'd', 'fluid-renewal', true)");
    }

    /** A row that releases before this one wrote for each line of the scope. */
    private void writeALineOfTheScope(String reference) {
        write(
                reference,
                "INSERT INTO case_scope_line (tenant_id, reference, line, action, item, extent, quantity, necessity,"
                        + " standing) VALUES (?, ?, 'l', 'renew', 'shoe-set', 'axle', 1, 'required', 'proposed')");
    }

    private void write(String reference, String sql) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement insert = connection.prepareStatement(sql)) {
                insert.setString(1, tenant);
                insert.setString(2, reference);
                return insert.executeUpdate();
            }
        });
    }

    private Optional<String> original(String token) {
        return transaction.call(TENANT, () -> identities.original(token).map(PersonalValue::text));
    }

    private List<Long> rowsOf(String reference) {
        return Stream.concat(Stream.of("case_file"), ROWS.stream())
                .map(table -> count(table, "reference", reference))
                .toList();
    }

    private long count(String table, String column, String value) {
        return transaction.call(
                TENANT,
                () -> transaction.jdbc((connection, tenant) -> {
                    try (PreparedStatement query = connection.prepareStatement(
                            "SELECT count(*) FROM " + table + " WHERE tenant_id = ? AND " + column + " = ?")) {
                        query.setString(1, tenant);
                        query.setString(2, value);
                        try (ResultSet row = query.executeQuery()) {
                            row.next();
                            return row.getLong(1);
                        }
                    }
                }));
    }
}
