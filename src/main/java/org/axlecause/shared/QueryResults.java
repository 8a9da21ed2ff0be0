package org.axlecause.shared;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/** What came back for queries that went to the database in one message, in the order of the queries. */
public final class QueryResults {

    private final PreparedStatement statement;
    private boolean begun;

    QueryResults(PreparedStatement statement) {
        this.statement = statement;
    }

    /** The rows of the next query; those of the one before are closed. */
    public ResultSet next() throws SQLException {
        if (begun) {
            statement.getMoreResults();
        }
        begun = true;
        return statement.getResultSet();
    }

    /** Makes something of the results. */
    @FunctionalInterface
    public interface Reader<T extends @Nullable Object> {
        T read(QueryResults results) throws SQLException;
    }
}
