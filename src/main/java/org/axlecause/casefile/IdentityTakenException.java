package org.axlecause.casefile;

/** Another transaction has stored an event of the same identity in the meantime; look again in a new transaction. */
public final class IdentityTakenException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    IdentityTakenException() {
        super("An event of the same identity was stored by another transaction", null, false, false);
    }
}
