package org.axlecause.facts;

/** Where a scope line stands. */
public enum LineStanding {
    PROPOSED,
    AGREED,
    REFUSED,
    LATER,
    DONE,
    NO_LONGER_NEEDED,
    MERGED_INTO;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
