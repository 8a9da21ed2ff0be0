package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.axlecause.diagnosis.PriorGroup;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.shared.BareDatabase;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Stores of learned weights: what is kept comes back, and a second tenant sees nothing, also where no wall but the statements stands. */
@QuarkusTest
class CauseWeightsStoreTest {

    private static final OffsetDateTime NOON = OffsetDateTime.parse("2026-03-09T12:00:00Z");
    private static final LearningTerms TERMS = new LearningTerms(200, 50, 0.25);

    private static final String ROWS = """
            INSERT INTO tenant VALUES ('a', 'A', now()), ('b', 'B', now());
            INSERT INTO statistics_countable
              (tenant_id, question, code, action, necessity, standing, axle, side, currency, marks, bin)
            VALUES ('a', 'case', '', '', '', '', 0, '', '', 0, 0),
                   ('a', 'cause', 'drum-oval', '', '', 'root', 2, 'right', '', 1, 0),
                   ('a', 'cause', 'drum-oval', '', '', 'root', 2, 'right', '', 3, 0),
                   ('a', 'cause', 'air-in-circuit', '', '', 'root', 0, '', '', 1, 0),
                   ('a', 'cause', 'undetermined', '', '', '', 0, '', '', 7, 0);
            """;

    private static final String CASE = """
            INSERT INTO case_file (tenant_id, reference, status, opened, opened_day, version, judging, chain_length,
                                   chain_hash, changed_at)
            VALUES ('a', '%1$s', 'closed', '2026-03-02T08:15:00Z', '2026-03-02', 1, 'done', 1, sha256('x'), now());
            INSERT INTO statistics_case
            SELECT 'a', '%1$s', 'quay-street', DATE '2026-03-02', 'Corvane', 'Portal', 'N1', 'drum-simplex', '8-to-11',
                   '100000-to-149999', 'gb-annual', array_agg(countable), array_agg(NULL::numeric),
                   TIMESTAMPTZ '2026-03-02T08:15:00Z', ARRAY[2], %2$s, %3$s
              FROM statistics_countable WHERE code = ANY ('{"",%4$s}')
            """;

    @Inject
    TenantTransaction service;

    private BareDatabase database;
    private TenantTransaction transaction;
    private ProposalStore proposals;
    private WeightsVersionStore versions;
    private ConfirmedCaseStore confirmed;

    @BeforeEach
    void makeDatabaseWithoutWalls() throws SQLException {
        database = BareDatabase.made();
        transaction = TestDatabase.transactionOn(database.source());
        proposals = new ProposalStore(transaction);
        versions = new WeightsVersionStore(transaction);
        confirmed = new ConfirmedCaseStore(transaction);
        execute(ROWS);
    }

    @AfterEach
    void dropIt() throws SQLException {
        database.close();
    }

    @Test
    void what_is_kept_comes_back_as_it_was_and_another_tenant_sees_nothing() {
        Proposal proposal = proposal();
        WeightsVersion version = new WeightsVersion(
                1,
                NOON.plusDays(1),
                proposal.id(),
                List.of(new WeightsVersion.Published(CauseCode.DRUM_OVAL, PriorGroup.DRUM_OLD, 2.5, 0.1 + 0.2)),
                List.of("author"),
                "why",
                NOON,
                "publisher");
        transaction.run("a", () -> {
            proposals.add(proposal);
            versions.add(version);
        });

        transaction.run("a", () -> {
            assertThat(proposals.all()).containsExactly(proposal);
            assertThat(proposals.find(proposal.id())).contains(proposal);
            assertThat(proposals.isOneAtWork()).isTrue();
            assertThat(versions.all()).containsExactly(version);
            assertThat(versions.find(1)).contains(version);
            assertThat(versions.timetable().beginnings())
                    .containsExactly(new Timetable.Beginning(1, version.effectiveFrom()));
        });
        assertThat(proposals.due()).containsExactly(new ProposalStore.Due("a", proposal.id()));
        transaction.run("b", () -> {
            assertThat(proposals.all()).isEmpty();
            assertThat(proposals.find(proposal.id())).isEmpty();
            assertThat(proposals.lock(proposal.id())).isEmpty();
            assertThat(proposals.claim(proposal.id())).isEmpty();
            assertThat(proposals.isOneAtWork()).isFalse();
            assertThat(versions.all()).isEmpty();
            assertThat(versions.find(1)).isEmpty();
            assertThat(versions.timetable().beginnings()).isEmpty();
            proposals.save(proposal.published());
        });
        transaction.run("a", () -> {
            Proposal done = proposal.ended(Proposal.State.WITHDRAWN, null, NOON);
            assertThat(proposals.find(proposal.id())).contains(proposal);
            proposals.save(done);
            assertThat(proposals.find(proposal.id())).contains(done);
        });
        assertThat(proposals.due()).isEmpty();
    }

