package org.axlecause.shared;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/** Answers to questions that went to the database in one message, in the order of the questions. */
public final class Answers {

    private final PreparedStatement statement;
    private boolean begun;

    Answers(PreparedStatement statement) {
        this.statement = statement;
    }

    /** The rows that answer the next question; those of the one before are closed. */
    public ResultSet next() throws SQLException {
        if (begun) {
            statement.getMoreResults();
        }
        begun = true;
        return statement.getResultSet();
    }

    /** Makes something of answers. */
    @FunctionalInterface
    public interface Reader<T extends @Nullable Object> {
        T read(Answers answers) throws SQLException;
    }
}
