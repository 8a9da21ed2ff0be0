package org.axlecause.statistics;

/**
 * What happened after a time to those who were followed that long.
 *
 * @param time in whole days, or whatever unit all times of one curve have; not negative
 * @param events how many had the event at that time
 * @param censored how many were followed up to that time and no longer
 */
public record SurvivalTime(long time, long events, long censored) {

    public SurvivalTime {
        if (time < 0 || events < 0 || censored < 0) {
            throw new IllegalArgumentException(
                    "%d events and %d censored at %d: none of them may be negative".formatted(events, censored, time));
        }
    }

    SurvivalTime plus(SurvivalTime other) {
        return new SurvivalTime(time, Math.addExact(events, other.events), Math.addExact(censored, other.censored));
    }
}
