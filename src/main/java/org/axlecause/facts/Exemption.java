package org.axlecause.facts;

/**
 * A figure that the regime does not hold against the vehicle in this test.
 *
 * @param kind figure concerned
 * @param test identity of the test's entry
 * @param stage when the test was driven
 * @param brake brake applied
 * @param place axle or vehicle
 * @param says why, in words
 */
public record Exemption(FigureKind kind, EntryId test, Stage stage, BrakeSystem brake, Place place, String says)
        implements Shown {

    @Override
    public String shown() {
        return kind + " " + place + ": " + says;
    }

    /** Whether it is about that figure. */
    public boolean isOf(Figure figure) {
        return kind == figure.kind()
                && test.equals(figure.test())
                && brake == figure.brake()
                && place.equals(figure.place());
    }
}
