package org.axlecause.facts;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Type of an entry with its CloudEvents {@code type} and the record that holds its content. */
public enum EntryType {
    VEHICLE_PRESENTED("vehicle.presented.v1", VehiclePresented.class),
    ROLLER_TEST_RECORDED("roller-test.recorded.v1", RollerTestRecorded.class),
    ROAD_TEST_RECORDED("road-test.recorded.v1", RoadTestRecorded.class),
    FINDING_RECORDED("finding.recorded.v1", FindingRecorded.class),
    OBSTACLE_MET("obstacle.met.v1", ObstacleMet.class),
    SCOPE_DECIDED("scope.decided.v1", ScopeDecided.class),
    WORK_REPORTED("work.reported.v1", WorkReported.class),
    DEPARTURE_RECORDED("departure.recorded.v1", DepartureRecorded.class),
    POLICY_ADOPTED("policy.adopted.v1", PolicyAdopted.class),
    ENTRY_WITHDRAWN("entry.withdrawn.v1", EntryWithdrawn.class),
    VEHICLE_HANDED_OVER("vehicle.handed-over.v1", VehicleHandedOver.class),
    INSPECTION_RESULTED("inspection.resulted.v1", InspectionResulted.class),
    CASE_CLOSED("case.closed.v1", CaseClosed.class);

    private static final String PREFIX = "org.axlecause.";

    private final String name;
    private final Class<? extends Entry> content;

    EntryType(String name, Class<? extends Entry> content) {
        this.name = name;
        this.content = content;
    }

    /** The type of that CloudEvents {@code type}, or null where it is none of ours. */
    public static @Nullable EntryType of(String type) {
        return Arrays.stream(values())
                .filter(entryType -> entryType.toString().equals(type))
                .findFirst()
                .orElse(null);
    }

    /** The type of an entry. */
    public static EntryType of(Entry entry) {
        return Arrays.stream(values())
                .filter(entryType -> entryType.content.isInstance(entry))
                .findFirst()
                .orElseThrow();
    }

    /** Short name, such as {@code vehicle.presented.v1}; also the name of its schema. */
    public String shortName() {
        return name;
    }

    /** The CloudEvents {@code type}. */
    @Override
    public String toString() {
        return PREFIX + name;
    }
}