    @Test
    void confirmed_causes_are_read_in_order_with_what_tells_whether_the_vehicle_is_known() throws SQLException {
        aCase("QS-1", "'van'", "NULL", "drum-oval");
        aCase("QS-2", "'van'", "'QS-1'", "drum-oval,air-in-circuit");
        aCase("QS-3", "NULL", "'QS-1'", "drum-oval");
        aCase("QS-4", "NULL", "NULL", "undetermined");
        aCase("QS-5", "'car'", "'QS-4'", "drum-oval");
        aCase("QS-6", "'car'", "'GONE'", "drum-oval");
        aCase("QS-7", "'car'", "NULL", "drum-oval");
        execute("DELETE FROM case_file WHERE reference = 'QS-7'");
        Place right = Place.ofWheel(2, Side.RIGHT);

        transaction.run("b", () -> assertThat(confirmed.after("", NOON, 10)).isEmpty());
        transaction.run("a", () -> {
            List<ConfirmedCase> all = confirmed.after("", NOON, 10);
            assertThat(all)
                    .extracting(ConfirmedCase::reference)
                    .containsExactly("QS-1", "QS-2", "QS-3", "QS-4", "QS-5", "QS-6");
            assertThat(all)
                    .extracting(ConfirmedCase::vehicle)
                    .containsExactly("van", "van", "QS-3", "QS-4", "car", "car");
            assertThat(all)
                    .extracting(ConfirmedCase::vehicleKnown)
                    .as("a return of a vehicle without a token may be of any, and of one that had none before as well")
                    .containsExactly(true, true, false, true, false, true);
            assertThat(all.get(0).causes()).containsExactly(new ConfirmedCase.Confirmed(CauseCode.DRUM_OVAL, right));
            assertThat(all.get(1).causes())
                    .containsExactly(
                            new ConfirmedCase.Confirmed(CauseCode.AIR_IN_CIRCUIT, Place.VEHICLE),
                            new ConfirmedCase.Confirmed(CauseCode.DRUM_OVAL, right));
            assertThat(all.get(3).causes()).isEmpty();
            assertThat(confirmed.after("QS-2", NOON, 2))
                    .extracting(ConfirmedCase::reference)
                    .containsExactly("QS-3", "QS-4");
            assertThat(confirmed.after("", OffsetDateTime.parse("2026-03-02T08:14:59Z"), 10))
                    .isEmpty();
        });
    }

    @Test
    void a_published_version_can_be_changed_by_nobody() throws SQLException {
        Proposal proposal = proposal();
        transaction.run("a", () -> {
            proposals.add(proposal);
            versions.add(
                    new WeightsVersion(1, NOON, proposal.id(), List.of(), List.of("author"), "why", NOON, "publisher"));
        });

        for (String change : List.of(
                "UPDATE cause_weights_version SET reason = 'other'",
                "DELETE FROM cause_weights_version",
                "TRUNCATE cause_weights_version")) {
            assertThatThrownBy(() -> execute(change))
                    .as("as the owner: %s", change)
                    .hasMessageContaining("append only");
            assertThatThrownBy(() -> service.run(
                            "c",
                            () -> service.jdbc((connection, tenant) -> {
                                try (Statement statement = connection.createStatement()) {
                                    return statement.execute(change);
                                }
                            })))
                    .as("as the service: %s", change)
                    .hasStackTraceContaining("permission denied");
        }
        assertThatThrownBy(() -> service.run(
                        "c",
                        () -> service.jdbc((connection, tenant) -> {
                            try (Statement statement = connection.createStatement()) {
                                return statement.execute("UPDATE cause_weights_proposal SET created_by = 'other'");
                            }
                        })))
                .hasStackTraceContaining("permission denied");
    }

    private static Proposal proposal() {
        Learning learning = new Learning(
                60,
                20,
                19,
                1,
                List.of(new Learning.AxleCount(CauseCode.DRUM_OVAL, PriorGroup.DRUM_OLD, 2.5, 60 * 0.051, 40, 60)),
                List.of(new Learning.ForecastCount(30, 5, 19)),
                List.of(new Learning.ForecastCount(80, 5, 19)));
        return new Proposal(
                UUID.randomUUID(),
                Proposal.State.SCORING,
                NOON,
                TERMS,
                "QS-1",
                learning,
                ProposedModel.of(
                        Instant.parse("2026-03-09T12:00:00Z"),
                        TERMS,
                        learning.seen(),
                        Calibration.of(List.of(learning.before().get(0).forecasts()), 10),
                        Calibration.of(List.of(learning.after().get(0).forecasts()), 10)),
                NOON,
                "author",
                null);
    }

    private void aCase(String reference, String vehicle, String previous, String causes) throws SQLException {
        execute(CASE.formatted(reference, vehicle, previous, causes));
    }

    private void execute(String sql) throws SQLException {
        try (Connection connection = database.source().getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
