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

    /** Whether it is a part that each wheel has and it was named for a whole axle. */
    public boolean isOnBothWheels() {
        return place.axle() != null
                && place.side() == null
                && switch (item) {
                    case WHEEL_CYLINDER,
                            CALLIPER,
                            SLIDE_PIN_KIT,
                            PARKING_CABLE,
                            ADJUSTER,
                            HUB_SEAL,
                            HUB_BEARING,
                            BLEED_NIPPLE,
                            BACK_PLATE,
                            PARKING_ACTUATOR -> true;
                    default -> false;
                };
    }

    /** How far work on it reaches. */
    public ScopeExtent extent() {
        return ScopeExtent.of(place);
    }

    @Override
    public String shown() {
        return String.join(", ", because.facts());
    }
}
