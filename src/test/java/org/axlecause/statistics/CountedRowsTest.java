package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The rows behind the statistics, written with the judgements and folded afterwards. */
@QuarkusTest
@TestProfile(WithKeys.class)
class CountedRowsTest {

    private static final String COUNTED = """
            SELECT k.question || ' ' || k.code || ' ' || k.standing || ' ' || k.axle || ' ' || k.side
              FROM statistics_case c
             CROSS JOIN LATERAL unnest(c.countables) AS u (countable)
              JOIN statistics_countable k ON k.tenant_id = c.tenant_id AND k.countable = u.countable
             WHERE c.tenant_id = ? AND k.question IN ('case', 'cause', 'outcome')
             ORDER BY 1
            """;

    private static final String CELLS = """
            SELECT grain || ' ' || k.question || ' ' || sum(n) FROM statistics_cell s
              JOIN statistics_place p USING (tenant_id, place)
              JOIN statistics_countable k USING (tenant_id, countable)
             WHERE s.tenant_id = ? AND k.question = 'case' AND p.grain = 'total'
             GROUP BY grain, k.question
            """;

    @ConfigProperty(name = "quarkus.datasource.jdbc.url")
    String url;

    @ConfigProperty(name = "quarkus.flyway.username")
    String owner;

    @ConfigProperty(name = "quarkus.flyway.password")
    String ownerPassword;

    @Inject
    MakeKey makeKey;

    @Inject
    CellStore cells;

    @Inject
    FoldDeltas foldDeltas;

    @Inject
    RepairCellStore repairCells;

    @Inject
    OpenCaseStore openCases;

    @Inject
    RecountCommand recount;

    @Inject
    RecountStore recounts;

    @Inject
    CountAnew countAnew;

    @Inject
    RecountNightly recountNightly;

    @Inject
    TenantTransaction transaction;

    private final String tenant = Chain.aTenant();
    private Chain chain;

    @BeforeEach
    void a_chain() {
        chain = new Chain(makeKey.make(tenant, new KeyTerms("admin", Role.ADMIN, null, null), "test"));
        chain.site("quay-street", "coast");
        transaction.run(tenant, cells::prepare);
    }

    @Test
    void an_open_case_is_not_counted_and_a_closed_one_is_with_the_cause_that_a_finding_proved() {
        Chain.OneCase one = chain.aCase("QS-1", "quay-street", "2026-03-02T08:15:00Z")
                .presented()
                .leaking("left")
                .send();
        assertThat(rows(COUNTED)).isEmpty();

        one.closed("refused", "").send();

        one.hasStatus("closed");
        assertThat(rows(COUNTED))
                .contains("cause wheel-cylinder-leaking root 2 left", "case   0 ", "outcome closed-refused  0 ")
                .noneMatch(row -> row.contains("undetermined"));
    }

    @Test
    void few_deltas_wait_for_more_of_them_and_no_longer_than_was_set() {
        Instant[] now = {Instant.parse("2026-03-02T08:00:00Z")};
        Clock clock = new Clock() {
            @Override
            public Instant instant() {
                return now[0];
            }

            @Override
            public ZoneOffset getZone() {
                return ZoneOffset.UTC;
            }

            @Override
            public Clock withZone(ZoneId zone) {
                return this;
            }
        };
        FoldDeltas patient =
                new FoldDeltas(cells, repairCells, openCases, transaction, clock, 1_000_000, Duration.ofMinutes(10));
        endedCase("QS-1");
        long waiting = waiting();
        assertThat(waiting).isPositive();

        patient.whenDue();
        now[0] = now[0].plusSeconds(599);
        patient.whenDue();
        assertThat(waiting()).isEqualTo(waiting);
        now[0] = now[0].plusSeconds(1);
        patient.whenDue();
        assertThat(waiting()).isZero();

        endedCase("QS-2");
        patient.whenDue();
        assertThat(waiting()).as("waiting for ten minutes of their own").isPositive();
        new FoldDeltas(
                        cells,
                        repairCells,
                        openCases,
                        transaction,
                        clock,
                        Math.toIntExact(waiting()),
                        Duration.ofMinutes(10))
                .whenDue();
        assertThat(waiting()).isZero();
    }

    private void endedCase(String reference) {
        chain.aCase(reference, "quay-street", "2026-03-02T08:15:00Z")
                .presented()
                .closed("abandoned", "")
                .send();
    }

    private long waiting() {
        return transaction.call(tenant, () -> cells.waiting(1000));
    }

