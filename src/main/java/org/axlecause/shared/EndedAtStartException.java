package org.axlecause.shared;

import io.quarkus.runtime.PreventFurtherStepsException;

/**
 * Ends the process while it starts, with one message for its operator and no stack trace. It only wraps the container's
 * own exception, since that one is swallowed where it comes unwrapped, and the process would wait for ever.
 */
public final class EndedAtStartException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final int exitCode;

    EndedAtStartException(String message, int exitCode) {
        super(message, new PreventFurtherStepsException(message, exitCode));
        this.exitCode = exitCode;
    }

    int exitCode() {
        return exitCode;
    }
}
