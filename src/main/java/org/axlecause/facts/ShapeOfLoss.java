package org.axlecause.facts;

/**
 * A shape of the loss that fits an axle's readings.
 *
 * @param shape the shape
 * @param place wheel that reads low or swings
 * @param test identity of the test's entry
 * @param says the evidence in words
 */
public record ShapeOfLoss(LossShape shape, Place place, EntryId test, String says) implements Shown {

    @Override
    public String shown() {
        return shape + " loss at " + place + ": " + says;
    }
}
