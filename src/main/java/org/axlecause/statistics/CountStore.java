package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.casefile.Countable;
import org.axlecause.shared.DatabaseException;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/**
 * Counts over the cases of a tenant, read from folded cells and from what waits to be folded, or from the rows of the
 * cases where no cells tell apart what is asked. Answers are counts, however many cases stand behind them.
 */
@ApplicationScoped
class CountStore {

    /** Questions whose countables bear amounts: money, minutes, what a check told, probabilities. */
    private static final Set<String> WITH_AMOUNTS =
            Set.of(Countable.LINE, Countable.MINUTES, Countable.CHECK, Countable.CALIBRATION);

    private static final String GATHERING =
            "SET LOCAL work_mem = '32MB'; SET LOCAL enable_sort = off; SET LOCAL enable_nestloop = off;"
                    + " SET LOCAL parallel_tuple_cost = 10; SET LOCAL plan_cache_mode = force_custom_plan";

    private static final String NO_AMOUNT = "0::numeric";

    private final TenantTransaction transaction;
    private final KeptCellStore<Wanted, Count> kept = new KeptCellStore<>();

    CountStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** What cells are of: months, or whole years that tell no months apart. */
    private enum Span {
        MONTH("statistics_cell", "month"),
        YEAR("statistics_year_cell", "year");

        private final String table;
        private final String column;

        Span(String table, String column) {
            this.table = table;
            this.column = column;
        }
    }

    /**
     * What is to be counted.
     *
     * @param cohort which cases
     * @param questions questions of the countables
     * @param condition a condition on the countables, {@code k}, without values of anybody's
     * @param by dimensions that the counts are told apart by
     * @param byMonth whether they are told apart by the month of presentation
     * @param members members of the countables, as their columns, that the counts are told apart by
     */
    record Wanted(
            Cohort cohort,
            List<String> questions,
            String condition,
            List<Dimension> by,
            boolean byMonth,
            List<String> members) {

        Wanted {
            questions = List.copyOf(questions);
            by = List.copyOf(by);
            members = List.copyOf(members);
        }

        boolean hasAmounts() {
            return questions.stream().anyMatch(WITH_AMOUNTS::contains);
        }
    }

    /**
     * A count.
     *
     * @param group values of the dimensions, in the order they were asked for
     * @param month first day of the month; null where not asked for
     * @param members values of the members, in the order they were asked for
     * @param n how many
     * @param amount amounts added up; 0 where what is counted bears none
     */
    record Count(List<String> group, @Nullable LocalDate month, List<String> members, long n, BigDecimal amount) {

        Count {
            group = List.copyOf(group);
            members = List.copyOf(members);
        }

        private Count plus(Count more) {
            return new Count(group, month, members, n + more.n, amount.add(more.amount));
        }
    }

    /**
     * Lets the statements of the open transaction gather counts in memory. Under row-level security, and where a table was
     * filled a moment ago, the planner expects so few rows that it would sort, or read once per row, what it had better
     * hash. It doesn't know how long the lists of countables are either, so that handing a row over costs dear: each worker
     * is to count by itself. Plans are made for the values at hand: a list of countables is hashed only where it is a constant.
     */
    void gatherInMemory() {
        transaction.jdbc((connection, tenant) -> {
            try (Statement settings = connection.createStatement()) {
                return settings.execute(GATHERING);
            }
        });
    }

    /** The counts in no order; none that are 0. */
    List<Count> count(Wanted wanted) {
        return transaction.jdbc((connection, tenant) -> {
            List<Integer> countables = countables(connection, tenant, wanted);
            if (countables.isEmpty()) {
                return List.of();
            }
            Source source = Source.of(wanted, countables, connection, tenant);
            List<Count> counts = source.ofCells.isEmpty()
                    ? List.of()
                    : kept.of(connection, tenant, wanted, () -> added(source.cells, source.ofCells, wanted));
            List<Count> more = source.ofRows.isEmpty() ? List.of() : added(source.rows, source.ofRows, wanted);
            return together(counts, more);
        });
    }

    /** Tenants of whom counts are kept. */
    Set<String> keptTenants() {
        return kept.tenants();
    }

    /** Reads cells again that were asked for and have changed since; whether there were any. */
    boolean renewOne() {
        return transaction.jdbc((connection, tenant) -> {
            Wanted wanted = kept.changed(connection, tenant);
            if (wanted != null) {
                Source source = Source.of(wanted, countables(connection, tenant, wanted), connection, tenant);
                kept.renew(connection, tenant, wanted, () -> added(source.cells, source.ofCells, wanted));
            }
            return wanted != null;
        });
    }

