package org.axlecause.facts;

/**
 * A finding proves a cause.
 *
 * @param code the cause
 * @param place where
 * @param because ground
 */
public record Proof(CauseCode code, Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return code + " proved at " + place;
    }
}
