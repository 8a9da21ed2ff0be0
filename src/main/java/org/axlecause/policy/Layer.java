package org.axlecause.policy;

/** A layer of a policy, the most general first; each may set what no layer above has locked. */
public enum Layer {
    BASELINE,
    CHAIN,
    REGION,
    SITE;

    /** The code on the wire. */
    @Override
    public String toString() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
