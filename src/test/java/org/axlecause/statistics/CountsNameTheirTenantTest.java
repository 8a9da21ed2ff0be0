package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import org.axlecause.casefile.Countable;
import org.axlecause.shared.BareDatabase;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.postgresql.ds.PGSimpleDataSource;

/** The wall of the statements of statistics alone, in a database of its own where row-level security is switched off. */
@QuarkusTest
class CountsNameTheirTenantTest {

    private static final OffsetDateTime NOON = OffsetDateTime.parse("2026-03-09T12:00:00Z");
    private static final LocalDate MARCH = LocalDate.parse("2026-03-01");
    private static final int RETURN_DAYS = 365;
    private static final LocalDate TODAY = LocalDate.parse("2026-03-09");
    private static final Cohort ALL = new Cohort(null, null, List.of(), Map.of());

    /** One case of tenant a with a proved repair, and what of it waits to be folded. */
    private static final String ROWS = """
            INSERT INTO statistics_countable
              (tenant_id, question, code, action, necessity, standing, axle, side, currency, marks, bin)
            VALUES ('a', 'case', '', '', '', '', 0, '', '', 0, 0);
            INSERT INTO statistics_case
            SELECT 'a', 'QS-1', 'quay-street', DATE '2026-03-02', 'Corvane', 'Portal', 'N1', 'drum-simplex', '8-to-11',
                   '100000-to-149999', 'gb-annual', ARRAY[countable], ARRAY[NULL::numeric],
                   TIMESTAMPTZ '2026-03-02T08:15:00Z', ARRAY[2], NULL, NULL
              FROM statistics_countable;
            INSERT INTO statistics_delta
              (tenant_id, sign, site, day, make, model, category, layout, age_band, odometer_band, regime, countables,
               amounts)
            SELECT tenant_id, 1, site, day, make, model, category, layout, age_band, odometer_band, regime, countables,
                   amounts
              FROM statistics_case;
            INSERT INTO statistics_open_delta (tenant_id, sign, site, day, make, model)
            VALUES ('a', 1, 'quay-street', DATE '2026-03-03', 'Corvane', 'Portal');
            INSERT INTO statistics_repair
            SELECT tenant_id, reference, 2, ARRAY['wheel-cylinder'], opened, day, NULL, NULL, site, day, make, model,
                   category, layout, age_band, odometer_band, regime
              FROM statistics_case;
            INSERT INTO statistics_repair_delta
              (tenant_id, sign, items, verified_day, returned_day, site, day, make, model, category, layout, age_band,
               odometer_band, regime)
            SELECT tenant_id, 1, items, verified_day, returned_day, site, day, make, model, category, layout, age_band,
                   odometer_band, regime
              FROM statistics_repair;
            """;

    private BareDatabase database;
    private TenantTransaction transaction;
    private CellStore cells;
    private CountStore counts;
    private RepairStore repairs;
    private RepairCellStore repairCells;
    private OpenCaseStore openCases;
    private RecountStore recounts;

    @BeforeEach
    void makeDatabaseWithoutWalls() throws SQLException {
        database = BareDatabase.made();
        PGSimpleDataSource source = database.source();
        // Each statement commits by itself here, so that no setting of a transaction lasts until the next.
        source.setOptions("-c axlecause.grains=" + Grain.values().length);
        transaction = TestDatabase.transactionOn(source);
        cells = new CellStore(transaction);
        counts = new CountStore(transaction);
        repairs = new RepairStore(transaction);
        repairCells = new RepairCellStore(transaction);
        openCases = new OpenCaseStore(transaction);
        recounts = new RecountStore(transaction);
        try (Connection connection = database.source().getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(ROWS);
        }
    }

    @AfterEach
    void dropIt() throws SQLException {
        database.close();
    }

    @Test
    void every_store_counts_and_folds_one_tenant_without_row_level_security() {
        transaction.run("b", () -> {
            assertThat(cases()).isEmpty();
            assertThat(counts.words(Dimension.MAKE)).isEmpty();
            assertThat(followed()).isEmpty();
            assertThat(cells.age()).isZero();
            assertThat(openCases.count(ALL)).isZero();
            assertThat(recounts.months()).isEmpty();
            assertThat(recounts.differences(MARCH)).isZero();
            cells.prepare();
            assertThat(cells.fold(10)).isZero();
            assertThat(repairCells.fold(10, RETURN_DAYS)).isZero();
            assertThat(openCases.fold(10)).isZero();
            assertThat(recounts.takeTurn(NOON)).isTrue();
            assertThat(recounts.putRight(MARCH)).isZero();
            recounts.note(NOON, 0);
        });

        transaction.run("a", () -> {
            assertThat(cells.age()).isEqualTo(3);
            assertThat(followed()).hasSize(1);
            assertThat(openCases.count(ALL)).isEqualTo(1);
            assertThat(cases()).extracting(CountStore.Count::n).containsExactly(1L);
            cells.prepare();
            assertThat(cells.fold(10)).isEqualTo(1);
            assertThat(repairCells.fold(10, RETURN_DAYS)).isEqualTo(1);
            assertThat(openCases.fold(10)).isEqualTo(1);
            assertThat(cells.age()).isEqualTo(3);
        });

        transaction.run("b", () -> {
            assertThat(cases()).isEmpty();
            assertThat(counts.words(Dimension.MAKE)).isEmpty();
            assertThat(followed()).isEmpty();
            assertThat(openCases.count(ALL)).isZero();
            assertThat(recounts.months()).isEmpty();
            assertThat(recounts.differences(MARCH)).isZero();
            assertThat(recounts.putRight(MARCH)).isZero();
        });
        transaction.run("a", () -> {
            assertThat(cases()).extracting(CountStore.Count::n).containsExactly(1L);
            assertThat(counts.words(Dimension.MAKE)).containsExactly("Corvane");
            assertThat(followed()).hasSize(1);
            assertThat(openCases.count(ALL)).isEqualTo(1);
            assertThat(recounts.months()).containsExactly(MARCH);
            assertThat(recounts.takeTurn(NOON)).isTrue();
            assertThat(recounts.putRight(MARCH)).isZero();
        });
    }

    private List<CountStore.Count> cases() {
        return counts.count(
                new CountStore.Wanted(ALL, List.of(Countable.CASE), "", List.of(), false, List.of("question")));
    }

    private List<RepairStore.Followed> followed() {
        return repairs.followed(new RepairStore.Wanted(ALL, List.of(), List.of(), false, TODAY, RETURN_DAYS));
    }
}
