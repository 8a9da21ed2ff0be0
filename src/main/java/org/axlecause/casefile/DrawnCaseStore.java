package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/**
 * Brings invented cases into the statistics rows, thousands in a statement and without histories. It is no COPY, which
 * PostgreSQL refuses on tables with row-level security.
 */
@ApplicationScoped
public class DrawnCaseStore {

    private static final String COHORT =
            "site, day, make, model, category, layout, age_band, odometer_band, regime, countables, amounts";

    private static final String ADD = """
            WITH added AS (
              INSERT INTO statistics_case (tenant_id, reference, %1$s, opened, axles)
              SELECT ?, reference, site, day::date, make, model, category, layout, age_band, odometer_band, regime,
                     countables::integer[], amounts::numeric[], (day || ' 12:00Z')::timestamptz, axles::integer[]
                FROM unnest(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                  AS drawn (reference, day, site, make, model, category, layout, age_band, odometer_band, regime, countables,
                            amounts, axles)
              RETURNING *)
            INSERT INTO statistics_delta (tenant_id, sign, %1$s) SELECT tenant_id, 1, %1$s FROM added
            """.formatted(COHORT);

    private static final String ADD_REPAIRS = """
            INSERT INTO statistics_repair (tenant_id, reference, axle, items, verified_at, verified_day, returned_day, site,
                                           day, make, model, category, layout, age_band, odometer_band, regime)
            SELECT ?, reference, axle::integer, items::text[], (verified || ' 16:00Z')::timestamptz, verified::date,
                   returned::date, site, day::date, make, model, category, layout, age_band, odometer_band, regime
              FROM unnest(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                AS drawn (reference, day, site, make, model, category, layout, age_band, odometer_band, regime, axle, items,
                          verified, returned)
            """;

    private final TenantTransaction transaction;
    private final CountedCaseStore counted;
    private final StatisticsTerms terms = StatisticsTerms.released();

    DrawnCaseStore(TenantTransaction transaction, CountedCaseStore counted) {
        this.transaction = transaction;
        this.counted = counted;
    }

    /**
     * An invented case that has ended.
     *
     * @param years age of the vehicle
     * @param kilometres distance of the vehicle
     * @param causes confirmed causes; none where it stays undetermined
     * @param counts what else is counted of it
     * @param repairs axles whose repair was proved
     */
    public record Drawn(
            String reference,
            String site,
            LocalDate day,
            String make,
            String model,
            String category,
            String layout,
            int years,
            int kilometres,
            String regime,
            List<Cause> causes,
            List<Counted> counts,
            List<Repair> repairs) {

        public Drawn {
            causes = List.copyOf(causes);
            counts = List.copyOf(counts);
            repairs = List.copyOf(repairs);
        }
    }

    /** A confirmed cause; axle 0 and a blank side where it has none. */
    public record Cause(String code, int axle, String side, boolean root) {}

    /** Something counted, in the words of the statistics. */
    public record Counted(
            String question,
            String code,
            String action,
            String necessity,
            String standing,
            int axle,
            String currency,
            int marks,
            int bin,
            @Nullable BigDecimal amount) {}

    /** A repaired axle; the day it came back, where it did. */
    public record Repair(
            int axle,
            List<String> items,
            LocalDate verified,
            @Nullable LocalDate returned) {

        public Repair {
            items = List.copyOf(items);
        }
    }

    /** Adds cases to the rows of the open transaction's tenant, with a delta each. */
    public void add(List<Drawn> cases) {
        transaction.jdbc((connection, tenant) -> {
            List<List<Tally>> tallies =
                    cases.stream().map(DrawnCaseStore::tallies).toList();
            Map<Countable, Integer> numbers = counted.numbers(
                    connection,
                    tenant,
                    tallies.stream()
                            .flatMap(List::stream)
                            .map(Tally::what)
                            .distinct()
                            .sorted()
                            .toList());
            List<List<@Nullable String>> rows = new ArrayList<>();
            List<List<@Nullable String>> repairs = new ArrayList<>();
            for (int index = 0; index < cases.size(); index++) {
                Drawn drawn = cases.get(index);
                rows.add(row(drawn, tallies.get(index), numbers));
                drawn.repairs().forEach(repair -> repairs.add(row(drawn, repair)));
            }
            insert(connection, tenant, ADD, rows);
            insert(connection, tenant, ADD_REPAIRS, repairs);
            return cases.size();
        });
    }

