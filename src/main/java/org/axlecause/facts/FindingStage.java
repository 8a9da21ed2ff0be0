package org.axlecause.facts;

/** When a finding was made; what is found after the work proves the repair and never speaks about causes. */
public enum FindingStage {
    AS_FOUND,
    DURING_WORK,
    AFTER_WORK;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
