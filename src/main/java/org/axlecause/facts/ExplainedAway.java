package org.axlecause.facts;

/**
 * Something certain accounts for what a cause would show, so that the cause falls to the background.
 *
 * @param code the cause
 * @param place where
 * @param because ground
 */
public record ExplainedAway(CauseCode code, Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return code + " explained away at " + place;
    }
}
