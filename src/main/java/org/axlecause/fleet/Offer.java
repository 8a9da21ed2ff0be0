package org.axlecause.fleet;

import org.axlecause.facts.Agent;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Place;
import org.jspecify.annotations.Nullable;

/**
 * An answer that a check offers to the technician.
 *
 * @param rollerTest brake whose run is asked for; null where a finding is
 * @param component the part, null for a run
 * @param condition its state, null for a run
 * @param place where
 * @param agent liquid, or null
 * @param measure what is measured with it, or null
 */
public record Offer(
        @Nullable BrakeSystem rollerTest,
        @Nullable Component component,
        @Nullable Condition condition,
        Place place,
        @Nullable Agent agent,
        @Nullable MeasuredQuantity measure) {}
