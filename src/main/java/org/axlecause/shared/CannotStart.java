package org.axlecause.shared;

import io.quarkus.runtime.PreventFurtherStepsException;

/** How the service refuses to start: one message for its operator, no stack trace, exit code 1. */
public final class CannotStart {

    private static final int EXIT_CODE = 1;

    private CannotStart() {}

    /** The message says what is wrong, which value, and what to do. */
    public static PreventFurtherStepsException because(String message) {
        return new PreventFurtherStepsException(message, EXIT_CODE);
    }
}