    @Test
    void a_case_without_proof_is_undetermined_until_the_technician_names_the_cause() {
        chain.aCase("QS-1", "quay-street", "2026-03-02T08:15:00Z")
                .presented()
                .closed("abandoned", "")
                .send();
        assertThat(rows(COUNTED)).contains("cause undetermined  0 ", "outcome undetermined  0 ");

        chain.aCase("QS-1", "quay-street", "2026-03-02T18:15:00Z")
                .closed("cured", "{\"code\": \"drum-oval\", \"axle\": 2, \"side\": \"right\"}")
                .send();

        assertThat(rows(COUNTED))
                .contains("cause drum-oval root 2 right", "outcome determined  0 ", "outcome closed-cured  0 ")
                .noneMatch(row -> row.contains("undetermined"));
    }

    @Test
    void a_closing_that_is_withdrawn_counts_no_more_and_the_cells_follow() {
        Chain.OneCase one = chain.aCase("QS-1", "quay-street", "2026-03-02T08:15:00Z")
                .presented()
                .leaking("left")
                .closed("refused", "")
                .send();
        foldDeltas.fold();
        assertThat(rows(CELLS)).containsExactly("total case 1");
        assertThat(differences()).isZero();

        one.withdraw(one.idOf("case.closed")).send();

        one.hasStatus("scoped");
        assertThat(rows(COUNTED)).isEmpty();
        assertThat(differences()).isZero();
        foldDeltas.fold();
        assertThat(rows(CELLS)).containsExactly("total case 0");
        assertThat(differences()).isZero();
    }

    @Test
    void a_fold_that_is_lost_before_its_end_has_folded_nothing_and_counts_nothing_twice() {
        for (int number = 1; number <= 5; number++) {
            chain.aCase("QS-" + number, "quay-street", "2026-03-0" + number + "T08:15:00Z")
                    .presented()
                    .closed("abandoned", "")
                    .send();
        }
        long age = age();

        assertThatThrownBy(() -> transaction.run(tenant, () -> {
                    assertThat(cells.fold(3)).isEqualTo(3);
                    throw new IllegalStateException("the replica is lost before it commits");
                }))
                .hasMessageContaining("lost");
        assertThat(rows(CELLS)).isEmpty();
        int some = transaction.call(tenant, () -> cells.fold(3));
        assertThat(some).isEqualTo(3);
        assertThat(differences()).isZero();
        foldDeltas.fold();

        assertThat(rows(CELLS)).containsExactly("total case 5");
        assertThat(differences()).isZero();
        assertThat(age()).isEqualTo(age).isEqualTo(5);
    }

    @Test
    void only_one_replica_folds_for_a_tenant_at_a_time() {
        chain.aCase("QS-1", "quay-street", "2026-03-02T08:15:00Z")
                .presented()
                .closed("abandoned", "")
                .send();
        List<Integer> other = new ArrayList<>();

        transaction.run(tenant, () -> {
            assertThat(cells.fold(3)).isEqualTo(1);
            Thread second = new Thread(() -> other.add(transaction.call(tenant, () -> cells.fold(3))));
            second.start();
            join(second);
        });

        assertThat(other).containsExactly(0);
        assertThat(differences()).isZero();
    }

    @Test
    void a_count_that_is_not_in_the_cells_shows_as_a_difference() {
        chain.aCase("QS-1", "quay-street", "2026-03-02T08:15:00Z")
                .presented()
                .closed("abandoned", "")
                .send();
        foldDeltas.fold();

        spoil();

        assertThat(differences()).isEqualTo(1);
        ByteArrayOutputStream told = new ByteArrayOutputStream();
        PrintStream out = new PrintStream(told, true, StandardCharsets.UTF_8);
        assertThat(recount.run(new String[] {"recount", "--tenant", tenant}, out, out))
                .isEqualTo(1);
        assertThat(told.toString(StandardCharsets.UTF_8)).contains("1 cells of the statistics differ");
    }

    @Test
    void cells_are_put_right_once_a_night_and_a_lost_night_is_begun_again() {
        chain.aCase("QS-1", "quay-street", "2026-03-02T08:15:00Z")
                .presented()
                .closed("abandoned", "")
                .send();
        foldDeltas.fold();
        chain.aCase("QS-2", "quay-street", "2026-03-03T08:15:00Z")
                .presented()
                .closed("abandoned", "")
                .send();
        spoil();
        OffsetDateTime now = OffsetDateTime.now(ZoneOffset.UTC);

        assertThatThrownBy(() -> transaction.run(tenant, () -> {
                    assertThat(recounts.takeTurn(now.minusDays(1))).isTrue();
                    assertThat(recounts.putRight(LocalDate.parse("2026-03-01"))).isEqualTo(1);
                    throw new IllegalStateException("the replica is lost before it commits");
                }))
                .hasMessageContaining("lost");
        assertThat(differences()).isEqualTo(1);
        long age = age();

        assertThat(recountNightly.recount()).isPositive();

        assertThat(differences()).isZero();
        assertThat(age()).isEqualTo(age + 1);
        assertThat(recounts.due(now.minusDays(1))).doesNotContain(tenant);
        spoil();
        recountNightly.recount();
        assertThat(differences()).isEqualTo(1);
    }

