package org.axlecause.regimes;

import java.math.BigDecimal;
import java.util.Locale;
import org.axlecause.facts.Vehicle;
import org.jspecify.annotations.Nullable;

/** Whether a vehicle was tested with its load: the state whose mass lies nearer to the mass of the test. */
enum TestState {
    LADEN,
    UNLADEN;

    private static final BigDecimal TWO = BigDecimal.valueOf(2);

    /** The state in which the vehicle was tested; null where a mass that would tell it is missing. */
    static @Nullable TestState of(Vehicle vehicle) {
        BigDecimal tested = vehicle.testMass();
        BigDecimal unladen = vehicle.unladenMass();
        BigDecimal maximum = vehicle.maximumMass();
        if (tested == null || unladen == null || maximum == null) {
            return null;
        }
        return tested.multiply(TWO).compareTo(unladen.add(maximum)) < 0 ? UNLADEN : LADEN;
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
