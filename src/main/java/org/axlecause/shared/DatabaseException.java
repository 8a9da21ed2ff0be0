package org.axlecause.shared;

import java.sql.SQLException;
import java.util.Optional;

/** The database refused a statement or can't be reached: a fault, never the caller's mistake. */
public final class DatabaseException extends RuntimeException {

    private static final long serialVersionUID = 1L;
    private static final String UNIQUE_VIOLATION = "23505";
    private static final String LOCK_NOT_AVAILABLE = "55P03";
    private static final String CANCELLED = "57014";
    private static final String DEADLOCK = "40P01";

    private final String state;

    public DatabaseException(SQLException cause) {
        super(cause.getMessage(), cause);
        this.state = cause.getSQLState() == null ? "" : cause.getSQLState();
    }

    /**
     * The database's own fault behind this one, if it has one: entities and commits wrap what the driver says in exceptions of
     * their own.
     */
    public static Optional<DatabaseException> behind(Throwable fault) {
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof DatabaseException known) {
                return Optional.of(known);
            }
            if (cause instanceof SQLException told) {
                return Optional.of(new DatabaseException(told));
            }
        }
        return Optional.empty();
    }

    /** Whether somebody else has stored a row of the same key; told by the name of the key's constraint. */
    public boolean isDuplicateOf(String key) {
        return UNIQUE_VIOLATION.equals(state) && String.valueOf(getMessage()).contains('"' + key + '"');
    }

    /** Whether the database can't be reached, is full or kept us waiting too long, so that a later try may succeed. */
    public boolean isUnavailable() {
        return state.isEmpty()
                || state.startsWith("08")
                || state.startsWith("53")
                || state.startsWith("57P")
                || state.equals(LOCK_NOT_AVAILABLE)
                || state.equals(CANCELLED)
                || state.equals(DEADLOCK);
    }
}
