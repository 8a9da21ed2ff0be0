package org.axlecause.judgement;

import java.time.LocalDate;
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
 * @param priceList price list that holds for the case; null where the site has none
 * @param asOf day of the limits; null means the day of the presentation
 */
public record Matter(
        History history,
        SiteTerms site,
        Policy policy,
        @Nullable PriceList priceList,
        @Nullable LocalDate asOf) {}
