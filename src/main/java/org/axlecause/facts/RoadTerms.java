package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * How a regime reads a road test.
 *
 * @param decelerationCounts whether deceleration over gravity counts as efficiency
 * @param averagingBegins share of the initial speed at which the mean fully developed deceleration begins
 * @param averagingEnds share of the initial speed at which it ends
 * @param stoppingFrom speed from which its stopping distances hold, m/s; null where it has none
 * @param stoppingTolerance largest departure from that speed, as a ratio; null where it has none
 * @param buildUp seconds of full speed that a stopping distance allows for the build-up of the brakes; null where a
 *     deceleration can't be taken from a stopping distance
 * @param verified how well the reading of road tests is verified
 * @param buildUpVerified how well the time of build-up is verified
 */
public record RoadTerms(
        boolean decelerationCounts,
        BigDecimal averagingBegins,
        BigDecimal averagingEnds,
        @Nullable BigDecimal stoppingFrom,
        @Nullable BigDecimal stoppingTolerance,
        @Nullable BigDecimal buildUp,
        Verified verified,
        Verified buildUpVerified) {

    /** Whether a stop from that speed may be held against the regime's stopping distances. */
    public boolean admitsStopFrom(@Nullable BigDecimal speed) {
        return stoppingFrom != null
                && stoppingTolerance != null
                && speed != null
                && speed.subtract(stoppingFrom).abs().compareTo(stoppingFrom.multiply(stoppingTolerance)) <= 0;
    }
}