    /** Inserts rows, each a list of the same columns. */
    private static void insert(Connection connection, String tenant, String sql, List<List<@Nullable String>> rows)
            throws SQLException {
        if (rows.isEmpty()) {
            return;
        }
        try (PreparedStatement insert = connection.prepareStatement(sql)) {
            insert.setString(1, tenant);
            for (int column = 0; column < rows.get(0).size(); column++) {
                int of = column;
                insert.setArray(
                        column + 2,
                        connection.createArrayOf(
                                "text", rows.stream().map(row -> row.get(of)).toArray()));
            }
            insert.executeUpdate();
        }
    }

    private static List<Tally> tallies(Drawn drawn) {
        List<Tally> tallies = new ArrayList<>();
        tallies.add(Tally.of(Countable.aCase()));
        List<Countable> causes = drawn.causes().isEmpty()
                ? List.of(Countable.cause(Countable.UNDETERMINED, 0, "", "", CauseMarks.ALL))
                : CauseMarks.marked(drawn.causes().stream()
                        .map(cause -> Countable.cause(
                                cause.code(),
                                cause.axle(),
                                cause.side(),
                                cause.root() ? Countable.ROOT : Countable.CONTRIBUTING,
                                0))
                        .toList());
        causes.forEach(cause -> tallies.add(Tally.of(cause)));
        List<String> codes =
                drawn.causes().stream().map(Cause::code).distinct().sorted().toList();
        for (int one = 0; one < codes.size(); one++) {
            for (int other = one + 1; other < codes.size(); other++) {
                tallies.add(Tally.of(Countable.pair(codes.get(one), codes.get(other))));
            }
        }
        drawn.counts()
                .forEach(count -> tallies.add(new Tally(
                        new Countable(
                                count.question(),
                                count.code(),
                                count.action(),
                                count.necessity(),
                                count.standing(),
                                count.axle(),
                                "",
                                count.currency(),
                                count.marks(),
                                count.bin()),
                        count.amount())));
        return tallies;
    }

    private List<@Nullable String> row(Drawn drawn, List<Tally> tallies, Map<Countable, Integer> numbers) {
        List<@Nullable String> row = cohort(drawn);
        row.add(tallies.stream()
                .map(tally -> Objects.toString(numbers.get(tally.what())))
                .collect(Collectors.joining(",", "{", "}")));
        row.add(tallies.stream()
                .map(Tally::amount)
                .map(amount -> amount == null ? "NULL" : amount.toPlainString())
                .collect(Collectors.joining(",", "{", "}")));
        row.add(Stream.concat(
                        drawn.causes().stream().map(Cause::axle),
                        drawn.repairs().stream().map(Repair::axle))
                .filter(axle -> axle > 0)
                .distinct()
                .sorted()
                .map(String::valueOf)
                .collect(Collectors.joining(",", "{", "}")));
        return row;
    }

    private List<@Nullable String> row(Drawn drawn, Repair repair) {
        List<@Nullable String> row = cohort(drawn);
        row.add(String.valueOf(repair.axle()));
        row.add("{" + String.join(",", repair.items()) + "}");
        row.add(repair.verified().toString());
        LocalDate returned = repair.returned();
        row.add(returned == null ? null : returned.toString());
        return row;
    }

    private List<@Nullable String> cohort(Drawn drawn) {
        return new ArrayList<>(List.of(
                drawn.reference(),
                drawn.day().toString(),
                drawn.site(),
                drawn.make(),
                drawn.model(),
                drawn.category(),
                drawn.layout(),
                terms.ageBand(BigDecimal.valueOf(drawn.years())),
                terms.odometerBand(BigDecimal.valueOf(drawn.kilometres())),
                drawn.regime()));
    }
}
