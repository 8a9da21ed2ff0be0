package org.axlecause.facts;

/**
 * A part that has to go for its own state or because it can't be kept.
 *
 * @param item the part
 * @param place where
 * @param because ground
 */
public record FailedPart(ScopeItem item, Place place, Because because) implements Conclusion {

    /** Whether it belongs to one wheel, so that the other wheel of the axle has its twin. */
    public boolean isAtWheel() {
        return place.isWheel();
    }

    @Override
    public String shown() {
        return String.join(", ", because.facts());
    }
}
