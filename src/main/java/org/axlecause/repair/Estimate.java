package org.axlecause.repair;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a line or the lines together cost by the site's price list.
 *
 * @param net amount without tax; null where no price is known
 * @param tax tax on it
 * @param gross amount with tax
 * @param hours hours of labour; null where none are known
 * @param missing prices and hours that the list lacks; amounts leave them out
 * @param withRecommended the same with the recommended lines; null on a line
 */
public record Estimate(
        @Nullable Amount net,
        @Nullable Amount tax,
        @Nullable Amount gross,
        @Nullable BigDecimal hours,
        List<String> missing,
        @Nullable Estimate withRecommended) {

    public Estimate {
        missing = List.copyOf(missing);
    }
}
