package org.axlecause.facts;

import java.math.BigDecimal;

/**
 * How a regime reads a road test.
 *
 * @param decelerationCounts whether deceleration over gravity counts as efficiency
 * @param averagingBegins share of the initial speed at which the mean fully developed deceleration begins
 * @param averagingEnds share of the initial speed at which it ends
 */
public record RoadTerms(boolean decelerationCounts, BigDecimal averagingBegins, BigDecimal averagingEnds) {}
