package org.axlecause.facts;

/** Formula by which a regime compares the wheels of an axle; the same forces give other figures by each. */
public enum ImbalanceFormula {
    RELATIVE_TO_HIGHER("(higher - lower) / higher, highest force of each wheel"),
    RELATIVE_TO_HIGHER_UNLESS_LOCKED(
            "(higher - lower) / higher, highest force of each wheel, unless the lower wheel locked"),
    DIFFERENCE_PER_AXLE_MASS("difference of the highest forces / axle mass"),
    LARGEST_DIFFERENCE_OVER_HIGHER("largest difference while the force rises / higher of the two highest forces"),
    LARGEST_DIFFERENCE_OVER_AXLE_LOAD("largest difference while the force rises / axle load"),
    RELATIVE_AT_SLIP("(higher - lower) / higher, forces as the leading wheel begins to slip"),
    RELATIVE_TO_OTHER_WHEEL("(higher - lower) / higher, the other wheel taken as the higher one");

    private final String words;

    ImbalanceFormula(String words) {
        this.words = words;
    }

    /** The formula as it is shown beside a figure. */
    public String words() {
        return words;
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
