package org.axlecause.shared;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.narayana.jta.TransactionRunnerOptions;
import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;

/**
 * The one way to the database: a transaction bound to one tenant. Row-level security opens for that tenant when it
 * begins and closes when it ends, for JDBC statements and entities alike.
 */
@ApplicationScoped
public class TenantTransaction {

    /** For a statement that is right whatever number of rows it changes. */
    public static final int ANY_ROWS = -1;

    private static final String BIND = "SELECT set_config('axlecause.tenant', ?, true)";

    private final DataSource dataSource;
    private final ThreadLocal<@Nullable String> current = new ThreadLocal<>();
    private final ThreadLocal<List<Write>> kept = ThreadLocal.withInitial(ArrayList::new);

    TenantTransaction(DataSource dataSource) {
        this.dataSource = dataSource;
    }

    /** Runs the work in this tenant's transaction; joins it when one is open, refuses when another tenant's is. */
    public <T extends @Nullable Object> T call(String tenant, Supplier<T> work) {
        return joinedOrBegun(tenant, () -> bind(tenant), work);
    }

    /**
     * As {@link #call}, for work that begins with a question by {@link #ask} or {@link #jdbc}: row-level security opens along
     * with it, in the same message. Until then no row of any tenant is seen.
     */
    public <T extends @Nullable Object> T callToAsk(String tenant, Supplier<T> work) {
        return joinedOrBegun(tenant, () -> bindLater(tenant), work);
    }

    private <T extends @Nullable Object> T joinedOrBegun(String tenant, Runnable binding, Supplier<T> work) {
        String open = current.get();
        if (tenant.equals(open)) {
            return work.get();
        }
        if (open != null) {
            throw new IllegalStateException("A transaction of one tenant is open; another tenant's can't begin in it");
        }
        return begun(QuarkusTransaction.requiringNew(), tenant, () -> {
            binding.run();
            return work.get();
        });
    }

    /** Runs work that takes longer than a transaction usually may in one of this tenant's own; none may be open. */
    public <T extends @Nullable Object> T patiently(String tenant, Duration most, Supplier<T> work) {
        if (current.get() != null) {
            throw new IllegalStateException("A transaction is open; one that takes long can't begin in it");
        }
        int seconds = Math.toIntExact(most.toSeconds());
        return begun(QuarkusTransaction.requiringNew().timeout(seconds), tenant, () -> {
            bind(tenant);
            return work.get();
        });
    }

    /**
     * Runs the work in a transaction of this tenant that only reads and sees the database as it was when it began, however
     * many statements ask it.
     */
    public <T extends @Nullable Object> T snapshot(String tenant, Supplier<T> work) {
        if (current.get() != null) {
            throw new IllegalStateException("A transaction is open; a snapshot can't begin in it");
        }
        return begun(QuarkusTransaction.requiringNew(), tenant, () -> {
            freeze();
            bind(tenant);
            return work.get();
        });
    }

    /** Where the database is away, its own exception comes out, whoever has wrapped it. */
    private <T extends @Nullable Object> T begun(
            TransactionRunnerOptions transaction, String tenant, Supplier<T> work) {
        try {
            return transaction.call(() -> {
                current.set(tenant);
                try {
                    T result = work.get();
                    sendKept();
                    return result;
                } finally {
                    current.remove();
                    kept.remove();
                }
            });
        } catch (RuntimeException fault) {
            throw DatabaseException.behind(fault)
                    .filter(DatabaseException::isUnavailable)
                    .<RuntimeException>map(away -> away)
                    .orElse(fault);
        }
    }

    /** Runs the work in this tenant's transaction; see {@link #call}. */
    public void run(String tenant, Runnable work) {
        this.<@Nullable Void>call(tenant, () -> {
            work.run();
            return null;
        });
    }

    /** The tenant whose transaction is open. */
    public String tenant() {
        String open = current.get();
        if (open == null) {
            throw new IllegalStateException("No tenant's transaction is open; stores work inside one only");
        }
        return open;
    }

    /**
     * Keeps a statement that changes rows until the transaction asks something by {@link #ask} or {@link #jdbc} or ends;
     * what is kept by then goes in one message, in the order in which it came. The statement names its tenant itself.
     *
     * @param rows how many rows it must change, or {@link #ANY_ROWS}
     * @param values what its question marks stand for: texts, numbers, times, bytes, {@link SqlArray}s and nulls
     */
    public void later(String sql, int rows, @Nullable Object... values) {
        tenant();
        kept.get().add(new Write(sql, rows, Arrays.asList(values)));
    }

    /** Sends what is kept, so that what is wrong with it shows now. */
    public void sendKept() {
        List<Write> writes = kept.get();
        if (writes.isEmpty()) {
            return;
        }
        try (Connection connection = dataSource.getConnection()) {
            Write.send(connection, writes);
        } catch (SQLException e) {
            throw new DatabaseException(e);
        } finally {
            kept.remove();
        }
    }

    /**
     * Asks the database in one message, behind what is kept; the queries name their tenant themselves.
     *
     * @param queries SQL, parted by semicolons
     * @param reader makes something of the results
     * @param values what the question marks of all stand for, as with {@link #later}
     */
    public <T extends @Nullable Object> T ask(
            String queries, QueryResults.Reader<T> reader, @Nullable Object... values) {
        tenant();
        List<Write> writes = List.copyOf(kept.get());
        kept.remove();
        try (Connection connection = dataSource.getConnection()) {
            return Write.ask(connection, writes, new Write(queries, ANY_ROWS, Arrays.asList(values)), reader);
        } catch (SQLException e) {
            throw new DatabaseException(e);
        }
    }

    /** Runs JDBC statements in the open transaction; each statement names its tenant itself. */
    public <T extends @Nullable Object> T jdbc(Statements<T> statements) {
        String tenant = tenant();
        sendKept();
        try (Connection connection = dataSource.getConnection()) {
            return statements.run(connection, tenant);
        } catch (SQLException e) {
            throw new DatabaseException(e);
        }
    }

    /**
     * Reads outside any tenant's transaction, by a function of the database that looks across tenants.
     *
     * @param sql one query
     * @param reader makes something of a row
     * @param values what the question marks stand for
     */
    public <T> List<T> acrossTenants(String sql, RowReader<T> reader, Object... values) {
        try (Connection connection = dataSource.getConnection();
                PreparedStatement query = connection.prepareStatement(sql)) {
            for (int index = 0; index < values.length; index++) {
                query.setObject(index + 1, values[index]);
            }
            List<T> found = new ArrayList<>();
            try (ResultSet row = query.executeQuery()) {
                while (row.next()) {
                    found.add(reader.read(row));
                }
            }
            return found;
        } catch (SQLException e) {
            throw new DatabaseException(e);
        }
    }

    private void freeze() {
        try (Connection connection = dataSource.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ, READ ONLY");
        } catch (SQLException e) {
            throw new DatabaseException(e);
        }
    }

    private void bind(String tenant) {
        bindLater(tenant);
        sendKept();
    }

    private void bindLater(String tenant) {
        if (tenant.isBlank()) {
            throw new IllegalArgumentException("A transaction needs a tenant");
        }
        later(BIND, ANY_ROWS, tenant);
    }

    /** Statements of one tenant on the connection of its transaction. */
    @FunctionalInterface
    public interface Statements<T extends @Nullable Object> {
        T run(Connection connection, String tenant) throws SQLException;
    }

    /** Makes something of the row at hand. */
    @FunctionalInterface
    public interface RowReader<T> {
        T read(ResultSet row) throws SQLException;
    }
}
