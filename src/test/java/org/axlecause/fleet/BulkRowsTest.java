package org.axlecause.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.axlecause.access.TenantStore;
import org.axlecause.access.WithKeys;
import org.axlecause.casefile.CountOneByOne;
import org.axlecause.casefile.DrawnCaseStore;
import org.axlecause.fleet.ChainDraw.Return;
import org.axlecause.fleet.ChainDraw.Step;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.statistics.CountAnew;
import org.axlecause.statistics.FoldDeltas;
import org.junit.jupiter.api.Test;

/** What is written in bulk is what counting the same cases one by one, in any order, would have written. */
@QuarkusTest
@TestProfile(WithKeys.class)
class BulkRowsTest {

    private static final int CASES = 600;
    private static final long SEED = 11;
    private static final LocalDate END = LocalDate.parse("2026-03-01");
    private static final LocalDate FIRST = END.minusMonths(18);

    private static final String NAMED = """
            (SELECT string_agg(concat_ws(' ', k.question, k.code, k.action, k.necessity, k.standing, k.axle, k.side,
                                         k.currency, k.marks, k.bin, u.amount), '; ' ORDER BY u.place)
               FROM unnest(c.countables, c.amounts) WITH ORDINALITY AS u (countable, amount, place)
               JOIN statistics_countable k ON k.tenant_id = c.tenant_id AND k.countable = u.countable)
            """;

    private static final String ROWS = "SELECT (to_jsonb(c) - 'tenant_id' - 'countables' - 'amounts')::text || " + NAMED
            + " FROM statistics_case c WHERE tenant_id = ? ORDER BY reference";

    private static final String REPAIRS =
            "SELECT (to_jsonb(c) - 'tenant_id')::text FROM statistics_repair c WHERE tenant_id = ? ORDER BY reference, axle";

    private static final String CELLS = """
            SELECT concat_ws(' ', p.grain, k.question, c.month, p.site, p.make, p.model, p.category, p.layout, p.age_band,
                             p.odometer_band, p.regime, k.code, k.action, k.necessity, k.standing, k.axle, k.side,
                             k.currency, k.marks, k.bin, c.n, trim_scale(c.amount)) AS cell
              FROM statistics_cell c
              JOIN statistics_place p ON p.tenant_id = c.tenant_id AND p.place = c.place
              JOIN statistics_countable k ON k.tenant_id = c.tenant_id AND k.countable = c.countable
             WHERE c.tenant_id = ? AND (c.n <> 0 OR c.amount <> 0)
             ORDER BY 1
            """;

    private static final String YEARS =
            CELLS.replace("statistics_cell", "statistics_year_cell").replace("c.month", "c.year");

    private static final String YEARS_OF_MONTHS = """
            SELECT concat_ws(' ', c.place, c.question, date_trunc('year', c.month)::date, c.countable, sum(c.n),
                             trim_scale(sum(c.amount))) AS cell
              FROM statistics_cell c
              JOIN statistics_place p ON p.tenant_id = c.tenant_id AND p.place = c.place AND p.grain <> 'daily'
             WHERE c.tenant_id = ?
             GROUP BY c.place, c.question, date_trunc('year', c.month), c.countable
             ORDER BY 1
            """;

    private static final String YEARS_KEPT = """
            SELECT concat_ws(' ', place, question, year, countable, n, trim_scale(amount)) AS cell
              FROM statistics_year_cell WHERE tenant_id = ? ORDER BY 1
            """;

    @Inject
    FillChain fillChain;

    @Inject
    CountOneByOne oneByOne;

    @Inject
    FoldDeltas foldDeltas;

    @Inject
    CountAnew countAnew;

    @Inject
    TenantStore tenants;

    @Inject
    TenantTransaction transaction;

    @Test
    void rows_returns_and_cells_are_those_of_counting_one_by_one() {
        ChainDraw chain = new ChainDraw(4, FIRST, END, new ChainDraw.Plants(true, true), SEED);
        String bulk = aTenant();
        String single = aTenant();

        fillChain.fill(new FillChain.Order(bulk, chain, CASES, FIRST, END, SEED, 2, CASES / 10), line -> {});
        transaction.run(single, () -> tenants.open(single, "One by one"));
        List<DrawnCaseStore.Drawn> cases = drawn(chain);
        Collections.shuffle(cases, new Random(SEED));
        oneByOne.count(single, cases);
        foldDeltas.fold();

        assertThat(told(bulk, ROWS)).hasSize(CASES).isEqualTo(told(single, ROWS));
        assertThat(told(bulk, REPAIRS))
                .isEqualTo(told(single, REPAIRS))
                .anyMatch(row -> row.contains("\"returned_day\": \"20"))
                .anyMatch(row -> row.contains("\"returned_day\": null"));
        assertThat(told(bulk, CELLS)).isNotEmpty().isEqualTo(told(single, CELLS));
        assertThat(told(bulk, YEARS)).isNotEmpty().isEqualTo(told(single, YEARS));
        assertThat(told(single, YEARS_KEPT)).isEqualTo(told(single, YEARS_OF_MONTHS));
        assertThat(countAnew.differences(bulk)).isZero();
        assertThat(countAnew.differences(single)).isZero();
    }

    private static List<DrawnCaseStore.Drawn> drawn(ChainDraw chain) {
        ChainMonths months = new ChainMonths(chain, CASES, FIRST, END, SEED);
        List<DrawnCaseStore.Drawn> cases = new ArrayList<>();
        while (months.hasNext()) {
            ChainMonths.Month month = months.next();
            List<Return> later = new ArrayList<>();
            for (long number = month.first(); number < month.until(); number++) {
                Step step = month.draw(number);
                cases.add(step.drawn());
                if (step.later() != null) {
                    later.add(step.later());
                }
            }
            months.comeBack(later);
        }
        return cases;
    }

    private static String aTenant() {
        return "bulk-" + UUID.randomUUID().toString().substring(0, 8);
    }

    private List<String> told(String tenant, String sql) {
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
