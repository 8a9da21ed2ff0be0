package org.axlecause.facts;

import java.math.BigDecimal;

/**
 * The force that the model's data or the vehicle's last test lead to expect of a wheel in one test.
 *
 * @param place the wheel
 * @param test identity of the test's entry
 * @param stage when the test was driven
 * @param brake brake applied
 * @param force the force, newtons
 */
public record ExpectedForce(Place place, EntryId test, Stage stage, BrakeSystem brake, BigDecimal force)
        implements Shown {

    /** Whether it is about the wheel of that figure, in the same test. */
    public boolean isFor(Figure figure) {
        return test.equals(figure.test()) && place.equals(figure.place());
    }

    /** Whether the figure is more than the expected force by at least that share of it. */
    public boolean exceededBy(BigDecimal share, Figure figure) {
        BigDecimal value = figure.value();
        return value != null && value.compareTo(force.add(force.multiply(share))) >= 0;
    }

    /** Whether the figure falls short of the expected force by at least that share of it. */
    public boolean missedBy(BigDecimal share, Figure figure) {
        BigDecimal value = figure.value();
        return value != null && value.compareTo(force.subtract(force.multiply(share))) <= 0;
    }

    /** Whether the figure is below that share of the expected force. */
    public boolean lessThanShareIs(BigDecimal share, Figure figure) {
        BigDecimal value = figure.value();
        return value != null && value.compareTo(force.multiply(share)) < 0;
    }

    @Override
    public String shown() {
        return "expected force " + place + " = " + force.stripTrailingZeros().toPlainString() + " N (test " + test.id()
                + ")";
    }
}
