package org.axlecause.fleet;

import org.axlecause.facts.Axle;

/** How far the wheels of an invented vehicle are from sound ones, without scatter and noise. */
final class WheelReach {

    private static final double TRIAL_PRESSURE = 30 * WheelState.BAR;

    private final VehicleState state;
    private final VehicleTable table;

    WheelReach(VehicleState state, VehicleTable table) {
        this.state = state;
        this.table = table;
    }

    /** Whether force over time would show anything that makes an inspector stop. */
    boolean outOfTheOrdinary() {
        for (Axle axle : state.vehicle().axles()) {
            if (imbalance(axle) >= limit("imbalance")
                    || Math.min(share(state.left(axle)), share(state.right(axle))) <= limit("weak")) {
                return true;
            }
        }
        return most(PhysicalQuantity.DRAG) >= limit("drag")
                || most(PhysicalQuantity.SWING_FIRST) >= limit("swing")
                || most(PhysicalQuantity.SWING_SECOND) >= limit("swing")
                || most(PhysicalQuantity.ROUGHNESS) >= limit("roughness")
                || most(PhysicalQuantity.CLEARANCE_TIME) >= limit("seconds")
                || most(PhysicalQuantity.RISE_TIME) >= limit("seconds")
                || most(PhysicalQuantity.FALL_TIME) >= limit("seconds")
                || most(PhysicalQuantity.HELD_PRESSURE) >= limit("held")
                || most(PhysicalQuantity.PISTON_FRICTION) >= limit("piston-friction")
                || most(PhysicalQuantity.PARKING_REST) > 0
                || least(PhysicalQuantity.LEAK_TIME) <= limit("leak-time")
                || parkingImbalance() >= limit("parking")
                || parkingShare() <= 1 - limit("parking");
    }

    double most(PhysicalQuantity quantity) {
        return state.wheels().stream()
                .mapToDouble(wheel -> wheel.value(quantity, 0, true))
                .max()
                .orElse(0);
    }

    private double least(PhysicalQuantity quantity) {
        return state.wheels().stream()
                .mapToDouble(wheel -> wheel.value(quantity, Double.POSITIVE_INFINITY, true))
                .min()
                .orElse(0);
    }

    double imbalance(Axle axle) {
        double left = share(state.left(axle));
        double right = share(state.right(axle));
        double high = Math.max(left, right);
        return high <= 0 ? 0 : 1 - Math.min(left, right) / high;
    }

    /** Force at a middling pressure as a share of that of the sound wheel. */
    private double share(WheelState wheel) {
        double line = TRIAL_PRESSURE * wheel.value(PhysicalQuantity.LINE_PRESSURE_TIMES, 1, true);
        double behind = new Proportioning(wheel.knee(true), wheel.slope(true)).behind(line);
        double sound = wheel.sound().steadyForce(TRIAL_PRESSURE);
        return wheel.brake(true, 1).steadyForce(behind) * wheel.value(PhysicalQuantity.READING_TIMES, 1, true) / sound;
    }

    double parkingShare() {
        double now = 0;
        double sound = 0;
        for (Axle axle : TestLane.parkingAxles(state)) {
            for (WheelState wheel : new WheelState[] {state.left(axle), state.right(axle)}) {
                now += wheel.parkingForce(wheel.brake(true, 1));
                sound += wheel.soundParkingForce();
            }
        }
        return sound <= 0 ? 1 : now / sound;
    }

    private double parkingImbalance() {
        double most = 0;
        for (Axle axle : TestLane.parkingAxles(state)) {
            double left = state.left(axle).parkingForce(state.left(axle).brake(true, 1));
            double right = state.right(axle).parkingForce(state.right(axle).brake(true, 1));
            double high = Math.max(left, right);
            most = Math.max(most, high <= 0 ? 0 : 1 - Math.min(left, right) / high);
        }
        return most;
    }

    private double limit(String name) {
        return table.value("ordinary." + name);
    }
}
