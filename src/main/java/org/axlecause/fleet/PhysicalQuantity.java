package org.axlecause.fleet;

import java.util.Locale;
import java.util.function.DoubleBinaryOperator;

/** What a fault changes in the physics of a wheel brake, and how two faults on one wheel add up. */
enum PhysicalQuantity {
    ACTUATOR_AREA_TIMES((one, other) -> one * other),
    CLEARANCE_TIME(Math::max),
    DRAG(Double::sum),
    FALL_TIME(Math::max),
    FRICTION(Math::min),
    FRICTION_TIMES((one, other) -> one * other),
    GRIP(Math::min),
    HELD_PRESSURE(Math::max),
    KNEE(Math::min),
    LEAK_TIME(Math::min),
    LINE_PRESSURE_TIMES((one, other) -> one * other),
    OUTER_SHARE(Math::min),
    PARKING_REST(Double::sum),
    PARKING_TIMES((one, other) -> one * other),
    PISTON_FRICTION(Math::max),
    PISTON_SHARE(Math::min),
    READING_TIMES((one, other) -> one * other),
    RISE_TIME(Math::max),
    ROLLING_TIMES((one, other) -> one * other),
    ROUGHNESS(Math::max),
    SLOPE(Math::min),
    SPRING_PRESSURE(Math::min),
    SWING_FIRST(Math::max),
    SWING_SECOND(Math::max),
    TRAVEL_LIMIT(Math::min);

    private final DoubleBinaryOperator together;

    PhysicalQuantity(DoubleBinaryOperator together) {
        this.together = together;
    }

    double together(double one, double other) {
        return together.applyAsDouble(one, other);
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
