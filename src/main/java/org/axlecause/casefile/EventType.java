package org.axlecause.casefile;

import java.util.Arrays;
import java.util.Optional;

/** The events that a case is made of. */
public enum EventType {
    VEHICLE_PRESENTED("vehicle.presented.v1"),
    ROLLER_TEST_RECORDED("roller-test.recorded.v1"),
    ROAD_TEST_RECORDED("road-test.recorded.v1"),
    FINDING_RECORDED("finding.recorded.v1"),
    OBSTACLE_MET("obstacle.met.v1"),
    SCOPE_DECIDED("scope.decided.v1"),
    WORK_REPORTED("work.reported.v1"),
    DEPARTURE_RECORDED("departure.recorded.v1"),
    POLICY_ADOPTED("policy.adopted.v1"),
    ENTRY_WITHDRAWN("entry.withdrawn.v1"),
    VEHICLE_HANDED_OVER("vehicle.handed-over.v1"),
    INSPECTION_RESULTED("inspection.resulted.v1"),
    CASE_CLOSED("case.closed.v1");

    private static final String PREFIX = "org.axlecause.";

    private final String name;

    EventType(String name) {
        this.name = name;
    }

    /** The name without the common prefix, which is also the name of its schema. */
    public String shortName() {
        return name;
    }

    /** The CloudEvents {@code type}. */
    @Override
    public String toString() {
        return PREFIX + name;
    }

    /** The type with that CloudEvents {@code type}. */
    public static Optional<EventType> named(String type) {
        return Arrays.stream(values())
                .filter(known -> known.toString().equals(type))
                .findFirst();
    }
}
