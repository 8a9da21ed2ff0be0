package org.axlecause.measurement;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Circumstance;
import org.axlecause.facts.EffortUnit;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.ImbalanceFormula;
import org.axlecause.facts.Lenience;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.RegimeGap;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.Side;
import org.axlecause.facts.Verified;
import org.jspecify.annotations.Nullable;

/** Regime figures of one axle in one test. */
final class AxleFigures {

    private AxleFigures() {}

    static void of(TestedAxle axle, RegimeTerms terms, RegimeFigureSheet sheet) {
        imbalance(axle, terms, sheet);
        effort(axle, terms, sheet);
        dragShare(axle, Side.LEFT, terms, sheet);
        dragShare(axle, Side.RIGHT, terms, sheet);
        if (axle.test().brake() == BrakeSystem.PARKING) {
            parkingRatio(axle, sheet);
        }
    }

    private static void imbalance(TestedAxle axle, RegimeTerms terms, RegimeFigureSheet sheet) {
        BigDecimal left = axle.left();
        BigDecimal right = axle.right();
        ImbalanceFormula formula = formulaFor(axle, terms, sheet);
        FigureKind kind = kindOf(formula == null ? terms.imbalance().formula() : formula, terms);
        if (left == null || right == null) {
            sheet.cannotShow(kind, axle.test(), axle.place(), "the force of a wheel was not recorded");
            return;
        }
        if (formula == null) {
            sheet.cannotShow(kind, axle.test(), axle.place(), "the axle load that chooses the formula is not known");
            return;
        }
        if (left.signum() == 0 && right.signum() == 0) {
            sheet.cannotShow(kind, axle.test(), axle.place(), "no effort at either wheel, so there is no ratio");
            return;
        }
        WheelForces forces = WheelForces.by(formula, axle, left, right);
        BigDecimal base = baseOf(formula, forces, axle, terms);
        if (base == null) {
            sheet.cannotShow(kind, axle.test(), axle.place(), "the axle load is not known");
            lackOfLoad(axle, terms, sheet);
            return;
        }
        BigDecimal exact = forces.difference().divide(base, MathContext.DECIMAL128);
        BigDecimal value = RegimeFigures.rounded(exact, terms);
        UncertaintyOfRatio.Spread spread = UncertaintyOfRatio.ofImbalance(formula, forces, base, axle);
        sheet.show(
                kind,
                axle.test(),
                axle.place(),
                value,
                spread == null ? null : spread.standard(),
                basisOf(formula, forces, terms),
                spread == null ? null : spread.simulated());
        lenience(kind, left, right, axle, terms, sheet);
    }

    private static void effort(TestedAxle axle, RegimeTerms terms, RegimeFigureSheet sheet) {
        BigDecimal left = axle.left();
        BigDecimal right = axle.right();
        BigDecimal load = axle.load();
        FigureKind kind = effortKind(terms);
        if (left == null || right == null) {
            sheet.cannotShow(kind, axle.test(), axle.place(), "the force of a wheel was not recorded");
        } else if (load == null) {
            sheet.cannotShow(kind, axle.test(), axle.place(), "the axle load is not known");
        } else {
            BigDecimal weight = weight(load, terms);
            BigDecimal value = left.add(right).divide(weight, MathContext.DECIMAL128);
            sheet.show(
                    kind,
                    axle.test(),
                    axle.place(),
                    RegimeFigures.rounded(value, terms),
                    UncertaintyOfRatio.ofEffort(List.of(axle), left.add(right), weight),
                    massBasis(load, axle.loadName(), terms));
        }
    }

    private static void dragShare(TestedAxle axle, Side side, RegimeTerms terms, RegimeFigureSheet sheet) {
        BigDecimal drag = axle.valueOf(FigureKind.DRAG, side);
        BigDecimal load = axle.load();
        if (drag != null && load != null) {
            sheet.show(
                    FigureKind.DRAG_SHARE_OF_AXLE_LOAD,
                    axle.test(),
                    Place.ofWheel(axle.number(), side),
                    drag.divide(load.multiply(terms.gravity()), MathContext.DECIMAL128),
                    UncertaintyOfRatio.overWeight(
                            axle.uncertaintyOf(FigureKind.DRAG, side), load.multiply(terms.gravity())),
                    massBasis(load, axle.loadName(), terms));
        }
    }

    private static void parkingRatio(TestedAxle axle, RegimeFigureSheet sheet) {
        BigDecimal left = axle.left();
        BigDecimal right = axle.right();
        if (left == null || right == null) {
            sheet.cannotShow(
                    FigureKind.PARKING_RATIO, axle.test(), axle.place(), "the force of a wheel was not recorded");
        } else if (left.max(right).signum() == 0) {
            sheet.cannotShow(
                    FigureKind.PARKING_RATIO,
                    axle.test(),
                    axle.place(),
                    "no effort at either wheel, so there is no ratio");
        } else {
            sheet.show(
                    FigureKind.PARKING_RATIO,
                    axle.test(),
                    axle.place(),
                    left.min(right).divide(left.max(right), MathContext.DECIMAL128),
                    UncertaintyOfRatio.ofRatio(axle, left, right),
                    "lower / higher");
        }
    }

