package org.axlecause.facts;

import java.math.BigDecimal;
import java.util.Map;

/**
 * Prices of a site; amounts net of tax in the site's currency.
 *
 * @param site code of the site
 * @param version version of the list
 * @param currency ISO 4217 code
 * @param hourlyRate price of one hour of labour
 * @param taxRate tax as a ratio
 * @param parts price by item, for one unit of the item
 * @param hours hours of labour by operation, action and item joined by a blank
 */
public record PriceList(
        String site,
        int version,
        String currency,
        BigDecimal hourlyRate,
        BigDecimal taxRate,
        Map<ScopeItem, BigDecimal> parts,
        Map<String, BigDecimal> hours) {

    public PriceList {
        parts = Map.copyOf(parts);
        hours = Map.copyOf(hours);
    }
}
