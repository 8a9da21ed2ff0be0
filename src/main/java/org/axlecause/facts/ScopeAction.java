package org.axlecause.facts;

/** What is done to an item. */
public enum ScopeAction {
    RENEW,
    FABRICATE,
    CLEAN,
    FREE,
    ADJUST,
    BLEED,
    MEASURE,
    MACHINE,
    REBUILD;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
