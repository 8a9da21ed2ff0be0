package org.axlecause.intake;

/** Judging, not storing, went wrong: the events may stay, without a new judgement. */
final class JudgingFaultException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    JudgingFaultException(RuntimeException cause) {
        super("judging faulted", cause);
    }
}
