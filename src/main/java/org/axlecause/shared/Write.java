package org.axlecause.shared;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A statement that is sent with others. */
record Write(String sql, int rows, List<@Nullable Object> values) {

    /** Sends them in one message; the driver takes them apart at the semicolons and waits once for all answers. */
    static void send(Connection connection, List<Write> writes) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(text(writes))) {
            bind(connection, statement, writes);
            statement.execute();
            check(statement, writes);
        }
    }

    /** Sends them with queries behind them in one message, and reads the results of these. */
    static <T extends @Nullable Object> T ask(
            Connection connection, List<Write> writes, Write queries, QueryResults.Reader<T> reader)
            throws SQLException {
        List<Write> all = new ArrayList<>(writes);
        all.add(queries);
        try (PreparedStatement statement = connection.prepareStatement(text(all))) {
            bind(connection, statement, all);
            statement.execute();
            check(statement, writes);
            return reader.read(new QueryResults(statement));
        }
    }

    private static String text(List<Write> writes) {
        return writes.stream().map(Write::sql).collect(Collectors.joining(";\n"));
    }

    private static void bind(Connection connection, PreparedStatement statement, List<Write> writes)
            throws SQLException {
        int index = 0;
        for (Write write : writes) {
            for (Object value : write.values) {
                index++;
                if (value instanceof SqlArray array) {
                    statement.setArray(
                            index,
                            connection.createArrayOf(
                                    array.type(), array.elements().toArray()));
                } else {
                    statement.setObject(index, value);
                }
            }
        }
    }

    private static void check(PreparedStatement statement, List<Write> writes) throws SQLException {
        for (Write write : writes) {
            int changed = statement.getUpdateCount();
            if (write.rows != TenantTransaction.ANY_ROWS && changed != write.rows) {
                throw new IllegalStateException(
                        changed + " rows were changed instead of " + write.rows + " by: " + write.sql);
            }
            statement.getMoreResults();
        }
    }
}
