package org.axlecause.regimes;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.axlecause.facts.Axle;
import org.axlecause.facts.Bound;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.FindingLimit;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** One limit of findings as written, with the vehicles and axles it is for. */
record FindingEntry(When when, FindingLimit limit) {

    static FindingEntry of(YamlNode node) {
        List<String> known = new ArrayList<>(When.MEMBERS);
        known.addAll(List.of(
                "deficiency",
                "components",
                "conditions",
                "quantity",
                "bound",
                "millimetres",
                "affecting",
                "class",
                "item",
                "verified",
                "source"));
        node.only(known.toArray(String[]::new));
        List<Condition> conditions = node.codes("conditions", Condition.class);
        MeasuredQuantity quantity = node.optionalCode("quantity", MeasuredQuantity.class);
        Bound bound = node.optionalCode("bound", Bound.class);
        if (conditions.isEmpty() == (quantity == null) || (quantity == null) != (bound == null)) {
            throw node.wrong(
                    "a limit of a finding needs either conditions or a measured quantity",
                    "write 'conditions', or 'quantity' with 'bound' and, unless the part's own limit counts,"
                            + " 'millimetres'");
        }
        BigDecimal millimetres = node.optionalDecimal("millimetres");
        return new FindingEntry(
                When.of(node),
                new FindingLimit(
                        node.code("deficiency", DeficiencyCode.class),
                        node.codes("components", Component.class),
                        conditions,
                        quantity,
                        bound,
                        millimetres == null ? null : millimetres.movePointLeft(3),
                        List.of(),
                        Boolean.TRUE.equals(node.optionalFlag("affecting")),
                        node.optionalCode("class", DeficiencyClass.class),
                        node.optionalText("item"),
                        node.code("verified", Verified.class),
                        node.text("source")));
    }

    /** What it sets for a measured part of cars and light vans; a limit that is stamped on the part is none of ours. */
    Stream<LegalBound> bounds(String regime, MeasuredQuantity quantity) {
        return limit.quantity() == quantity && limit.value() != null && limit.bound() != null && when.mayBeLight()
                ? Stream.of(new LegalBound(regime, limit.bound(), limit.value(), limit.source()))
                : Stream.empty();
    }

    /** The limit for a vehicle; null where it is not for it or where it is not known whether it is. */
    @Nullable
    FindingLimit limitFor(Vehicle vehicle, Set<Datum> missing) {
        if (when.steered() == null && when.axleBrakes().isEmpty()) {
            Match match = when.matches(vehicle, null);
            missing.addAll(match.unknown());
            return match.certain() ? limit : null;
        }
        List<Integer> axles = new ArrayList<>();
        for (Axle axle : vehicle.axles()) {
            Match match = when.matches(vehicle, axle);
            missing.addAll(match.possible() ? match.unknown() : EnumSet.noneOf(Datum.class));
            if (match.certain()) {
                axles.add(axle.number());
            }
        }
        return axles.isEmpty() ? null : onAxles(axles);
    }

    private FindingLimit onAxles(List<Integer> axles) {
        return new FindingLimit(
                limit.deficiency(),
                limit.components(),
                limit.conditions(),
                limit.quantity(),
                limit.bound(),
                limit.value(),
                axles,
                limit.affecting(),
                limit.severity(),
                limit.item(),
                limit.verified(),
                limit.source());
    }
}
