package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.stream.Stream;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/**
 * The rows that statistics keep of cases that have ended. Whatever changes leaves a delta in the same transaction, so that
 * what is folded and what is not yet folded always add up to the rows.
 */
@ApplicationScoped
class CountedCaseStore {

    /** Cases that may be each other's return take turns, in an order that all keep. */
    private static final String TAKE_TURNS = """
            SELECT pg_advisory_xact_lock(turn)
              FROM (SELECT DISTINCT hashtextextended(name, 0) AS turn FROM unnest(?) AS name ORDER BY 1) t
            """;

    private static final String COHORT =
            "site, day, make, model, category, layout, age_band, odometer_band, regime, countables, amounts";

    private static final String REPAIR =
            "items, verified_day, site, day, make, model, category, layout, age_band, odometer_band, regime";

    private static final String REMOVE = """
            WITH gone AS (DELETE FROM statistics_case WHERE tenant_id = ? AND reference = ? RETURNING *),
                 delta AS (INSERT INTO statistics_delta (tenant_id, sign, %1$s) SELECT tenant_id, -1, %1$s FROM gone),
                 repair AS (DELETE FROM statistics_repair WHERE tenant_id = ? AND reference = ? RETURNING *),
                 repair_delta AS (
              INSERT INTO statistics_repair_delta (tenant_id, sign, returned_day, %2$s)
              SELECT tenant_id, -1, returned_day, %2$s FROM repair)
            SELECT vehicle, previous_case FROM gone
            """.formatted(COHORT, REPAIR);

    private static final String ADD = """
            WITH added AS (
              INSERT INTO statistics_case (tenant_id, reference, %1$s, opened, axles, vehicle, previous_case)
              VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) RETURNING *)
            INSERT INTO statistics_delta (tenant_id, sign, %1$s) SELECT tenant_id, 1, %1$s FROM added
            """.formatted(COHORT);

    private static final String ADD_REPAIR = """
            WITH added AS (
              INSERT INTO statistics_repair (tenant_id, reference, axle, items, verified_at, verified_day, vehicle, site, day,
                                             make, model, category, layout, age_band, odometer_band, regime)
              VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) RETURNING *)
            INSERT INTO statistics_repair_delta (tenant_id, sign, %1$s) SELECT tenant_id, 1, %1$s FROM added
            """.formatted(REPAIR);

    /** The first later case about the axle, of the same vehicle or one that names the repaired case as its earlier one. */
    private static final String TIE_RETURNS = """
            WITH repair AS (
              SELECT reference, axle, vehicle, verified_at, returned_day FROM statistics_repair
               WHERE tenant_id = ? AND (vehicle = ANY (?) OR reference = ANY (?))
               ORDER BY reference, axle FOR UPDATE),
                 tied AS (
              SELECT r.reference, r.axle, r.returned_day AS before,
                     (SELECT min(c.day) FROM statistics_case c
                       WHERE c.tenant_id = ? AND (c.vehicle = r.vehicle OR c.previous_case = r.reference)
                         AND c.reference <> r.reference AND c.opened > r.verified_at AND r.axle = ANY (c.axles)) AS day
                FROM repair r),
                 changed AS (
              UPDATE statistics_repair s SET returned_day = tied.day
                FROM tied
               WHERE s.tenant_id = ? AND s.reference = tied.reference AND s.axle = tied.axle
                 AND tied.before IS DISTINCT FROM tied.day
              RETURNING s.*, tied.before)
            INSERT INTO statistics_repair_delta (tenant_id, sign, returned_day, %1$s)
            SELECT tenant_id, -1, before, %1$s FROM changed
             UNION ALL
            SELECT tenant_id, 1, returned_day, %1$s FROM changed
            """.formatted(REPAIR);

    private static final String KEY = "question, code, action, necessity, standing, axle, side, currency, marks, bin";

    private static final String WANTED = "unnest(?, ?, ?, ?, ?, ?, ?, ?, ?, ?) AS w (" + KEY + ")";

    /** A number that this very transaction has given is not kept in memory: it goes with the transaction. */
    private static final String NUMBERS = """
            SELECT c.countable, c.question, c.code, c.action, c.necessity, c.standing, c.axle, c.side, c.currency, c.marks,
                   c.bin, (c.xmin = pg_current_xact_id_if_assigned()::xid) IS TRUE AS own
              FROM statistics_countable c
              JOIN %s USING (%s)
             WHERE c.tenant_id = ?
            """.formatted(WANTED, KEY);

