package org.axlecause.fleet;

import java.math.BigDecimal;

/**
 * How the tester records.
 *
 * @param samplePeriod seconds between samples
 * @param rollerSpeed speed of the rollers, metres per second
 * @param noiseShare standard deviation of the noise as a share of the reading
 * @param noiseForce standard deviation of the noise that is there without a force, newtons
 * @param seed seed of the noise
 */
public record Recording(BigDecimal samplePeriod, double rollerSpeed, double noiseShare, double noiseForce, long seed) {

    /** The same without noise. */
    public Recording quiet() {
        return new Recording(samplePeriod, rollerSpeed, 0, 0, seed);
    }

    /** The same with noise. */
    public Recording noisy(double share, double force, long newSeed) {
        return new Recording(samplePeriod, rollerSpeed, share, force, newSeed);
    }
}
