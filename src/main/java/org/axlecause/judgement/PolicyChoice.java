package org.axlecause.judgement;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PolicyAdopted;
import org.jspecify.annotations.Nullable;

/** Knows by which policy a case is judged: all layers of one version merged for its site. */
public interface PolicyChoice {

    /**
     * The policy for a case: the version that was adopted, where it is published; else the one in effect at the site on
     * the day, published by the moment of the presentation; else the baseline of the release.
     *
     * @param site code of the site; null while none is known
     * @param region region of the site
     * @param day day whose version counts
     * @param presented when the vehicle was presented; null where only the day counts
     * @param adopted what was adopted last; null where nothing was
     */
    Policy policyFor(
            @Nullable String site,
            @Nullable String region,
            LocalDate day,
            @Nullable OffsetDateTime presented,
            @Nullable PolicyAdopted adopted);
}