    /** What the parts of a statement count, added up. */
    private static List<Count> added(Bound sql, List<String> parts, Wanted wanted) throws SQLException {
        List<String> keys = keys(wanted);
        sql.add("SELECT ").add(keys.isEmpty() ? "" : String.join(", ", keys) + ", ");
        sql.add("sum(s.n) AS n, " + (wanted.hasAmounts() ? "sum(s.amount)" : NO_AMOUNT) + " AS amount FROM (")
                .add(String.join(" UNION ALL ", parts));
        sql.add(") s JOIN statistics_countable k ON k.countable = s.countable WHERE k.tenant_id = ?")
                .tenant();
        sql.add(keys.isEmpty() ? " HAVING count(*) > 0" : " GROUP BY " + String.join(", ", keys));
        return read(sql, wanted);
    }

    /** What is counted, whatever its number. */
    private record Counted(List<String> group, @Nullable LocalDate month, List<String> members) {

        static Counted of(Count count) {
            return new Counted(count.group(), count.month(), count.members());
        }
    }

    private static List<Count> together(List<Count> counts, List<Count> more) {
        Map<Counted, Count> changes = new LinkedHashMap<>();
        more.forEach(count -> changes.put(Counted.of(count), count));
        List<Count> together = new ArrayList<>(counts.size() + more.size());
        for (Count count : counts) {
            Count change = changes.isEmpty() ? null : changes.remove(Counted.of(count));
            together.add(change == null ? count : count.plus(change));
        }
        together.addAll(changes.values());
        together.removeIf(count -> count.n() == 0);
        return together;
    }

    /** Numbers of what is to be counted: a few hundred at most, by which everything else is thrown away early. */
    private static List<Integer> countables(Connection connection, String tenant, Wanted wanted) throws SQLException {
        Bound sql = new Bound(connection, tenant);
        sql.add("SELECT k.countable FROM statistics_countable k WHERE k.tenant_id = ?")
                .tenant();
        sql.add(" AND k.question = ANY (?)").texts(wanted.questions());
        sql.add(wanted.condition().isEmpty() ? "" : " AND " + wanted.condition());
        try (PreparedStatement query = sql.prepared();
                ResultSet row = query.executeQuery()) {
            List<Integer> countables = new ArrayList<>();
            while (row.next()) {
                countables.add(row.getInt(1));
            }
            return countables;
        }
    }

