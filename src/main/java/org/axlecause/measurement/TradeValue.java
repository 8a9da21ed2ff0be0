package org.axlecause.measurement;

import org.axlecause.facts.Verified;

/**
 * A value of the trade that the making of figures reads.
 *
 * @param value the value in SI units or as a ratio
 * @param verified how well it is verified
 * @param source document and section, or whose habit it is
 */
public record TradeValue(double value, Verified verified, String source) {}
