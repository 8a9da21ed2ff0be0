package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/** Clause that a policy may set. */
public enum ClauseCode {
    TWIN_HYDRAULIC_PART,
    HARDWARE_KIT_WITH_SHOES,
    CONTAMINATED_DRUM,
    FLUID_RENEWAL,
    LINING_RENEWAL_THICKNESS,
    PAD_RENEWAL_THICKNESS,
    TWIN_PARKING_CABLE,
    TWIN_BRAKE_PIPE,
    TWIN_CALLIPER,
    TWIN_CALLIPER_AGE,
    TWIN_FLEXIBLE_HOSE,
    TWIN_ADJUSTER,
    HARDWARE_KIT_AGE,
    HARDWARE_KIT_DISTANCE,
    FLUID_WATER_CONTENT,
    FLUID_WATER_CONTENT_URGENT,
    FLUID_BOILING_POINT,
    DRUM_OVALITY,
    DRUM_ECCENTRICITY,
    DISC_THICKNESS_VARIATION,
    DISC_RUN_OUT,
    HUB_PLAY,
    IMBALANCE_TARGET_NOT_BEDDED,
    RETEST_NOISE,
    OLD_FRICTION_MATERIAL_YEAR,
    LINING_HALF_LIFE_THICKNESS,
    FRICTION_DANGER_THICKNESS,
    EFFICIENCY_DANGER_SHARE,
    SLIGHT_UNEVENNESS,
    TWIN_HYDRAULIC_REQUIRED_AGE,
    PIPE_EXTENT,
    FLUID_AGE,
    WORKSHOP_LIMIT,
    NEEDED_MEASUREMENT,
    NEEDED_PHOTO,
    CONSENT,
    LABOUR_CAP;

    /** Whether a site may depart from it on a line; what decides proof, advice and cautions, or only a bound, it may not. */
    public boolean isOfLines() {
        return switch (this) {
            case TWIN_HYDRAULIC_PART,
                    TWIN_HYDRAULIC_REQUIRED_AGE,
                    TWIN_CALLIPER,
                    TWIN_FLEXIBLE_HOSE,
                    TWIN_PARKING_CABLE,
                    TWIN_BRAKE_PIPE,
                    TWIN_ADJUSTER,
                    HARDWARE_KIT_WITH_SHOES,
                    CONTAMINATED_DRUM,
                    FLUID_RENEWAL,
                    LINING_RENEWAL_THICKNESS,
                    LINING_HALF_LIFE_THICKNESS,
                    PAD_RENEWAL_THICKNESS,
                    DRUM_OVALITY,
                    DRUM_ECCENTRICITY,
                    DISC_THICKNESS_VARIATION,
                    DISC_RUN_OUT,
                    HUB_PLAY,
                    PIPE_EXTENT,
                    NEEDED_MEASUREMENT,
                    NEEDED_PHOTO,
                    CONSENT,
                    LABOUR_CAP -> true;
            default -> false;
        };
    }

    /** The quantity that the value of the clause bounds; null where it bounds none that a finding carries. */
    public @Nullable MeasuredQuantity quantity() {
        return switch (this) {
            case LINING_RENEWAL_THICKNESS, LINING_HALF_LIFE_THICKNESS -> MeasuredQuantity.LINING_THICKNESS;
            case PAD_RENEWAL_THICKNESS -> MeasuredQuantity.PAD_THICKNESS;
            case FLUID_WATER_CONTENT, FLUID_WATER_CONTENT_URGENT -> MeasuredQuantity.FLUID_WATER_CONTENT;
            case FLUID_BOILING_POINT -> MeasuredQuantity.FLUID_BOILING_POINT;
            case DRUM_OVALITY -> MeasuredQuantity.DRUM_OVALITY;
            case DRUM_ECCENTRICITY -> MeasuredQuantity.DRUM_ECCENTRICITY;
            case DISC_THICKNESS_VARIATION -> MeasuredQuantity.DISC_THICKNESS_VARIATION;
            case DISC_RUN_OUT -> MeasuredQuantity.DISC_RUN_OUT;
            case HUB_PLAY -> MeasuredQuantity.HUB_PLAY;
            default -> null;
        };
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return Codes.kebab(this);
    }
}
