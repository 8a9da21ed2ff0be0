package org.axlecause.statistics;

import java.util.Collection;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * Rates of a standard population by stratum, for indirect standardisation: what a site would have if each of its strata
 * did as that stratum does everywhere (Breslow and Day 1987, IARC Sci. Publ. 82, section 2.3).
 *
 * @param byStratum counts of the standard population, by the name of the stratum
 */
public record ReferenceRates(Map<String, Proportion> byStratum) {

    public ReferenceRates {
        byStratum = Collections.unmodifiableMap(new TreeMap<>(byStratum));
    }

    /**
     * Cases that are alike in what is allowed for, such as age, distance and layout.
     *
     * @param name of the stratum, the same in both populations
     * @param counts its events and cases
     */
    public record Stratum(String name, Proportion counts) {}

    /**
     * A population against the standard one.
     *
     * @param observed events in strata that the standard population has
     * @param expected events expected in them; 0 where none is
     * @param cases cases in them
     * @param withoutReference cases in strata that the standard population lacks, which count nowhere else
     */
    public record Standardised(long observed, double expected, long cases, long withoutReference) {}

    /** Rates of counts in any order; counts of the same stratum are added up. */
    public static ReferenceRates of(Collection<Stratum> standard) {
        Map<String, Proportion> byStratum = new TreeMap<>();
        standard.forEach(stratum -> byStratum.merge(stratum.name(), stratum.counts(), Proportion::plus));
        return new ReferenceRates(byStratum);
    }

    /** Events of a population beside those expected of it. */
    public Standardised standardise(Collection<Stratum> population) {
        long observed = 0;
        double expected = 0;
        long cases = 0;
        long withoutReference = 0;
        for (Stratum stratum : population) {
            Proportion reference = byStratum.getOrDefault(stratum.name(), new Proportion(0, 0));
            Proportion counts = stratum.counts();
            if (reference.of() == 0) {
                withoutReference += counts.of();
                continue;
            }
            observed += counts.count();
            expected += counts.of() * reference.share();
            cases += counts.of();
        }
        return new Standardised(observed, expected, cases, withoutReference);
    }
}
