package org.axlecause.repair;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a line or the lines together cost by the site's price list. Nothing is converted: net, tax and gross are in the
 * currency of the list, and what costs another currency stands beside them.
 *
 * @param net amount without tax; null where no price is known
 * @param tax tax on it
 * @param gross amount with tax
 * @param hours hours of labour; null where none are known
 * @param missing prices and hours that the list lacks; amounts leave them out
 * @param otherCurrencies what costs other currencies, by their codes; null where nothing does
 * @param alternative name of the part that was chosen instead of the usual one; null on totals
 * @param alternatives what the line costs with other parts; null where there are none, and on totals
 * @param priceList version of the price list; null on a line
 * @param withRecommended the same with the recommended lines; null on a line
 */
public record Estimate(
        @Nullable Amount net,
        @Nullable Amount tax,
        @Nullable Amount gross,
        @Nullable BigDecimal hours,
        List<String> missing,
        @Nullable List<Price> otherCurrencies,
        @Nullable String alternative,
        @Nullable List<Alternative> alternatives,
        @Nullable Integer priceList,
        @Nullable Estimate withRecommended) {

    public Estimate {
        missing = List.copyOf(missing);
        otherCurrencies = otherCurrencies == null ? null : List.copyOf(otherCurrencies);
        alternatives = alternatives == null ? null : List.copyOf(alternatives);
    }

    /** Amounts in each currency, the one of the price list first. */
    List<Price> prices() {
        List<Price> others = otherCurrencies == null ? List.of() : otherCurrencies;
        if (net == null || tax == null || gross == null) {
            return others;
        }
        return Stream.concat(Stream.of(new Price(net, tax, gross)), others.stream())
                .toList();
    }
}
