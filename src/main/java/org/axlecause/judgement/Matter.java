package org.axlecause.judgement;

import java.time.LocalDate;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.facts.History;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.SiteTerms;
import org.jspecify.annotations.Nullable;

/**
 * Everything that a judgement is made of.
 *
 * @param history the case's whole history
 * @param site terms of the site it was presented at
 * @param policy policy in effect
 * @param weights by what weights causes are weighed
 * @param priceList price list that holds for the case; null where the site has none
 * @param asOf day of the limits; null means the day of the presentation
 */
public record Matter(
        History history,
        SiteTerms site,
        Policy policy,
        CauseWeights weights,
        @Nullable PriceList priceList,
        @Nullable LocalDate asOf) {

    /** The same by another policy. */
    public Matter by(Policy other) {
        return new Matter(history, site, other, weights, priceList, asOf);
    }

    /** The same with other entries. */
    public Matter of(History other) {
        return new Matter(other, site, policy, weights, priceList, asOf);
    }

    /** The same with the causes weighed by other weights. */
    public Matter weighedBy(CauseWeights others) {
        return new Matter(history, site, policy, others, priceList, asOf);
    }
}
