package org.axlecause.facts;

/**
 * How far the vehicle left the straight line on a road test.
 *
 * @param test identity of the test's entry
 * @param stage when the test was driven
 * @param brake brake applied
 * @param deviation how far
 */
public record RoadDeviation(EntryId test, Stage stage, BrakeSystem brake, Deviation deviation) implements Shown {

    @Override
    public String shown() {
        return deviation + " deviation from the straight line (" + stage + " test " + test.id() + ", " + brake
                + " brake)";
    }
}
