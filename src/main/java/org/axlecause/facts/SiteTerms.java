package org.axlecause.facts;

import java.time.ZoneId;

/**
 * What judging needs to know of a site.
 *
 * @param site code of the site
 * @param zone time zone in which its days are counted
 * @param currency ISO 4217 code
 * @param regime code of the regime where the presentation names none
 */
public record SiteTerms(String site, ZoneId zone, String currency, String regime) {}
