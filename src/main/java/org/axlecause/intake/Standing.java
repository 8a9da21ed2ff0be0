package org.axlecause.intake;

import java.util.Locale;

/** What became of an event that was sent. */
public enum Standing {
    /** Stored and judged. */
    ACCEPTED,
    /** Was stored before with the same content; nothing changed. */
    DUPLICATE,
    /** Wrong in itself; nothing stored. */
    REFUSED,
    /** The service failed; nothing stored, send it again. */
    FAILED;

    /** The code on the wire. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
