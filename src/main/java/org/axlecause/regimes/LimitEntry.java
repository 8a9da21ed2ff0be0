package org.axlecause.regimes;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.axlecause.facts.Axle;
import org.axlecause.facts.Bound;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitStanding;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** One limit of a regime as written, with the values for different vehicles and the classes of its breach. */
record LimitEntry(
        DeficiencyCode deficiency,
        FigureKind figure,
        BrakeSystem brake,
        Scope place,
        Bound bound,
        Period day,
        LimitStanding standing,
        List<Grade> grades,
        List<Case> cases) {

    private static final Map<String, String> MEMBER_OF_UNIT = Map.of(
            "%", "percent",
            "N", "newtons",
            "N/kg", "newtons-per-kilogram",
            "m/s2", "metres-per-second-squared",
            "m", "metres",
            "s", "seconds");

    static LimitEntry of(YamlNode node) {
        node.only("deficiency", "figure", "brake", "place", "bound", "from", "before", "standing", "grades", "values");
        FigureKind figure = node.code("figure", FigureKind.class);
        List<Grade> grades =
                node.member("grades").items().stream().map(Grade::of).toList();
        List<Case> cases = node.member("values").items().stream()
                .map(value -> Case.of(value, figure))
                .toList();
        if (grades.isEmpty() || cases.isEmpty()) {
            throw node.wrong("a limit has no grade or no value", "add at least one under 'grades' and under 'values'");
        }
        LimitStanding written = node.optionalCode("standing", LimitStanding.class);
        LimitStanding standing = written == null ? LimitStanding.REGIME : written;
        if (standing == LimitStanding.POLICY) {
            throw node.member("standing")
                    .wrong("a limit of a regime is none of a policy", "write 'workshop', or leave the standing out");
        }
        if (standing == LimitStanding.WORKSHOP && grades.stream().anyMatch(grade -> grade.severity() != null)) {
            throw node.member("standing")
                    .wrong(
                            "a limit of standing workshop has a class of the regime",
                            "remove 'class' from its grades, or the standing if a text of the regime gives the value");
        }
        return new LimitEntry(
                node.code("deficiency", DeficiencyCode.class),
                figure,
                node.code("brake", BrakeSystem.class),
                node.code("place", Scope.class),
                node.code("bound", Bound.class),
                new Period(node.optionalDate("from"), node.optionalDate("before")),
                standing,
                grades,
                cases);
    }

    /** Limits of this entry for a vehicle on a day; data that would decide between values are noted. */
    List<Limit> limitsFor(Vehicle vehicle, LocalDate onDay, Set<Datum> missing) {
        List<Limit> limits = new ArrayList<>();
        if (!day.holds(onDay)) {
            return limits;
        }
        for (Scope.Spot spot : place.spots(vehicle)) {
            Case chosen = choose(vehicle, spot.axle(), missing);
            if (chosen != null) {
                BigDecimal value = chosen.valueFor(vehicle);
                for (Grade grade : grades) {
                    limits.add(new Limit(
                            deficiency,
                            figure,
                            brake,
                            spot.place(),
                            bound,
                            grade.of(value),
                            grade.severity(),
                            grade.item(),
                            standing,
                            grade.weaker(chosen.verified()),
                            chosen.source()));
                }
            }
        }
        return limits;
    }

    /**
     * The case that holds. Where a datum is missing that would decide, the most lenient of those that may hold: what is
     * not known is not held against the vehicle.
     */
    private @Nullable Case choose(Vehicle vehicle, @Nullable Axle axle, Set<Datum> missing) {
        Case chosen = null;
        Set<Datum> unknown = EnumSet.noneOf(Datum.class);
        boolean certain = false;
        boolean differ = false;
        for (Case each : cases) {
            Match match = each.when().matches(vehicle, axle);
            if (!match.possible()) {
                continue;
            }
            unknown.addAll(match.unknown());
            if (chosen != null && chosen.valueFor(vehicle).compareTo(each.valueFor(vehicle)) != 0) {
                differ = true;
            }
            if (chosen == null || isMoreLenient(each.valueFor(vehicle), chosen.valueFor(vehicle))) {
                chosen = each;
            }
            if (match.certain()) {
                certain = true;
                break;
            }
        }
        if (chosen != null && !certain) {
            missing.addAll(unknown);
            return null;
        }
        if (differ) {
            missing.addAll(unknown);
        }
        return chosen;
    }

    /** Whether it limits that figure of that brake on that axle; null is any. */
    boolean isOf(FigureKind kind, BrakeSystem system, @Nullable Integer axle) {
        boolean there = axle == null
                || place == Scope.AXLE
                || place == Scope.WHEEL
                || (axle == 1 ? place == Scope.FRONT_AXLE : place == Scope.REAR_AXLES);
        return standing == LimitStanding.REGIME && figure == kind && brake == system && there;
    }

    /** What it sets for cars and light vans, each class of a breach on its own. */
    Stream<LegalBound> bounds(String regime) {
        return cases.stream()
                .filter(each -> each.when().mayBeLight())
                .flatMap(each -> grades.stream()
                        .map(grade -> new LegalBound(regime, bound, grade.of(each.value()), each.source())));
    }

    private boolean isMoreLenient(BigDecimal value, BigDecimal than) {
        return bound.isLower() ? value.compareTo(than) < 0 : value.compareTo(than) > 0;
    }

    /**
     * A class of the breach.
     *
     * @param severity class in the regime's scale; null where it has none
     * @param item number in the regime's document
     * @param share share of the value at which this class begins
     * @param verified standing of class, item and share
     */
    record Grade(
            @Nullable DeficiencyClass severity, @Nullable String item, BigDecimal share, Verified verified) {

        static Grade of(YamlNode node) {
            node.only("class", "item", "share", "verified");
            BigDecimal share = node.optionalDecimal("share");
            if (share != null && (share.signum() <= 0 || share.compareTo(BigDecimal.ONE) > 0)) {
                throw node.member("share").wrong("'share' " + share + " is not a share", "write a decimal up to 1");
            }
            Verified verified = node.optionalCode("verified", Verified.class);
            return new Grade(
                    node.optionalCode("class", DeficiencyClass.class),
                    node.optionalText("item"),
                    share == null ? BigDecimal.ONE : share,
                    verified == null ? Verified.READ : verified);
        }

        BigDecimal of(BigDecimal value) {
            return value.multiply(share, MathContext.DECIMAL128);
        }

        Verified weaker(Verified other) {
            return verified == Verified.READ ? other : verified;
        }
    }

    /**
     * A value with the vehicles it is for; the first that holds counts.
     *
     * @param when vehicles and axles
     * @param value in SI units or as a ratio
     * @param combinationShare share of the combination's maximum mass that the value must also reach
     * @param verified standing of the value
     * @param source document and section
     */
    record Case(When when, BigDecimal value, @Nullable BigDecimal combinationShare, Verified verified, String source) {

        static Case of(YamlNode node, FigureKind figure) {
            List<String> known = new ArrayList<>(When.MEMBERS);
            String unit = MEMBER_OF_UNIT.getOrDefault(figure.unit(), figure.unit());
            known.addAll(List.of(unit, "or-percent-of-combination", "verified", "source"));
            node.only(known.toArray(String[]::new));
            BigDecimal value = node.decimal(unit);
            if (value.signum() < 0) {
                throw node.member(unit).wrong("value " + value + " of '" + unit + "' is negative", "write 0 or more");
            }
            BigDecimal share = node.optionalDecimal("or-percent-of-combination");
            return new Case(
                    When.of(node),
                    unit.equals("percent") ? value.movePointLeft(2) : value,
                    share == null ? null : share.movePointLeft(2),
                    node.code("verified", Verified.class),
                    node.text("source"));
        }

        BigDecimal valueFor(Vehicle vehicle) {
            BigDecimal own = vehicle.maximumMass();
            BigDecimal combination = vehicle.combinationMass();
            if (combinationShare == null || own == null || combination == null || own.signum() <= 0) {
                return value;
            }
            return value.max(combinationShare.multiply(combination).divide(own, MathContext.DECIMAL128));
        }
    }
}
