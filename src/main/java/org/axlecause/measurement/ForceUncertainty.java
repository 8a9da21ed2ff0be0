package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.Tester;
import org.axlecause.measurement.MonteCarlo.Input;
import org.axlecause.measurement.MonteCarlo.Spread;
import org.axlecause.measurement.UncertaintyBudget.Component;
import org.jspecify.annotations.Nullable;

/**
 * What is uncertain in a roller force: accuracy and resolution as rectangular distributions, repeatability as a normal
 * one (JCGM 100:2008, 4.3.7; F.2.2.1 for the step of an indication).
 *
 * @param permissible the tester's largest permissible error at that force, newtons
 * @param step the tester's smallest step, newtons
 * @param repeatability standard deviation between runs or by noise, newtons
 */
public record ForceUncertainty(double permissible, double step, double repeatability) {

    private static final double RECTANGLE = Math.sqrt(3);

    /** The uncertainty of a force read on that tester; null where the tester's accuracy is not known. */
    public static @Nullable ForceUncertainty of(BigDecimal force, @Nullable Tester tester) {
        return of(force.doubleValue(), tester, 0);
    }

    /** The same with a repeatability known from several runs, newtons. */
    public static @Nullable ForceUncertainty of(double force, @Nullable Tester tester, double repeatability) {
        if (tester == null || tester.accuracy() == null || tester.accuracyOf() == null) {
            return null;
        }
        BigDecimal range = tester.range();
        double full;
        if (tester.accuracyOf() == Accuracy.READING) {
            full = Math.abs(force);
        } else if (range != null) {
            full = range.doubleValue();
        } else {
            return null;
        }
        BigDecimal step = tester.resolution();
        return new ForceUncertainty(
                tester.accuracy().doubleValue() * full, step == null ? 0 : step.doubleValue(), repeatability);
    }

    /** The uncertainty of known standard parts: by the tester's accuracy, and independent from reading to reading. */
    static ForceUncertainty ofParts(double accuracy, double independent) {
        return new ForceUncertainty(accuracy * RECTANGLE, 0, independent);
    }

    /** Standard uncertainty by the tester's accuracy. */
    public double accuracy() {
        return permissible / RECTANGLE;
    }

    /** What is independent from reading to reading: resolution and repeatability. */
    public double independent() {
        return UncertaintyBudget.of(Component.within(1, step / 2), Component.of(1, repeatability))
                .combined();
    }

    /** The combined standard uncertainty, newtons. */
    public double combined() {
        return UncertaintyBudget.of(
                        Component.within(1, permissible), Component.within(1, step / 2), Component.of(1, repeatability))
                .combined();
    }

    /** The errors as inputs of a simulation, each about zero. */
    List<Input> errors() {
        List<Input> errors = new ArrayList<>();
        errors.add(new Input(0, Spread.RECTANGULAR, permissible));
        errors.add(new Input(0, Spread.RECTANGULAR, step / 2));
        errors.add(new Input(0, Spread.NORMAL, repeatability));
        return errors;
    }
}
