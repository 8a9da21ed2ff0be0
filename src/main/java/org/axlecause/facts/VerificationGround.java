package org.axlecause.facts;

/**
 * A ground that speaks about the outcome of the repair.
 *
 * @param sign what it says
 * @param place where
 * @param because ground
 */
public record VerificationGround(VerificationSign sign, Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return sign + " at " + place;
    }
}
