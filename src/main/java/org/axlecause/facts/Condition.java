package org.axlecause.facts;

/** State in which a part is found; sound is a finding, not accessible is no evidence. */
public enum Condition {
    SOUND,
    NOT_ACCESSIBLE,
    DAMP,
    LEAKING,
    SEIZED,
    TIGHT,
    WORN,
    SOAKED,
    CONTAMINATED,
    GLAZED,
    CRACKED,
    DETACHED,
    OVAL,
    ECCENTRIC,
    OVERSIZE,
    UNDERSIZE,
    SCORED,
    CORRODED,
    PITTED,
    BROKEN,
    MISSING,
    STRETCHED,
    FRAYED,
    SPLIT,
    LOOSE,
    MISFITTED,
    WRONG_PART,
    BLOCKED,
    RESTRICTED,
    BULGING,
    TURNS_WITH_PIPE,
    ROUNDED,
    SHEARED,
    STRIPPED,
    LOW,
    OFF_STOP,
    NOT_TAKEN_UP,
    OVER_ADJUSTED,
    LONG_TRAVEL,
    SPONGY,
    SINKING,
    HARD,
    PULSATING,
    LIT,
    NOT_VISIBLE,
    WEAK,
    DIRTY,
    NOT_RETURNING,
    HEAT_MARKED,
    PART_CONTACT;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
