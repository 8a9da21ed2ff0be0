package org.axlecause.regimes;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.TrailerKind;
import org.axlecause.facts.Vehicle;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** Condition on the vehicle, and on the axle where a limit is about one; what is left out may be anything. */
record When(
        List<String> categories,
        Period firstUsed,
        Period firstRegistered,
        Period typeApproved,
        @Nullable Boolean antilock,
        List<CircuitSplit> circuits,
        @Nullable BigDecimal maximumMassOver,
        @Nullable BigDecimal maximumMassUpTo,
        @Nullable BigDecimal overUnladenBelow,
        @Nullable TestState state,
        List<TrailerKind> trailers,
        @Nullable Boolean steered,
        List<BrakeLayout> axleBrakes) {

    static final List<String> MEMBERS = List.of(
            "categories",
            "first-used-from",
            "first-used-before",
            "first-registered-from",
            "first-registered-before",
            "type-approved-from",
            "type-approved-before",
            "antilock",
            "circuit-split",
            "maximum-mass-over",
            "maximum-mass-up-to",
            "maximum-over-unladen-below",
            "test-state",
            "trailers",
            "steered",
            "axle-brakes");

    static When of(YamlNode node) {
        return new When(
                node.texts("categories"),
                Period.of(node, "first-used"),
                Period.of(node, "first-registered"),
                Period.of(node, "type-approved"),
                node.optionalFlag("antilock"),
                node.codes("circuit-split", CircuitSplit.class),
                node.optionalDecimal("maximum-mass-over"),
                node.optionalDecimal("maximum-mass-up-to"),
                node.optionalDecimal("maximum-over-unladen-below"),
                node.optionalCode("test-state", TestState.class),
                node.codes("trailers", TrailerKind.class),
                node.optionalFlag("steered"),
                node.codes("axle-brakes", BrakeLayout.class));
    }

    /** Whether it may hold for a car or a light van, the vehicles that causes and scope are given for. */
    boolean mayBeLight() {
        return categories.isEmpty() || categories.contains("M1") || categories.contains("N1");
    }

    /** Whether it holds; a day that is not known is taken from the nearest one that is. */
    Match matches(Vehicle vehicle, @Nullable Axle axle) {
        if (!categories.isEmpty() && !categories.contains(categoryOf(vehicle))) {
            return Match.NEVER;
        }
        if (steered != null && axle != null && axle.steered() != steered) {
            return Match.NEVER;
        }
        LocalDate used = firstOf(vehicle.firstUsed(), vehicle.firstRegistered());
        LocalDate registered = firstOf(vehicle.firstRegistered(), vehicle.firstUsed());
        Set<Datum> unknown = EnumSet.noneOf(Datum.class);
        boolean possible = firstUsed.admits(used, Datum.FIRST_USED, unknown)
                && firstRegistered.admits(registered, Datum.FIRST_REGISTERED, unknown)
                && typeApproved.admits(approvedBy(vehicle, registered), Datum.TYPE_APPROVED, unknown)
                && admits(antilock == null ? List.of() : List.of(antilock), vehicle.antilock(), Datum.ANTILOCK, unknown)
                && admits(circuits, vehicle.circuitSplit(), Datum.CIRCUIT_SPLIT, unknown)
                && admits(trailers, vehicle.trailer(), Datum.TRAILER, unknown)
                && admitsMass(vehicle.maximumMass(), unknown)
                && admitsShare(vehicle, unknown)
                && admits(state == null ? List.of() : List.of(state), TestState.of(vehicle), Datum.TEST_STATE, unknown)
                && (axle == null || admits(axleBrakes, axle.brake(), Datum.AXLE_BRAKES, unknown));
        return possible ? new Match(true, unknown) : Match.NEVER;
    }

    /** What was on the road before a day had been approved before it. */
    private @Nullable LocalDate approvedBy(Vehicle vehicle, @Nullable LocalDate registered) {
        if (vehicle.typeApproved() != null) {
            return vehicle.typeApproved();
        }
        LocalDate before = typeApproved.before();
        return registered != null && before != null && registered.isBefore(before) ? registered : null;
    }

    private boolean admitsMass(@Nullable BigDecimal mass, Set<Datum> unknown) {
        if (maximumMassOver == null && maximumMassUpTo == null) {
            return true;
        }
        if (mass == null) {
            unknown.add(Datum.MAXIMUM_MASS);
            return true;
        }
        return (maximumMassOver == null || mass.compareTo(maximumMassOver) > 0)
                && (maximumMassUpTo == null || mass.compareTo(maximumMassUpTo) <= 0);
    }

    private boolean admitsShare(Vehicle vehicle, Set<Datum> unknown) {
        if (overUnladenBelow == null) {
            return true;
        }
        BigDecimal maximum = vehicle.maximumMass();
        BigDecimal unladen = vehicle.unladenMass();
        if (maximum == null) {
            unknown.add(Datum.MAXIMUM_MASS);
            return true;
        }
        if (unladen == null) {
            unknown.add(Datum.UNLADEN_MASS);
            return true;
        }
        return maximum.compareTo(unladen.multiply(overUnladenBelow)) < 0;
    }

    private static <T> boolean admits(List<T> wanted, @Nullable T known, Datum datum, Set<Datum> unknown) {
        if (wanted.isEmpty()) {
            return true;
        }
        if (known == null) {
            unknown.add(datum);
            return true;
        }
        return wanted.contains(known);
    }

    private static @Nullable LocalDate firstOf(@Nullable LocalDate first, @Nullable LocalDate second) {
        return first != null ? first : second;
    }

    /** The category without the symbol G of off-road vehicles (UN consolidated resolution R.E.3). */
    private static String categoryOf(Vehicle vehicle) {
        String category = vehicle.category().toUpperCase(Locale.ROOT);
        String written = category.endsWith("G") ? category.substring(0, category.length() - 1) : category;
        return written.endsWith("E") && written.startsWith("L") ? written.substring(0, 2) + "e" : written;
    }
}
