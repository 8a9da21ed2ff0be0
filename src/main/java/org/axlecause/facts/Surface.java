package org.axlecause.facts;

/** State of rollers and tyres during a test. */
public enum Surface {
    DRY,
    WET;

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
