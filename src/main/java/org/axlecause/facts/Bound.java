package org.axlecause.facts;

import java.math.BigDecimal;

/** On which side of its value a limit refuses, and whether the value itself still conforms. */
public enum Bound {
    /** The value and what lies below conforms. */
    MAXIMUM,
    /** The value and what lies above conforms. */
    MINIMUM,
    /** Only what lies below the value conforms. */
    BELOW,
    /** Only what lies above the value conforms. */
    ABOVE;

    /** Whether a value is refused by that limit; decimals are compared exactly. */
    public boolean refuses(BigDecimal value, BigDecimal limit) {
        int side = value.compareTo(limit);
        return switch (this) {
            case MAXIMUM -> side > 0;
            case MINIMUM -> side < 0;
            case BELOW -> side >= 0;
            case ABOVE -> side <= 0;
        };
    }

    /** Whether greater values conform and smaller ones don't. */
    public boolean isLower() {
        return this == MINIMUM || this == ABOVE;
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