    private static void lenience(
            FigureKind kind,
            BigDecimal left,
            BigDecimal right,
            TestedAxle axle,
            RegimeTerms terms,
            RegimeFigureSheet sheet) {
        for (Lenience each : terms.lenience()) {
            if (each.kind() != kind || each.brake() != axle.test().brake()) {
                continue;
            }
            Side lower = left.compareTo(right) < 0 ? Side.LEFT : Side.RIGHT;
            if (each.when() == Circumstance.LOWER_WHEEL_LOCKED && left.compareTo(right) != 0 && axle.locked(lower)) {
                sheet.exempt(
                        kind, axle.test(), axle.place(), "the " + lower + " wheel, the lower one, locked" + by(each));
            }
            BigDecimal low = each.value();
            if (each.when() == Circumstance.BOTH_WHEELS_LOW
                    && low != null
                    && left.max(right).compareTo(low) <= 0) {
                sheet.exempt(
                        kind,
                        axle.test(),
                        axle.place(),
                        "both wheels give no more than " + plain(low) + " N" + by(each));
            }
        }
    }

    /** The formula that holds for this axle; null where the load that would decide is not known. */
    private static @Nullable ImbalanceFormula formulaFor(TestedAxle axle, RegimeTerms terms, RegimeFigureSheet sheet) {
        BigDecimal branch = terms.imbalance().branch();
        ImbalanceFormula below = terms.imbalance().below();
        if (branch == null || below == null || axle.number() == 1) {
            return terms.imbalance().formula();
        }
        BigDecimal left = axle.left();
        BigDecimal right = axle.right();
        BigDecimal load = axle.load();
        if (load == null) {
            lackOfLoad(axle, terms, sheet);
            return null;
        }
        if (left == null || right == null) {
            return null;
        }
        BigDecimal needed = branch.multiply(load).multiply(terms.gravity());
        return left.add(right).compareTo(needed) >= 0 ? terms.imbalance().formula() : below;
    }

    private static @Nullable BigDecimal baseOf(
            ImbalanceFormula formula, WheelForces forces, TestedAxle axle, RegimeTerms terms) {
        BigDecimal load = axle.load();
        return switch (formula) {
            case DIFFERENCE_PER_AXLE_MASS -> load == null ? null : weight(load, terms);
            case LARGEST_DIFFERENCE_OVER_AXLE_LOAD -> load == null ? null : load.multiply(terms.gravity());
            default -> forces.higher();
        };
    }

    private static FigureKind kindOf(ImbalanceFormula formula, RegimeTerms terms) {
        return switch (formula) {
            case DIFFERENCE_PER_AXLE_MASS ->
                terms.effortUnit() == EffortUnit.NEWTONS_PER_KILOGRAM
                        ? FigureKind.IMBALANCE_PER_AXLE_MASS
                        : FigureKind.IMBALANCE_OVER_AXLE_LOAD;
            case LARGEST_DIFFERENCE_OVER_AXLE_LOAD -> FigureKind.IMBALANCE_OVER_AXLE_LOAD;
            default -> FigureKind.IMBALANCE;
        };
    }

    static FigureKind effortKind(RegimeTerms terms) {
        return terms.effortUnit() == EffortUnit.NEWTONS_PER_KILOGRAM
                ? FigureKind.EFFORT_PER_MASS
                : FigureKind.EFFICIENCY;
    }

    /** What forces are divided by: the weight, or the mass where the regime counts newtons per kilogram. */
    static BigDecimal weight(BigDecimal mass, RegimeTerms terms) {
        return terms.effortUnit() == EffortUnit.NEWTONS_PER_KILOGRAM ? mass : mass.multiply(terms.gravity());
    }

    /** The mass that forces are related to, and the gravity where no text of the regime gives it. */
    static String massBasis(BigDecimal kilograms, String name, RegimeTerms terms) {
        boolean byWeight = terms.effortUnit() == EffortUnit.SHARE_OF_WEIGHT;
        return "of " + plain(kilograms) + " kg, " + name
                + (byWeight && terms.gravityVerified() != Verified.READ
                        ? "; " + plain(terms.gravity()) + " m/s2"
                                + terms.gravityVerified().remark("gravity")
                        : "");
    }

    static String by(Lenience lenience) {
        return "; by " + lenience.source() + lenience.verified().remark("rule");
    }

    static String plain(BigDecimal value) {
        return value.stripTrailingZeros().toPlainString();
    }

    private static String basisOf(ImbalanceFormula formula, WheelForces forces, RegimeTerms terms) {
        return formula.words()
                + terms.imbalance().verified().remark("formula")
                + (forces.note() == null ? "" : "; " + forces.note())
                + (terms.rounding() == null
                        ? ""
                        : "; rounded " + terms.rounding().mode().name().toLowerCase(Locale.ROOT) + " to "
                                + terms.rounding().decimals() + " decimals"
                                + terms.rounding().verified().remark("rounding"));
    }

    private static void lackOfLoad(TestedAxle axle, RegimeTerms terms, RegimeFigureSheet sheet) {
        sheet.lacks(new RegimeGap(
                QuestionCode.MASS_MISSING,
                axle.place(),
                terms.regime() + " relates the forces of axle " + axle.number() + " to its load, which is not known",
                "Weigh the axle during the test and send its load, or send the axle's share of the unladen mass"));
    }
}
