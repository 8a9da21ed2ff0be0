package org.axlecause.statistics;

import java.util.Optional;

/**
 * One time of a survival curve.
 *
 * @param time as in the counts the curve is made of
 * @param atRisk those followed up to that time without an event, the censored of that time among them
 * @param events events at that time
 * @param censored followed no longer than that
 * @param survival estimated share without an event just after that time
 * @param standardError of the survival, after Greenwood 1926; 0 where none is left
 * @param hazardVariance Greenwood's sum of d / (n (n - d)) up to that time; infinite where none is left
 */
public record SurvivalStep(
        long time,
        long atRisk,
        long events,
        long censored,
        double survival,
        double standardError,
        double hazardVariance) {

    /**
     * Interval of the survival by the log-log transform, which keeps it between 0 and 1 (Kalbfleisch and Prentice 1980);
     * none where nobody is left.
     */
    public Optional<Interval> logLog(ConfidenceLevel level) {
        if (survival <= 0) {
            return Optional.empty();
        }
        if (survival >= 1) {
            return Optional.of(new Interval(1, 1));
        }
        double log = Math.log(survival);
        double factor = Math.exp(level.standardErrors() * Math.sqrt(hazardVariance) / -log);
        return Optional.of(new Interval(Math.exp(log * factor), Math.exp(log / factor)));
    }
}
