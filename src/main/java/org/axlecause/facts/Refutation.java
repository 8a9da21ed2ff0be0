package org.axlecause.facts;

/**
 * A finding or another certainty rules a cause out.
 *
 * @param code the cause
 * @param place where
 * @param because ground
 */
public record Refutation(CauseCode code, Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return code + " ruled out at " + place;
    }
}
