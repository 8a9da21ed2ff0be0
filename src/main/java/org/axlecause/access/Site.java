package org.axlecause.access;

import java.time.ZoneId;
import org.axlecause.facts.SiteTerms;
import org.jspecify.annotations.Nullable;

/**
 * A site of a tenant.
 *
 * @param site its code
 * @param name its name
 * @param region the region whose policy layer it takes
 * @param zone time zone in which its days are counted
 * @param currency ISO 4217 code
 * @param regime code of the regime where a presentation names none
 * @param version grows with every change, from 1
 */
public record Site(
        String site, String name, @Nullable String region, ZoneId zone, String currency, String regime, int version) {

    /** What judging needs of it. */
    public SiteTerms terms() {
        return new SiteTerms(site, zone, currency, regime);
    }
}