    @Test
    void a_release_that_knows_fewer_grains_writes_no_cells() {
        chain.aCase("QS-1", "quay-street", "2026-03-02T08:15:00Z")
                .presented()
                .closed("abandoned", "")
                .send();
        foldDeltas.fold();

        assertThatThrownBy(() -> writeCellsKnowing("''"))
                .hasMessageContaining("13 grains, and this release knows fewer;");
        assertThatThrownBy(() -> writeCellsKnowing("12")).hasMessageContaining("13 grains, and this release knows 12;");
        assertThat(writeCellsKnowing("13")).isPositive();
        assertThat(differences()).isZero();
    }

    @Test
    void the_migration_counts_the_sites_of_a_make_from_the_cases_without_what_waits() throws SQLException, IOException {
        Chain.OneCase one = null;
        for (int number = 1; number <= 3; number++) {
            one = chain.aCase("QS-" + number, "quay-street", "2025-12-2" + number + "T08:15:00Z")
                    .presented()
                    .closed("abandoned", "");
            one.send();
        }
        foldDeltas.fold();
        one.withdraw(one.idOf("case.closed")).send();
        chain.aCase("QS-4", "quay-street", "2026-01-02T08:15:00Z")
                .presented()
                .closed("abandoned", "")
                .send();
        asSuperuser("DROP TRIGGER all_grains_are_known ON statistics_cell");
        asSuperuser("DROP FUNCTION refuse_fewer_grains");
        for (String table : List.of("statistics_year_cell", "statistics_cell")) {
            asSuperuser("DELETE FROM " + table + " WHERE (tenant_id, place) IN (SELECT tenant_id, place"
                    + " FROM statistics_place WHERE grain = 'stratum-of-make')");
        }
        assertThat(differences()).isPositive();
        asSuperuser("DELETE FROM statistics_place WHERE grain = 'stratum-of-make'");

        try (Connection connection = DriverManager.getConnection(url, owner, ownerPassword);
                Statement migration = connection.createStatement()) {
            connection.setAutoCommit(false);
            migration.execute(Files.readString(Path.of("src/main/resources/db/migration/V14__sites_of_a_make.sql")));
            connection.commit();
        }

        assertThat(differences()).isZero();
        foldDeltas.fold();
        assertThat(differences()).isZero();
    }

    private static void asSuperuser(String sql) throws SQLException {
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private int writeCellsKnowing(String grains) {
        return transaction.call(
                tenant,
                () -> transaction.jdbc((connection, name) -> {
                    try (Statement statement = connection.createStatement()) {
                        statement.execute("SET LOCAL axlecause.grains = " + grains);
                        return statement.executeUpdate(
                                "UPDATE statistics_cell SET n = n WHERE tenant_id = '" + name + "'");
                    }
                }));
    }

    private void spoil() {
        transaction.run(
                tenant,
                () -> transaction.jdbc((connection, name) -> {
                    CellStore.writeCells(connection);
                    try (PreparedStatement spoil = connection.prepareStatement(
                            "UPDATE statistics_cell s SET n = n + 1 FROM statistics_place p, statistics_countable k"
                                    + " WHERE s.tenant_id = ? AND p.tenant_id = s.tenant_id AND p.place = s.place"
                                    + " AND k.tenant_id = s.tenant_id AND k.countable = s.countable"
                                    + " AND p.grain = 'total' AND k.question = 'cause'")) {
                        spoil.setString(1, name);
                        return spoil.executeUpdate();
                    }
                }));
    }

    private static void join(Thread thread) {
        try {
            thread.join();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private long differences() {
        return countAnew.differences(tenant);
    }

    private long age() {
        return transaction.call(tenant, cells::age);
    }

    private List<String> rows(String sql) {
        return transaction.call(
                tenant,
                () -> transaction.jdbc((connection, name) -> {
                    try (PreparedStatement query = connection.prepareStatement(sql)) {
                        query.setString(1, name);
                        List<String> found = new ArrayList<>();
                        try (ResultSet rows = query.executeQuery()) {
                            while (rows.next()) {
                                found.add(rows.getString(1));
                            }
                        }
                        return found;
                    }
                }));
    }
}
