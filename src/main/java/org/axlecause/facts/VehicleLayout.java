package org.axlecause.facts;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What scope and work need to know of the vehicle; only the second call of the rule base sees it.
 *
 * @param vehicle the vehicle
 * @param day day of the presentation
 */
public record VehicleLayout(Vehicle vehicle, LocalDate day) implements Shown {

    @Override
    public String shown() {
        return "vehicle of category " + vehicle.category();
    }

    /** Full years since first use, or null where that day is unknown. */
    public @Nullable BigDecimal ageInYears() {
        LocalDate from = vehicle.firstUsed() != null ? vehicle.firstUsed() : vehicle.firstRegistered();
        return from == null ? null : BigDecimal.valueOf(ChronoUnit.YEARS.between(from, day));
    }

    /** Axles of the vehicle. */
    public List<Axle> axles() {
        return vehicle.axles();
    }
}
