package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * A deficiency that neither work nor a later test has ended.
 *
 * @param code what is deficient
 * @param place where
 * @param severity class in the regime's scale; null where the inspector judges
 * @param ofPolicy whether it only breaks a limit that the policy sets beside the law
 * @param because ground
 */
public record DeficiencyInForce(
        DeficiencyCode code, Place place, @Nullable DeficiencyClass severity, boolean ofPolicy, Because because)
        implements Conclusion {

    @Override
    public String shown() {
        return String.join(", ", because.facts());
    }
}
