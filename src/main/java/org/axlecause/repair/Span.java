package org.axlecause.repair;

import java.math.BigDecimal;

/**
 * A usual range of hours; a judgement that rust and access may exceed, and no promise.
 *
 * @param from least hours
 * @param to most hours
 */
public record Span(BigDecimal from, BigDecimal to) {}
