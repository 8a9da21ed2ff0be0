package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/**
 * Brings invented cases into the statistics rows, thousands in a statement. It is no COPY, which
 * PostgreSQL refuses on tables with row-level security, and it leaves no deltas: cells are counted from the rows afterwards.
 */
@ApplicationScoped
public class DrawnCaseStore {

    private static final LocalTime OPENED = LocalTime.NOON;
    private static final LocalTime PROVED = LocalTime.of(16, 0);

    private static final Comparator<Tally> ORDER = Comparator.comparing(Tally::what)
            .thenComparing(Tally::amount, Comparator.nullsFirst(Comparator.naturalOrder()));

    private static final String ADD = """
            INSERT INTO statistics_case (tenant_id, reference, site, day, make, model, category, layout, age_band,
                                         odometer_band, regime, countables, amounts, opened, axles, previous_case)
            SELECT ?, reference, site, day::date, make, model, category, layout, age_band, odometer_band, regime,
                   countables::integer[], amounts::numeric[], opened::timestamptz, axles::integer[], previous_case
              FROM unnest(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                AS drawn (reference, site, day, make, model, category, layout, age_band, odometer_band, regime, countables,
                          amounts, opened, axles, previous_case)
            """;

    private static final String ADD_REPAIRS = """
            INSERT INTO statistics_repair (tenant_id, reference, site, day, make, model, category, layout, age_band,
                                           odometer_band, regime, axle, items, verified_at, verified_day, returned_day)
            SELECT ?, reference, site, day::date, make, model, category, layout, age_band, odometer_band, regime,
                   axle::integer, items::text[], verified_at::timestamptz, verified_day::date, returned::date
              FROM unnest(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                AS drawn (reference, site, day, make, model, category, layout, age_band, odometer_band, regime, axle, items,
                          verified_at, verified_day, returned)
            """;

    private final TenantTransaction transaction;
    private final CountedCaseStore counted;
    private final StatisticsTerms terms = StatisticsTerms.released();
    private final Map<List<Cause>, List<Tally>> ofCauses = new ConcurrentHashMap<>();

    DrawnCaseStore(TenantTransaction transaction, CountedCaseStore counted) {
        this.transaction = transaction;
        this.counted = counted;
    }

    /**
     * An invented case that has ended.
     *
     * @param years age of the vehicle
     * @param kilometres distance of the vehicle
     * @param previousCase the case whose repair it comes back after; null for none
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
            @Nullable String previousCase,
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

    /** A repaired axle; the day of the later case that names this one as its previous case, where there is one. */
    public record Repair(
            int axle,
            List<String> items,
            LocalDate verified,
            @Nullable LocalDate returned) {

        public Repair {
            items = items.stream().sorted().toList();
        }
    }

    /**
     * Adds cases to the rows of the open transaction's tenant, as they would stand there if each had been counted when it
     * ended; the cells don't count them yet.
     */
    public void add(List<Drawn> cases) {
        transaction.jdbc((connection, tenant) -> {
            List<CountedCase> rows = cases.stream().map(this::counted).toList();
            Set<Countable> wanted = new HashSet<>();
            rows.forEach(row -> row.tallies().forEach(tally -> wanted.add(tally.what())));
            Map<Countable, Integer> numbers =
                    counted.numbers(connection, tenant, wanted.stream().sorted().toList());
            List<List<@Nullable String>> added = new ArrayList<>();
            List<List<@Nullable String>> repairs = new ArrayList<>();
            for (int index = 0; index < rows.size(); index++) {
                Drawn drawn = cases.get(index);
                added.add(row(drawn.reference(), rows.get(index), numbers));
                repairs.addAll(repairs(drawn, rows.get(index)));
            }
            insert(connection, tenant, ADD, added);
            insert(connection, tenant, ADD_REPAIRS, repairs);
            return cases.size();
        });
    }

