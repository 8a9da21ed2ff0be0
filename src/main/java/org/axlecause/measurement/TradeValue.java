package org.axlecause.measurement;

import java.math.BigDecimal;
import org.axlecause.facts.Verified;

/**
 * A value of the trade with where it comes from.
 *
 * @param code what it is for
 * @param value the value in SI units or as a ratio
 * @param verified how well it is verified
 * @param source document and section, or whose habit it is
 */
public record TradeValue(TradeValueCode code, BigDecimal value, Verified verified, String source) {}
