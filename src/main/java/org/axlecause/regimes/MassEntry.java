package org.axlecause.regimes;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.MassBasis;
import org.axlecause.facts.MassTerm;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** One mass of a regime as written: which vehicles it is for and how it is made. */
record MassEntry(
        When when,
        MassBasis basis,
        String name,
        @Nullable BigDecimal add,
        @Nullable BigDecimal perSeat,
        Verified verified,
        String source) {

    static MassEntry of(YamlNode node) {
        List<String> known = new ArrayList<>(When.MEMBERS);
        known.addAll(List.of("basis", "name", "add-kilograms", "per-seat-kilograms", "verified", "source"));
        node.only(known.toArray(String[]::new));
        MassBasis basis = node.code("basis", MassBasis.class);
        BigDecimal perSeat = node.optionalDecimal("per-seat-kilograms");
        if ((basis == MassBasis.UNLADEN_MASS_AND_SEATS) == (perSeat == null)) {
            throw node.wrong(
                    "'per-seat-kilograms' and basis " + basis + " don't fit",
                    "write it for unladen-mass-and-seats and for no other basis");
        }
        return new MassEntry(
                When.of(node),
                basis,
                node.text("name"),
                node.optionalDecimal("add-kilograms"),
                perSeat,
                node.code("verified", Verified.class),
                node.text("source"));
    }

    /** The mass for a vehicle, or null where it is not for it or what makes it is not known. */
    @Nullable
    MassTerm termFor(Vehicle vehicle) {
        if (!when.matches(vehicle, null).certain()) {
            return null;
        }
        BigDecimal mass = massOf(vehicle);
        if (mass == null && basis != MassBasis.AXLE_LOADS) {
            return null;
        }
        BigDecimal whole = mass == null || add == null ? mass : mass.add(add);
        return new MassTerm(basis, whole, verified == Verified.READ ? name : name + " (" + verified + ")");
    }

    private @Nullable BigDecimal massOf(Vehicle vehicle) {
        BigDecimal unladen = vehicle.unladenMass();
        Integer seats = vehicle.seats();
        return switch (basis) {
            case MAXIMUM_MASS -> vehicle.maximumMass();
            case TEST_MASS -> vehicle.testMass();
            case UNLADEN_MASS -> unladen;
            case UNLADEN_MASS_AND_SEATS ->
                unladen == null || seats == null || perSeat == null
                        ? null
                        : perSeat.multiply(BigDecimal.valueOf(Math.max(0, seats - 1L)))
                                .add(unladen);
            case AXLE_LOADS -> null;
        };
    }
}
