package org.axlecause.casefile;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** One thing counted of a case, with the amount that goes with it. */
record Tally(Countable what, @Nullable BigDecimal amount) {

    static Tally of(Countable what) {
        return new Tally(what, null);
    }
}
