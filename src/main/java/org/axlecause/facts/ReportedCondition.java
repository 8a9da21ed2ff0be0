package org.axlecause.facts;

/**
 * A circumstance that was reported with a test before the repair.
 *
 * @param condition what was reported
 * @param place axle tested
 * @param test identity of the test's entry
 * @param brake brake applied
 */
public record ReportedCondition(TestCondition condition, Place place, EntryId test, BrakeSystem brake)
        implements Shown {

    @Override
    public String shown() {
        return "reported with test " + test.id() + ": " + condition;
    }
}
