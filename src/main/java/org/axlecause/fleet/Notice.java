package org.axlecause.fleet;

import java.math.BigDecimal;
import java.util.List;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.WheelReading;
import org.jspecify.annotations.Nullable;

/** Whether anyone would bring an invented vehicle to a workshop: its driver, or the one who reads the roller tester. */
final class Notice {

    private final VehicleTable table;

    Notice(VehicleTable table) {
        this.table = table;
    }

    /** Whether the driver complains or a run shows what makes an inspector stop, as far as this lane's tester shows it. */
    boolean taken(VehicleState state, Lane lane, List<ComplaintCode> complaints, List<RollerTestRecorded> tests) {
        if (!complaints.isEmpty()) {
            return true;
        }
        if (lane.trace()) {
            return new WheelReach(state, table).outOfTheOrdinary();
        }
        return new WheelReach(state, table).most(PhysicalQuantity.DRAG) >= limit("drag")
                || tests.stream().anyMatch(test -> outOfTheOrdinary(test, state));
    }

    private boolean outOfTheOrdinary(RollerTestRecorded test, VehicleState state) {
        boolean parking = test.brake() == BrakeSystem.PARKING;
        double sum = 0;
        for (AxleReading axle : test.axles()) {
            double left = peak(axle.left());
            double right = peak(axle.right());
            double high = Math.max(left, right);
            double imbalance = high <= 0 ? 0 : 1 - Math.min(left, right) / high;
            if (imbalance >= limit(parking ? "parking" : "imbalance") || swings(axle.left()) || swings(axle.right())) {
                return true;
            }
            sum += left + right;
        }
        return sum / state.weight() < limit(parking ? "parking-efficiency" : "efficiency");
    }

    private static double peak(@Nullable WheelReading reading) {
        BigDecimal peak = reading == null ? null : reading.peak();
        return peak == null ? 0 : peak.doubleValue();
    }

    private boolean swings(@Nullable WheelReading reading) {
        BigDecimal fluctuation = reading == null ? null : reading.fluctuation();
        return fluctuation != null && fluctuation.doubleValue() >= limit("fluctuation");
    }

    private double limit(String name) {
        return table.value("ordinary." + name);
    }
}
