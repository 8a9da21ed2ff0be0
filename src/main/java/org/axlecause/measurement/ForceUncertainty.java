package org.axlecause.measurement;

import java.math.BigDecimal;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.Tester;
import org.jspecify.annotations.Nullable;

/**
 * Standard uncertainty of a roller force after the GUM (JCGM 100:2008, 4.3.7 and 5.1): accuracy and resolution as
 * rectangular distributions, repeatability as it was found.
 *
 * @param accuracy standard uncertainty from the tester's largest permissible error, newtons
 * @param resolution standard uncertainty from its smallest step, newtons
 * @param repeatability standard deviation between runs, newtons
 */
public record ForceUncertainty(double accuracy, double resolution, double repeatability) {

    private static final double RECTANGLE = Math.sqrt(3);
    private static final double STEP = Math.sqrt(12);

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
                tester.accuracy().doubleValue() * full / RECTANGLE,
                step == null ? 0 : step.doubleValue() / STEP,
                repeatability);
    }

    /** What is independent from reading to reading: resolution and repeatability. */
    public double independent() {
        return Math.hypot(resolution, repeatability);
    }

    /** The combined standard uncertainty, newtons. */
    public double combined() {
        return Math.hypot(accuracy, independent());
    }
}