    private static final String NEW_NUMBERS = """
            INSERT INTO statistics_countable (tenant_id, %1$s) SELECT ?, %1$s FROM %2$s ORDER BY %1$s ON CONFLICT DO NOTHING
            """.formatted(KEY, WANTED);

    private final TenantTransaction transaction;
    private final Map<String, Map<Countable, Integer>> known = new ConcurrentHashMap<>();

    CountedCaseStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /**
     * Keeps a locked case as it is counted now, in place of what was counted of it before.
     *
     * @param counted null where the case hasn't ended, or not any more
     */
    void save(String reference, @Nullable CountedCase counted) {
        transaction.jdbc((connection, tenant) -> {
            TreeSet<String> vehicles = new TreeSet<>();
            TreeSet<String> references = new TreeSet<>();
            references.add(reference);
            takeTurns(connection, tenant, reference, counted);
            remove(connection, tenant, reference, vehicles, references);
            if (counted != null) {
                add(connection, tenant, reference, counted);
                Stream.ofNullable(counted.vehicle()).forEach(vehicles::add);
                Stream.ofNullable(counted.previousCase()).forEach(references::add);
            }
            return tieReturns(connection, tenant, vehicles, references);
        });
    }

    private static void takeTurns(Connection connection, String tenant, String reference, @Nullable CountedCase counted)
            throws SQLException {
        List<String> names = new ArrayList<>(List.of(tenant + " case " + reference));
        if (counted != null) {
            Stream.ofNullable(counted.vehicle()).forEach(vehicle -> names.add(tenant + " vehicle " + vehicle));
            Stream.ofNullable(counted.previousCase()).forEach(earlier -> names.add(tenant + " case " + earlier));
        }
        try (PreparedStatement turns = connection.prepareStatement(TAKE_TURNS)) {
            turns.setArray(1, connection.createArrayOf("text", names.toArray()));
            turns.execute();
        }
    }

    private static void remove(
            Connection connection,
            String tenant,
            String reference,
            Collection<String> vehicles,
            Collection<String> references)
            throws SQLException {
        try (PreparedStatement remove = connection.prepareStatement(REMOVE)) {
            remove.setString(1, tenant);
            remove.setString(2, reference);
            remove.setString(3, tenant);
            remove.setString(4, reference);
            try (ResultSet row = remove.executeQuery()) {
                if (row.next()) {
                    Stream.ofNullable(row.getString(1)).forEach(vehicles::add);
                    Stream.ofNullable(row.getString(2)).forEach(references::add);
                }
            }
        }
    }

    private void add(Connection connection, String tenant, String reference, CountedCase counted) throws SQLException {
        Map<Countable, Integer> numbers = numbers(
                connection,
                tenant,
                counted.tallies().stream().map(Tally::what).distinct().sorted().toList());
        CountedCase.Cohort cohort = counted.cohort();
        try (PreparedStatement insert = connection.prepareStatement(ADD)) {
            insert.setString(1, tenant);
            insert.setString(2, reference);
            bind(insert, 3, cohort);
            insert.setArray(
                    12,
                    connection.createArrayOf(
                            "int4",
                            counted.tallies().stream()
                                    .map(tally -> numbers.get(tally.what()))
                                    .toArray()));
            insert.setArray(
                    13,
                    connection.createArrayOf(
                            "numeric",
                            counted.tallies().stream().map(Tally::amount).toArray(BigDecimal[]::new)));
            insert.setObject(14, counted.opened().truncatedTo(ChronoUnit.MICROS));
            insert.setArray(15, connection.createArrayOf("int4", counted.axles().toArray()));
            insert.setString(16, counted.vehicle());
            insert.setString(17, counted.previousCase());
            insert.executeUpdate();
        }
        CountedCase.Verified verified = counted.verified();
        if (verified != null && !counted.repaired().isEmpty()) {
            addRepairs(connection, tenant, reference, counted, verified);
        }
    }

