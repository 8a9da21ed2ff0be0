package org.axlecause.measurement;

import java.math.BigDecimal;
import java.math.MathContext;
import org.jspecify.annotations.Nullable;

/** A stop from a speed: some time at full speed while the brakes build up, then an even deceleration. */
public final class StoppingDistance {

    private static final BigDecimal TWO = BigDecimal.valueOf(2);

    private StoppingDistance() {}

    /** Distance in metres of a stop from a speed in m/s with a deceleration in m/s2. */
    public static BigDecimal of(BigDecimal speed, BigDecimal buildUp, BigDecimal deceleration) {
        return speed.multiply(buildUp)
                .add(speed.multiply(speed).divide(TWO.multiply(deceleration), MathContext.DECIMAL128));
    }

    /** Deceleration behind a stop; null where the distance is no longer than the build-up alone. */
    public static @Nullable BigDecimal deceleration(BigDecimal speed, BigDecimal buildUp, BigDecimal distance) {
        BigDecimal braked = distance.subtract(speed.multiply(buildUp));
        return braked.signum() <= 0 ? null : speed.multiply(speed).divide(TWO.multiply(braked), MathContext.DECIMAL128);
    }
}
