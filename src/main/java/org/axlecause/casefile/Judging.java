package org.axlecause.casefile;

import java.util.Locale;

/** How the last judging of a case went. */
public enum Judging {
    /** Not judged yet. */
    NONE,
    /** The document is the judgement of the whole history. */
    DONE,
    /** Judging faulted; the document is the last judgement that succeeded. */
    FAILED;

    static Judging of(String code) {
        return valueOf(code.toUpperCase(Locale.ROOT));
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
