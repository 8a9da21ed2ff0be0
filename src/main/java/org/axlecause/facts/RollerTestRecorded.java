package org.axlecause.facts;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A roller test as recorded.
 *
 * @param stage when it was driven
 * @param brake brake applied
 * @param axles readings by axle
 * @param tester the tester's data
 * @param surface state of rollers and tyres
 * @param pedalForce force at the pedal or lever, newtons
 * @param conditions what may make the test doubtful
 */
public record RollerTestRecorded(
        Stage stage,
        BrakeSystem brake,
        List<AxleReading> axles,
        @Nullable Tester tester,
        @Nullable Surface surface,
        @Nullable BigDecimal pedalForce,
        List<TestCondition> conditions)
        implements Entry {

    public RollerTestRecorded {
        axles = List.copyOf(axles);
        conditions = List.copyOf(conditions);
    }
}
