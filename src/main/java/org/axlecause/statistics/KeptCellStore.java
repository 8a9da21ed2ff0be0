package org.axlecause.statistics;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import com.github.benmanes.caffeine.cache.Expiry;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What was read from the folded cells of tenants, as long as no fold has changed them, somebody asked for it within the hour
 * and there is room. What waits to be folded is little, and is added to it each time anew.
 *
 * @param <W> what is asked for
 * @param <C> what is read
 */
final class KeptCellStore<W, C> {

    private static final long MOST = 250_000;
    private static final Duration UNASKED = Duration.ofHours(1);

    /** The transaction that folded last wrote this row last, whatever its number is since a copy was put back. */
    private static final String STATE = "SELECT folded || ' ' || xmin FROM statistics_fold WHERE tenant_id = ?";

    private final Cache<Question<W>, Kept<C>> kept = Caffeine.newBuilder()
            .maximumWeight(MOST)
            .weigher((Question<W> question, Kept<C> cells) -> 1 + cells.cells().size())
            .expireAfter(new SinceAsked<Question<W>, Kept<C>>())
            .build();

    private record Question<W>(String tenant, W wanted) {}

    private record Kept<C>(String state, List<C> cells) {}

    /** Reads from the database. */
    interface Reading<C> {
        List<C> read() throws SQLException;
    }

    /** Asking for it again keeps it for longer; reading it again does not. */
    private static final class SinceAsked<K, V> implements Expiry<K, V> {

        @Override
        public long expireAfterCreate(K question, V cells, long now) {
            return UNASKED.toNanos();
        }

        @Override
        public long expireAfterUpdate(K question, V cells, long now, long left) {
            return left;
        }

        @Override
        public long expireAfterRead(K question, V cells, long now, long left) {
            return UNASKED.toNanos();
        }
    }

    /** What is wanted of the cells as the open transaction sees them; read where it is not kept. */
    List<C> of(Connection connection, String tenant, W wanted, Reading<C> reading) throws SQLException {
        Optional<String> state = state(connection, tenant);
        if (state.isEmpty()) {
            return reading.read();
        }
        Question<W> question = new Question<>(tenant, wanted);
        Kept<C> known = kept.getIfPresent(question);
        return known != null && known.state().equals(state.get())
                ? known.cells()
                : read(question, state.get(), reading);
    }

    private List<C> read(Question<W> question, String state, Reading<C> reading) throws SQLException {
        List<C> cells = List.copyOf(reading.read());
        kept.put(question, new Kept<>(state, cells));
        return cells;
    }

    /** Tenants that something is kept of. */
    Set<String> tenants() {
        return kept.asMap().keySet().stream().map(Question::tenant).collect(Collectors.toSet());
    }

    /** Something that is kept of a tenant and that a fold has changed since; null where nothing is. */
    @Nullable
    W changed(Connection connection, String tenant) throws SQLException {
        Optional<String> state = state(connection, tenant);
        if (state.isEmpty()) {
            kept.asMap().keySet().removeIf(question -> question.tenant().equals(tenant));
            return null;
        }
        for (Question<W> question : kept.asMap().keySet()) {
            Kept<C> known = kept.policy().getIfPresentQuietly(question);
            if (question.tenant().equals(tenant)
                    && known != null
                    && !known.state().equals(state.get())) {
                return question.wanted();
            }
        }
        return null;
    }

    /** Reads what is kept again, for whoever asks next. */
    void renew(Connection connection, String tenant, W wanted, Reading<C> reading) throws SQLException {
        Optional<String> state = state(connection, tenant);
        if (state.isPresent()) {
            read(new Question<>(tenant, wanted), state.get(), reading);
        }
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
