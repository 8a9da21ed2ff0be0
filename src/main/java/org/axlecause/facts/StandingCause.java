package org.axlecause.facts;

/**
 * A confirmed cause that still has required work open.
 *
 * @param code the cause
 * @param place where
 * @param root whether it is the most upstream cause of its chain
 * @param because ground
 */
public record StandingCause(CauseCode code, Place place, boolean root, Because because) implements Conclusion {

    /** Whether both are root causes on one axle, in a fixed order, so that a pair is met once. */
    public boolean followsOnAxle(StandingCause first) {
        return root
                && first.root
                && place.sameAxle(first.place)
                && (code + " " + place).compareTo(first.code + " " + first.place) > 0;
    }

    @Override
    public String shown() {
        return code + " at " + place;
    }
}