    private static void addRepairs(
            Connection connection, String tenant, String reference, CountedCase counted, CountedCase.Verified verified)
            throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(ADD_REPAIR)) {
            for (CountedCase.RepairedAxle axle : counted.repaired()) {
                insert.setString(1, tenant);
                insert.setString(2, reference);
                insert.setInt(3, axle.axle());
                insert.setArray(4, connection.createArrayOf("text", axle.items().toArray()));
                insert.setObject(5, verified.time().truncatedTo(ChronoUnit.MICROS));
                insert.setObject(6, verified.day());
                insert.setString(7, counted.vehicle());
                bind(insert, 8, counted.cohort());
                insert.addBatch();
            }
            insert.executeBatch();
        }
    }

    private static void bind(PreparedStatement insert, int first, CountedCase.Cohort cohort) throws SQLException {
        insert.setString(first, cohort.site());
        insert.setObject(first + 1, cohort.day());
        insert.setString(first + 2, cohort.make());
        insert.setString(first + 3, cohort.model());
        insert.setString(first + 4, cohort.category());
        insert.setString(first + 5, cohort.layout());
        insert.setString(first + 6, cohort.ageBand());
        insert.setString(first + 7, cohort.odometerBand());
        insert.setString(first + 8, cohort.regime());
    }

    private static int tieReturns(
            Connection connection, String tenant, Collection<String> vehicles, Collection<String> references)
            throws SQLException {
        try (PreparedStatement tie = connection.prepareStatement(TIE_RETURNS)) {
            tie.setString(1, tenant);
            tie.setArray(2, connection.createArrayOf("text", vehicles.toArray()));
            tie.setArray(3, connection.createArrayOf("text", references.toArray()));
            tie.setString(4, tenant);
            tie.setString(5, tenant);
            return tie.executeUpdate();
        }
    }

    /** The numbers of countables, new ones for those never counted. */
    Map<Countable, Integer> numbers(Connection connection, String tenant, List<Countable> wanted) throws SQLException {
        Map<Countable, Integer> mine = known.computeIfAbsent(tenant, name -> new ConcurrentHashMap<>());
        Map<Countable, Integer> found = new HashMap<>();
        List<Countable> missing = new ArrayList<>();
        for (Countable countable : wanted) {
            Integer number = mine.get(countable);
            if (number == null) {
                missing.add(countable);
            } else {
                found.put(countable, number);
            }
        }
        if (!missing.isEmpty()) {
            Map<Countable, Integer> read = read(connection, tenant, missing, mine);
            missing.removeAll(read.keySet());
            found.putAll(read);
        }
        if (!missing.isEmpty()) {
            try (PreparedStatement insert = connection.prepareStatement(NEW_NUMBERS)) {
                insert.setString(1, tenant);
                bind(connection, insert, 2, missing);
                insert.executeUpdate();
            }
            found.putAll(read(connection, tenant, missing, mine));
        }
        return found;
    }

    private static Map<Countable, Integer> read(
            Connection connection, String tenant, List<Countable> wanted, Map<Countable, Integer> kept)
            throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(NUMBERS)) {
            bind(connection, query, 1, wanted);
            query.setString(11, tenant);
            Map<Countable, Integer> found = new HashMap<>();
            try (ResultSet row = query.executeQuery()) {
                while (row.next()) {
                    Countable countable = new Countable(
                            row.getString(2),
                            row.getString(3),
                            row.getString(4),
                            row.getString(5),
                            row.getString(6),
                            row.getInt(7),
                            row.getString(8),
                            row.getString(9),
                            row.getInt(10),
                            row.getInt(11));
                    found.put(countable, row.getInt(1));
                    if (!row.getBoolean(12)) {
                        kept.put(countable, row.getInt(1));
                    }
                }
            }
            return found;
        }
    }

    private static void bind(Connection connection, PreparedStatement statement, int first, List<Countable> wanted)
            throws SQLException {
        int index = first;
        for (Function<Countable, String> member : List.<Function<Countable, String>>of(
                Countable::question, Countable::code, Countable::action, Countable::necessity, Countable::standing)) {
            statement.setArray(index++, texts(connection, wanted, member));
        }
        statement.setArray(index++, numbers(connection, wanted, Countable::axle));
        statement.setArray(index++, texts(connection, wanted, Countable::side));
        statement.setArray(index++, texts(connection, wanted, Countable::currency));
        statement.setArray(index++, numbers(connection, wanted, Countable::marks));
        statement.setArray(index, numbers(connection, wanted, Countable::bin));
    }

    private static java.sql.Array texts(
            Connection connection, List<Countable> wanted, Function<Countable, String> member) throws SQLException {
        return connection.createArrayOf("text", wanted.stream().map(member).toArray());
    }

    private static java.sql.Array numbers(
            Connection connection, List<Countable> wanted, Function<Countable, Integer> member) throws SQLException {
        return connection.createArrayOf("int4", wanted.stream().map(member).toArray());
    }
}
