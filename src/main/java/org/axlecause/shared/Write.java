package org.axlecause.shared;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A statement that changes rows and waits to be sent with others. */
record Write(String sql, int rows, List<@Nullable Object> values) {

    /** Sends them in one message; the driver takes them apart at the semicolons and waits once for all answers. */
    static void send(Connection connection, List<Write> writes) throws SQLException {
        String sql = writes.stream().map(Write::sql).collect(Collectors.joining(";\n"));
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
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
            statement.execute();
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
}