    /** The case as it is counted when it ends; which later case it came back as is not known then. */
    CountedCase counted(Drawn drawn) {
        List<Tally> tallies = new ArrayList<>(ofCauses.computeIfAbsent(drawn.causes(), DrawnCaseStore::tallies));
        drawn.counts().forEach(count -> tallies.add(tally(count)));
        tallies.sort(ORDER);
        Repair proved = drawn.repairs().isEmpty() ? null : drawn.repairs().get(0);
        return new CountedCase(
                new CountedCase.Cohort(
                        drawn.site(),
                        drawn.day(),
                        drawn.make(),
                        drawn.model(),
                        drawn.category(),
                        drawn.layout(),
                        terms.ageBand(BigDecimal.valueOf(drawn.years())),
                        terms.odometerBand(BigDecimal.valueOf(drawn.kilometres())),
                        drawn.regime()),
                tallies,
                drawn.day().atTime(OPENED).atOffset(ZoneOffset.UTC),
                Stream.concat(
                                drawn.causes().stream().map(Cause::axle),
                                drawn.repairs().stream().map(Repair::axle))
                        .filter(axle -> axle > 0)
                        .distinct()
                        .sorted()
                        .toList(),
                null,
                drawn.previousCase(),
                proved == null
                        ? null
                        : new CountedCase.Verified(
                                proved.verified().atTime(PROVED).atOffset(ZoneOffset.UTC), proved.verified()),
                drawn.repairs().stream()
                        .map(repair -> new CountedCase.RepairedAxle(repair.axle(), repair.items()))
                        .toList());
    }

    /** What is counted of any case with these causes. */
    private static List<Tally> tallies(List<Cause> found) {
        List<Tally> tallies = new ArrayList<>();
        tallies.add(Tally.of(Countable.aCase()));
        List<Countable> causes = found.isEmpty()
                ? List.of(Countable.cause(Countable.UNDETERMINED, 0, "", "", CauseMarks.ALL))
                : CauseMarks.marked(found.stream()
                        .map(cause -> Countable.cause(
                                cause.code(),
                                cause.axle(),
                                cause.side(),
                                cause.root() ? Countable.ROOT : Countable.CONTRIBUTING,
                                0))
                        .toList());
        causes.forEach(cause -> tallies.add(Tally.of(cause)));
        List<String> codes = found.stream().map(Cause::code).distinct().sorted().toList();
        for (int one = 0; one < codes.size(); one++) {
            for (int other = one + 1; other < codes.size(); other++) {
                tallies.add(Tally.of(Countable.pair(codes.get(one), codes.get(other))));
            }
        }
        return List.copyOf(tallies);
    }

    private static Tally tally(Counted count) {
        return new Tally(
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
                count.amount());
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

    private static List<@Nullable String> row(String reference, CountedCase counted, Map<Countable, Integer> numbers) {
        List<@Nullable String> row = cohort(reference, counted.cohort());
        row.add(counted.tallies().stream()
                .map(tally -> Objects.toString(numbers.get(tally.what())))
                .collect(Collectors.joining(",", "{", "}")));
        row.add(counted.tallies().stream()
                .map(Tally::amount)
                .map(amount -> amount == null ? "NULL" : amount.toPlainString())
                .collect(Collectors.joining(",", "{", "}")));
        row.add(moment(counted.opened()));
        row.add(counted.axles().stream().map(String::valueOf).collect(Collectors.joining(",", "{", "}")));
        row.add(counted.previousCase());
        return row;
    }

    private static List<List<@Nullable String>> repairs(Drawn drawn, CountedCase counted) {
        CountedCase.Verified verified = counted.verified();
        List<List<@Nullable String>> rows = new ArrayList<>();
        if (verified == null) {
            return rows;
        }
        for (Repair repair : drawn.repairs()) {
            List<@Nullable String> row = cohort(drawn.reference(), counted.cohort());
            row.add(String.valueOf(repair.axle()));
            row.add("{" + String.join(",", repair.items()) + "}");
            row.add(moment(verified.time()));
            row.add(verified.day().toString());
            row.add(repair.returned() == null ? null : repair.returned().toString());
            rows.add(row);
        }
        return rows;
    }

    private static String moment(OffsetDateTime time) {
        return time.truncatedTo(ChronoUnit.MICROS).toString();
    }

    private static List<@Nullable String> cohort(String reference, CountedCase.Cohort cohort) {
        return new ArrayList<>(List.of(
                reference,
                cohort.site(),
                cohort.day().toString(),
                cohort.make(),
                cohort.model(),
                cohort.category(),
                cohort.layout(),
                cohort.ageBand(),
                cohort.odometerBand(),
                cohort.regime()));
    }
}
