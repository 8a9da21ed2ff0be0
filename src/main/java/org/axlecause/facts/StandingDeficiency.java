package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * A deficiency that the latest test or finding still shows; only the second call of the rule base sees it.
 *
 * @param code what is deficient
 * @param place where
 * @param severity class in the regime's scale; null where the inspector judges
 * @param says the deficiency in words, with its value
 */
public record StandingDeficiency(
        DeficiencyCode code, Place place, @Nullable DeficiencyClass severity, String says) implements Shown {

    @Override
    public String shown() {
        return says;
    }
}
