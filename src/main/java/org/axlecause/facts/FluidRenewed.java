package org.axlecause.facts;

import java.math.BigDecimal;
import java.time.LocalDate;

/**
 * When all brake fluid was last renewed; only the second call of the rule base sees it.
 *
 * @param day when
 * @param years full years from then to the presentation
 */
public record FluidRenewed(LocalDate day, BigDecimal years) implements Shown {

    @Override
    public String shown() {
        return "brake fluid renewed on " + day;
    }
}
