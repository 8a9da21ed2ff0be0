package org.axlecause.statistics;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * What was read from the folded cells of tenants, as long as no fold has changed them and there is room. What waits to be
 * folded is little, and is added to it each time anew.
 *
 * @param <W> what is asked for
 * @param <C> what is read
 */
final class KeptCellStore<W, C> {

    private static final long MOST = 100_000;
    private static final Duration UNASKED = Duration.ofHours(1);

    /** The transaction that folded last wrote this row last, whatever its number is since a copy was put back. */
    private static final String STATE = "SELECT folded || ' ' || xmin FROM statistics_fold WHERE tenant_id = ?";

    private final Cache<Key<W>, List<C>> kept = Caffeine.newBuilder()
            .maximumWeight(MOST)
            .weigher((Key<W> key, List<C> cells) -> 1 + cells.size())
            .expireAfterAccess(UNASKED)
            .build();

    private record Key<W>(String tenant, String state, W wanted) {}

    /** Reads from the database. */
    interface Reading<C> {
        List<C> read() throws SQLException;
    }

    /** What is wanted of the cells as the open transaction sees them; read where it is not kept. */
    List<C> of(Connection connection, String tenant, W wanted, Reading<C> reading) throws SQLException {
        Optional<String> state = state(connection, tenant);
        if (state.isEmpty()) {
            return reading.read();
        }
        Key<W> key = new Key<>(tenant, state.get(), wanted);
        List<C> known = kept.getIfPresent(key);
        if (known != null) {
            return known;
        }
        List<C> cells = List.copyOf(reading.read());
        kept.put(key, cells);
        return cells;
    }

    private static Optional<String> state(Connection connection, String tenant) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(STATE)) {
            query.setString(1, tenant);
            try (ResultSet row = query.executeQuery()) {
                return row.next() ? Optional.of(row.getString(1)) : Optional.empty();
            }
        }
    }
}
