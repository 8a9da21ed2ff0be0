package org.axlecause.facts;

/**
 * A shape of the loss in a test before the repair that a later test of the same axle and brake has taken the place of. It speaks
 * only about what changed between the two.
 *
 * @param shape the shape of the loss
 */
public record EarlierShape(ShapeOfLoss shape) implements Shown {

    /** Wheel or axle. */
    public Place place() {
        return shape.place();
    }

    @Override
    public String shown() {
        return shape.shown();
    }
}
