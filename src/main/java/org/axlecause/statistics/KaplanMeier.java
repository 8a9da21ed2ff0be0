package org.axlecause.statistics;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.OptionalLong;
import java.util.TreeMap;

/**
 * Share that stays without an event over time, where some are followed for a shorter time than others (Kaplan and Meier
 * 1958, J. Am. Stat. Assoc. 53:457). Those censored at a time still count as at risk at that time.
 *
 * @param steps one per time at which something happened, in order of time
 */
public record KaplanMeier(List<SurvivalStep> steps) {

    /** A survival this near to one half is one half but for rounding. */
    private static final double ROUNDING = 1e-12;

    public KaplanMeier {
        steps = List.copyOf(steps);
    }

    /** The curve of counts in any order; counts of the same time are added up. */
    public static KaplanMeier of(Collection<SurvivalTime> counts) {
        TreeMap<Long, SurvivalTime> byTime = new TreeMap<>();
        counts.forEach(count -> byTime.merge(count.time(), count, SurvivalTime::plus));
        long atRisk = byTime.values().stream()
                .mapToLong(count -> Math.addExact(count.events(), count.censored()))
                .reduce(0, Math::addExact);
        List<SurvivalStep> steps = new ArrayList<>();
        double survival = 1;
        double variance = 0;
        for (SurvivalTime count : byTime.values()) {
            long events = count.events();
            if (events > 0) {
                survival *= (double) (atRisk - events) / atRisk;
                variance += (double) events / atRisk / (atRisk - events);
            }
            steps.add(new SurvivalStep(
                    count.time(),
                    atRisk,
                    events,
                    count.censored(),
                    survival,
                    survival == 0 ? 0 : survival * Math.sqrt(variance),
                    variance));
            atRisk -= events + count.censored();
        }
        return new KaplanMeier(steps);
    }

    /** All that were followed. */
    public long number() {
        return steps.isEmpty() ? 0 : steps.get(0).atRisk();
    }

    public long events() {
        return steps.stream().mapToLong(SurvivalStep::events).sum();
    }

    /** Time that all were followed, added up, in the unit of the times. */
    public long timeAtRisk() {
        return steps.stream()
                .mapToLong(step -> Math.multiplyExact(step.time(), step.events() + step.censored()))
                .reduce(0, Math::addExact);
    }

    /** Share without an event just after a time; of the last step where nobody was followed that long. */
    public double survivalAt(long time) {
        double survival = 1;
        for (SurvivalStep step : steps) {
            if (step.time() > time) {
                break;
            }
            survival = step.survival();
        }
        return survival;
    }

    /** How many are still followed, without an event, just before a time. */
    public long atRiskAt(long time) {
        return steps.stream()
                .filter(step -> step.time() >= time)
                .findFirst()
                .map(SurvivalStep::atRisk)
                .orElse(0L);
    }

    /** First time at which no more than half are without an event; none where more than half stay so. */
    public OptionalLong median() {
        return steps.stream()
                .filter(step -> step.survival() <= 0.5 + ROUNDING)
                .mapToLong(SurvivalStep::time)
                .findFirst();
    }
}
