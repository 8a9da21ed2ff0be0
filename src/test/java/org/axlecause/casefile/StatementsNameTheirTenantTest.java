package org.axlecause.casefile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.casefile.Cases.NOON;
import static org.axlecause.casefile.Cases.aJudgedCase;
import static org.axlecause.casefile.Cases.anEvent;

import io.quarkus.test.junit.QuarkusTest;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.BareDatabase;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The wall of the statements alone, in a database of its own where row-level security is switched off. */
@QuarkusTest
class StatementsNameTheirTenantTest {

    private static final EntryId ID = new EntryId("/sites/quay-street", "x");

    private static final CaseFilter FAILED = new CaseFilter(null, null, null, null, null, Judging.FAILED, null);

    @ConfigProperty(name = "axlecause.identity-key")
    String identityKey;

    private BareDatabase database;

    @BeforeEach
    void makeDatabaseWithoutWalls() throws SQLException {
        database = BareDatabase.made();
    }

    @AfterEach
    void dropIt() throws SQLException {
        database.close();
    }

    @Test
    void every_store_sees_and_changes_one_tenant_without_row_level_security() {
        TenantTransaction transaction = TestDatabase.transactionOn(database.source());
        CaseStore cases = new CaseStore(transaction);
        EventStore events = new EventStore(transaction);
        FiguresStore figures = new FiguresStore(transaction);
        JudgementStore judgements = new JudgementStore(transaction);
        VehicleIdentityStore identities =
                new VehicleIdentityStore(transaction, Clock.systemUTC(), Optional.of(identityKey));
        TombstoneStore tombstones = new TombstoneStore(transaction);
        PersonalValue plate = new PersonalValue("registration", "AX12 CRV");
        PastJudgement past = new PastJudgement(1, "rules-1", PastJudgement.Occasion.CLOSING, "{}", NOON);

        transaction.run("a", () -> {
            events.append(cases.lock("QS-1", List.of(), NOON), List.of(anEvent("x", "2026-03-02T08:00:00Z")));
            cases.save("QS-1", aJudgedCase("quay-street", "scoped", NOON, "Portal"), NOON);
            cases.markFailed("QS-1", NOON);
            figures.save("QS-1", Map.of(ID, "{}"));
            judgements.save("QS-1", past);
        });
        String token =
                transaction.call("a", () -> identities.tokens(List.of(plate)).get(plate));

        transaction.run("b", () -> {
            assertThat(events.history("QS-1")).isEmpty();
            assertThat(cases.find("QS-1")).isEmpty();
            assertThat(cases.list(FAILED, null, 10)).isEmpty();
            assertThat(cases.list(CaseFilter.ALL, null, 10)).isEmpty();
            assertThat(cases.list(new CaseFilter(null, null, "hub-seal-leaking", null, null, null, null), null, 10))
                    .isEmpty();
            assertThat(figures.find("QS-1")).isEmpty();
            assertThat(judgements.find("QS-1")).isEmpty();
            assertThat(identities.original(token)).isEmpty();
            assertThat(identities.erase(token)).isFalse();
            assertThat(identities.tokens(List.of(plate)).get(plate)).isNotEqualTo(token);
            LockedCase locked = cases.lock("QS-1", List.of(ID), NOON);
            assertThat(locked.known()).isEmpty();
            events.append(locked, List.of(anEvent("x", "2026-03-02T09:00:00Z")));
            cases.save("QS-1", aJudgedCase("elsewhere", "closed", NOON, "Lantern"), NOON);
            identities.tie("QS-1", List.of(token));
            judgements.save("QS-1", past);
            tieIntoTheAuditChain(transaction);
            assertThat(tombstones.remove("QS-1", NOON.plusDays(1), NOON)).isPresent();
        });

        transaction.run("a", () -> {
            assertThat(events.history("QS-1")).hasSize(1);
            assertThat(events.firstBreak("QS-1")).isEmpty();
            assertThat(cases.list(FAILED, null, 10)).hasSize(1);
            assertThat(cases.find("QS-1"))
                    .hasValueSatisfying(
                            found -> assertThat(found.columns().site()).isEqualTo("quay-street"));
            assertThat(cases.list(new CaseFilter(null, null, "hub-seal-leaking", null, null, null, null), null, 10))
                    .hasSize(1);
            assertThat(figures.find("QS-1")).isEqualTo(Map.of(ID, "{}"));
            assertThat(judgements.find("QS-1")).containsExactly(past);
            assertThat(identities.original(token).map(PersonalValue::text)).contains("AX12 CRV");
            assertThat(tombstones.find("QS-1")).isEmpty();
        });
    }

    private static void tieIntoTheAuditChain(TenantTransaction transaction) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement tie = connection.prepareStatement(
                    "UPDATE case_file SET chained_length = chain_length WHERE tenant_id = ?")) {
                tie.setString(1, tenant);
                return tie.executeUpdate();
            }
        });
    }
}