    /** The words that the cases of a tenant bear in a dimension, in order. */
    List<String> words(Dimension dimension) {
        return transaction.jdbc((connection, tenant) -> {
            Grain grain = Grain.of(Set.of(dimension), List.of(Countable.CASE)).orElseThrow();
            String sql = "SELECT DISTINCT " + dimension.column()
                    + " FROM statistics_place WHERE tenant_id = ? AND grain = ?" + " UNION SELECT " + dimension.column()
                    + " FROM statistics_delta WHERE tenant_id = ? ORDER BY 1";
            try (PreparedStatement query = connection.prepareStatement(sql)) {
                query.setString(1, tenant);
                query.setString(2, grain.toString());
                query.setString(3, tenant);
                List<String> words = new ArrayList<>();
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        words.add(rows.getString(1));
                    }
                }
                return words;
            }
        });
    }

    private static List<String> keys(Wanted wanted) {
        return Stream.of(
                        wanted.by().stream().map(dimension -> "s." + dimension.column()),
                        Stream.of("s.month").filter(month -> wanted.byMonth()),
                        wanted.members().stream().map(member -> "k." + member))
                .flatMap(keys -> keys)
                .toList();
    }

    private static List<Count> read(Bound sql, Wanted wanted) throws SQLException {
        try (PreparedStatement query = sql.prepared();
                ResultSet row = query.executeQuery()) {
            List<Count> counts = new ArrayList<>();
            while (row.next()) {
                int column = 1;
                List<String> group = new ArrayList<>();
                for (int index = 0; index < wanted.by().size(); index++) {
                    group.add(row.getString(column++));
                }
                LocalDate month = wanted.byMonth() ? row.getObject(column++, LocalDate.class) : null;
                List<String> members = new ArrayList<>();
                for (int index = 0; index < wanted.members().size(); index++) {
                    members.add(row.getString(column++));
                }
                counts.add(new Count(group, month, members, row.getLong(column), row.getBigDecimal(column + 1)));
            }
            return counts;
        }
    }

    /**
     * Where cases are counted from.
     *
     * @param cells a statement of folded cells, with the values of its parts
     * @param ofCells the parts
     * @param rows a statement of what waits to be folded and of rows, with the values of its parts
     * @param ofRows the parts
     */
    private record Source(
            Wanted wanted,
            List<Integer> countables,
            Bound cells,
            Bound rows,
            List<String> ofCells,
            List<String> ofRows) {

        static Source of(Wanted wanted, List<Integer> countables, Connection connection, String tenant) {
            Source source = new Source(
                    wanted,
                    countables,
                    new Bound(connection, tenant),
                    new Bound(connection, tenant),
                    new ArrayList<>(),
                    new ArrayList<>());
            source.gather();
            return source;
        }

        /** Cells and deltas of the whole months and rows of the days at the edges; or the rows of all cases. */
        private void gather() {
            Set<Dimension> needed = EnumSet.noneOf(Dimension.class);
            needed.addAll(wanted.by());
            needed.addAll(wanted.cohort().dimensions());
            Grain grain = Grain.of(needed, wanted.questions()).orElse(null);
            boolean daily = Grain.DAILY.answers(needed, wanted.questions());
            LocalDate from = wanted.cohort().from();
            LocalDate to = wanted.cohort().to();
            LocalDate first = wanted.cohort().firstWholeMonth();
            LocalDate end = wanted.cohort().endOfWholeMonths();
            if (grain == null || (first != null && end != null && !first.isBefore(end))) {
                addPart(daily, from, to);
                return;
            }
            addFolded(grain, first, end);
            ofRows.add(deltas(rows, wanted, countables, first, end));
            if (from != null && first != null && from.isBefore(first)) {
                addPart(daily, from, first);
            }
            if (to != null && end != null && end.isBefore(to)) {
                addPart(daily, end, to);
            }
        }

        /** Cells of whole years and of the months beside them; of months alone where months are told apart. */
        private void addFolded(Grain grain, @Nullable LocalDate first, @Nullable LocalDate end) {
            LocalDate firstYear = wanted.cohort().firstWholeYear();
            LocalDate endOfYears = wanted.cohort().endOfWholeYears();
            boolean byMonth = wanted.byMonth() || !wanted.cohort().months().isEmpty();
            if (byMonth || (firstYear != null && endOfYears != null && !firstYear.isBefore(endOfYears))) {
                addCells(Span.MONTH, grain, first, end);
                return;
            }
            addCells(Span.YEAR, grain, firstYear, endOfYears);
            if (first != null && firstYear != null && first.isBefore(firstYear)) {
                addCells(Span.MONTH, grain, first, firstYear);
            }
            if (end != null && endOfYears != null && endOfYears.isBefore(end)) {
                addCells(Span.MONTH, grain, endOfYears, end);
            }
        }

        /** A part of a month or more, by days. */
        private void addPart(boolean daily, @Nullable LocalDate from, @Nullable LocalDate to) {
            if (daily) {
                addCells(Span.MONTH, Grain.DAILY, from, to);
                ofRows.add(deltas(rows, wanted, countables, from, to));
            } else {
                ofRows.add(CountStore.rows(rows, wanted, countables, from, to));
            }
        }

        private void addCells(Span span, Grain grain, @Nullable LocalDate from, @Nullable LocalDate to) {
            ofCells.add(CountStore.cells(cells, wanted, countables, span, grain, from, to));
        }
    }

    private static String cells(
            Bound sql,
            Wanted wanted,
            List<Integer> countables,
            Span span,
            Grain grain,
            @Nullable LocalDate from,
            @Nullable LocalDate to) {
        String begin = "c." + span.column;
        Bound part = sql.part();
        part.add("SELECT ").add(columns(wanted, "p.")).add("q.month, q.countable, q.n, q.amount FROM (SELECT c.place,");
        part.add(wanted.byMonth() ? " date_trunc('month', " + begin + ")::date" : " NULL::date")
                .add(" AS month, c.countable,");
        part.add(" sum(c.n)::bigint AS n, " + (wanted.hasAmounts() ? "sum(c.amount)" : NO_AMOUNT));
        part.add(" AS amount FROM " + span.table + " c WHERE c.tenant_id = ?").tenant();
        part.add(" AND c.place = ANY (ARRAY(SELECT p.place FROM statistics_place p WHERE p.tenant_id = ?")
                .tenant()
                .add(" AND p.grain = '" + grain + "'");
        chooseValues(part, "p", wanted.cohort());
        part.add(")) AND c.question = ANY (?)").texts(wanted.questions());
        part.add(" AND c.countable = ANY (?)").numbers(countables);
        between(part, begin, from, to);
        chooseMonths(part, wanted.cohort(), begin);
        part.add(" GROUP BY 1, 2, 3) q JOIN statistics_place p ON p.tenant_id = ? AND p.place = q.place")
                .tenant();
        return sql.take(part);
    }

    private static String deltas(
            Bound sql, Wanted wanted, List<Integer> countables, @Nullable LocalDate from, @Nullable LocalDate to) {
        return listed(sql, wanted, countables, "c.sign::bigint AS n FROM statistics_delta c", from, to);
    }

    private static String rows(
            Bound sql, Wanted wanted, List<Integer> countables, @Nullable LocalDate from, @Nullable LocalDate to) {
        return listed(sql, wanted, countables, "1::bigint AS n FROM statistics_case c", from, to);
    }

    /**
     * What is listed by the rows of a table, added up. The lists are unrolled in the select list: the planner would join a
     * function of each row only by looping over the rows, and read everything else again for each.
     *
     * @param source how many a row counts for, and the table
     */
    private static String listed(
            Bound sql,
            Wanted wanted,
            List<Integer> countables,
            String source,
            @Nullable LocalDate from,
            @Nullable LocalDate to) {
        Bound part = sql.part();
        String by = columns(wanted, "u.") + (wanted.byMonth() ? "date_trunc('month', u.day)::date" : "NULL::date");
        part.add("SELECT ").add(by).add(" AS month, u.countable, sum(u.n)::bigint AS n, ");
        part.add(wanted.hasAmounts() ? "coalesce(sum(u.n * u.amount), 0)" : NO_AMOUNT)
                .add(" AS amount FROM (SELECT ");
        part.add(columns(wanted, "c.")).add("c.day, unnest(c.countables) AS countable, ");
        part.add(wanted.hasAmounts() ? "unnest(c.amounts) AS amount, " : "").add(source);
        part.add(" WHERE c.tenant_id = ?").tenant();
        between(part, "c.day", from, to);
        choose(part, wanted.cohort(), "c.day");
        part.add(") u WHERE u.countable = ANY (?)").numbers(countables);
        part.add(" GROUP BY ").add(by).add(", u.countable");
        return sql.take(part);
    }

    private static String columns(Wanted wanted, String row) {
        return wanted.by().stream()
                .map(dimension -> row + dimension.column() + ", ")
                .collect(Collectors.joining());
    }

    /** Adds the conditions of a period. */
    static void between(Bound part, String day, @Nullable LocalDate from, @Nullable LocalDate to) {
        if (from != null) {
            part.add(" AND " + day + " >= ?").value(from);
        }
        if (to != null) {
            part.add(" AND " + day + " < ?").value(to);
        }
    }

    /** Adds the conditions of months and dimensions on the rows {@code c}. */
    static void choose(Bound part, Cohort cohort, String day) {
        chooseMonths(part, cohort, day);
        chooseValues(part, "c", cohort);
    }

    private static void chooseMonths(Bound part, Cohort cohort, String day) {
        if (!cohort.months().isEmpty()) {
            part.add(" AND extract(month FROM " + day + ") = ANY (?)").numbers(cohort.months());
        }
    }

    private static void chooseValues(Bound part, String row, Cohort cohort) {
        cohort.values()
                .forEach((dimension, words) -> part.add(" AND " + row + "." + dimension.column() + " = ANY (?)")
                        .texts(words));
    }

    /** A statement under way, with its values in the order of their marks. */
    static final class Bound {

        private final StringBuilder sql = new StringBuilder();
        private final List<Object> values = new ArrayList<>();
        private final List<Object> taken = new ArrayList<>();
        private final Connection connection;
        private final String tenant;

        Bound(Connection connection, String tenant) {
            this.connection = connection;
            this.tenant = tenant;
        }

        Bound part() {
            return new Bound(connection, tenant);
        }

        /** The text of a part that comes before what follows; its values go before all others. */
        String take(Bound part) {
            taken.addAll(part.values);
            return part.sql.toString();
        }

        Bound add(String text) {
            sql.append(text);
            return this;
        }

        Bound value(Object value) {
            values.add(value);
            return this;
        }

        /** Its tenant as a value. */
        Bound tenant() {
            return value(tenant);
        }

        Bound texts(List<String> words) {
            return array("text", words);
        }

        Bound numbers(List<Integer> numbers) {
            return array("int4", numbers);
        }

        private Bound array(String type, List<?> items) {
            try {
                values.add(connection.createArrayOf(type, items.toArray()));
                return this;
            } catch (SQLException e) {
                throw new DatabaseException(e);
            }
        }

        PreparedStatement prepared() throws SQLException {
            PreparedStatement query = connection.prepareStatement(sql.toString());
            int index = 1;
            for (Object value : taken) {
                query.setObject(index++, value);
            }
            for (Object value : values) {
                query.setObject(index++, value);
            }
            return query;
        }
    }
}
