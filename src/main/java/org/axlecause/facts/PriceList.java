package org.axlecause.facts;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

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
 * @param alternatives other parts that may be taken for an item; none where the list has none
 */
public record PriceList(
        String site,
        int version,
        String currency,
        BigDecimal hourlyRate,
        BigDecimal taxRate,
        Map<ScopeItem, BigDecimal> parts,
        Map<String, BigDecimal> hours,
        @Nullable Map<ScopeItem, List<Offer>> alternatives) {

    public PriceList {
        parts = Map.copyOf(parts);
        hours = Map.copyOf(hours);
        alternatives = Map.copyOf(Objects.requireNonNullElse(alternatives, Map.of()));
    }

    /** A list with one part for each item. */
    public PriceList(
            String site,
            int version,
            String currency,
            BigDecimal hourlyRate,
            BigDecimal taxRate,
            Map<ScopeItem, BigDecimal> parts,
            Map<String, BigDecimal> hours) {
        this(site, version, currency, hourlyRate, taxRate, parts, hours, Map.of());
    }

    /** The other parts that may be taken for an item. */
    public List<Offer> alternativesTo(ScopeItem item) {
        return alternatives == null ? List.of() : alternatives.getOrDefault(item, List.of());
    }

    /**
     * Another part that may be taken for an item.
     *
     * @param name what it is called, unique for its item
     * @param price price of one unit net of tax
     * @param currency ISO 4217 code; null means the currency of the list
     */
    public record Offer(
            String name, BigDecimal price, @Nullable String currency) {}
}
