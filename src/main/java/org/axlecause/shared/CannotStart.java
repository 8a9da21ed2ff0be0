package org.axlecause.shared;

/** How the service refuses to start: one message for its operator, no stack trace, exit code 1. */
public final class CannotStart {

    private static final int EXIT_CODE = 1;

    private CannotStart() {}

    /** The message says what is wrong, which value, and what to do. */
    public static EndedAtStartException because(String message) {
        return new EndedAtStartException(message, EXIT_CODE);
    }
}
