package org.axlecause.casefile;

import java.math.BigDecimal;
import org.axlecause.facts.Place;
import org.jspecify.annotations.Nullable;

/** One cause of a case, as a row that lists and statistics ask. */
public record CauseRow(
        String code, Place place, String standing, @Nullable BigDecimal probability, boolean root) {}
