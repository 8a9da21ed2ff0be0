package org.axlecause.statistics;

import java.util.List;
import java.util.function.UnaryOperator;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.special.Beta;
import org.hipparchus.special.Gamma;
import org.hipparchus.stat.descriptive.rank.Percentile;

/**
 * Units of different size against one target, so that small ones aren't called bad by chance (Spiegelhalter 2005, Stat.
 * Med. 24:1185). Limits are exact; where the units differ more among each other than chance explains, they are widened by
 * the overdispersion, and the wider of both counts.
 *
 * @param kind what is compared
 * @param target share, or 1 for a ratio
 * @param overdispersion mean square of the standardised deviations, the outer tenths drawn in; never below 1, which is
 *     what chance explains
 * @param points in the order they were given
 */
public record Funnel(Kind kind, double target, double overdispersion, List<Point> points) {

    private static final NormalDistribution NORMAL = new NormalDistribution(0, 1);

    /** Share of the units at each end whose deviation is drawn in to the next one (Spiegelhalter 2005, section 3.2). */
    private static final double WINSORISED = 0.1;

    public Funnel {
        points = List.copyOf(points);
    }

    /** What is compared. */
    public enum Kind {
        /** Events per case against a target share; counts are binomial. */
        SHARE,
        /** Observed by expected events against 1; counts are taken as Poisson, which is wider than they are. */
        RATIO
    }

    /** Where a unit lies. */
    public enum Verdict {
        BELOW_99_8_PERCENT,
        BELOW_95_PERCENT,
        WITHIN,
        ABOVE_95_PERCENT,
        ABOVE_99_8_PERCENT
    }

    /**
     * A unit.
     *
     * @param name of the unit
     * @param observed events
     * @param size cases, or events expected
     */
    public record Count(String name, long observed, double size) {

        public Count {
            if (observed < 0 || !(size > 0)) {
                throw new IllegalArgumentException(
                        "%s with %d observed at a size of %s: events can't be negative, and the size must be above 0"
                                .formatted(name, observed, size));
            }
        }

        double value() {
            return observed / size;
        }
    }

    /**
     * A unit and where it lies.
     *
     * @param name of the unit
     * @param observed events
     * @param size cases, or events expected
     * @param value share or ratio
     * @param limits at this size
     * @param deviation in standard errors without overdispersion, above 0 where the value is above the target
     * @param pValue two-sided probability of a deviation at least as large, by the exact distribution and, with
     *     overdispersion, by the wider of both
     * @param verdict by the p-value: drawn limits lie between two counts, and a count next to one may still be within
     */
    public record Point(
            String name,
            long observed,
            double size,
            double value,
            FunnelLimits limits,
            double deviation,
            double pValue,
            Verdict verdict) {}

    /** Shares against a target. */
    public static Funnel ofShares(double target, List<Count> units) {
        if (!(target > 0 && target < 1)) {
            throw new IllegalArgumentException("A target of %s: give a share between 0 and 1".formatted(target));
        }
        return of(Kind.SHARE, target, units);
    }

    /** Observed by expected events against 1. */
    public static Funnel ofRatios(List<Count> units) {
        return of(Kind.RATIO, 1, units);
    }

    /** The same with other names for its units. */
    Funnel named(UnaryOperator<String> names) {
        return new Funnel(
                kind,
                target,
                overdispersion,
                points.stream()
                        .map(point -> new Point(
                                names.apply(point.name()),
                                point.observed(),
                                point.size(),
                                point.value(),
                                point.limits(),
                                point.deviation(),
                                point.pValue(),
                                point.verdict()))
                        .toList());
    }

    private static Funnel of(Kind kind, double target, List<Count> units) {
        Funnel empty = new Funnel(kind, target, 1, List.of());
        double overdispersion =
                overdispersion(units.stream().mapToDouble(empty::deviation).toArray());
        Funnel funnel = new Funnel(kind, target, overdispersion, List.of());
        return new Funnel(
                kind, target, overdispersion, units.stream().map(funnel::point).toList());
    }

    /** Limits for a unit of that many cases or expected events. */
    public FunnelLimits limitsAt(double size) {
        FunnelLimits exact =
                kind == Kind.SHARE ? FunnelLimits.exactShare(target, Math.round(size)) : FunnelLimits.exactRatio(size);
        if (overdispersion <= 1) {
            return exact;
        }
        return exact.widest(
                kind == Kind.SHARE
                        ? FunnelLimits.normalShare(target, Math.round(size), overdispersion)
                        : FunnelLimits.normalRatio(size, overdispersion));
    }

    /** Mean square of deviations after the outer tenths are drawn in, not below 1. */
    static double overdispersion(double... deviations) {
        if (deviations.length < 2) {
            return 1;
        }
        Percentile percentile = new Percentile().withEstimationType(Percentile.EstimationType.R_7);
        double low = percentile.evaluate(deviations, 100 * WINSORISED);
        double high = percentile.evaluate(deviations, 100 * (1 - WINSORISED));
        double squares = 0;
        for (double deviation : deviations) {
            double drawnIn = Math.min(high, Math.max(low, deviation));
            squares += drawnIn * drawnIn;
        }
        return Math.max(1, squares / deviations.length);
    }

    private Point point(Count unit) {
        double deviation = deviation(unit);
        double pValue = Math.min(1, 2 * exactTail(unit));
        if (overdispersion > 1) {
            double wide = 2 * NORMAL.cumulativeProbability(-Math.abs(deviation) / Math.sqrt(overdispersion));
            pValue = Math.max(pValue, wide);
        }
        return new Point(
                unit.name(),
                unit.observed(),
                unit.size(),
                unit.value(),
                limitsAt(unit.size()),
                deviation,
                pValue,
                verdict(pValue, deviation > 0));
    }

    private double deviation(Count unit) {
        double variance = kind == Kind.SHARE ? target * (1 - target) : 1;
        return (unit.value() - target) / Math.sqrt(variance / unit.size());
    }

    /** Probability of a count at least as far out on the same side. */
    private double exactTail(Count unit) {
        return Math.min(atMost(unit.observed(), unit.size()), unit.observed() == 0 ? 1 : atLeast(unit));
    }

    private double atMost(long observed, double size) {
        if (kind == Kind.RATIO) {
            return Gamma.regularizedGammaQ(observed + 1.0, size);
        }
        return observed >= size ? 1 : Beta.regularizedBeta(1 - target, size - observed, observed + 1.0);
    }

    private double atLeast(Count unit) {
        return kind == Kind.RATIO
                ? Gamma.regularizedGammaP((double) unit.observed(), unit.size())
                : Beta.regularizedBeta(target, (double) unit.observed(), unit.size() - unit.observed() + 1);
    }

    private static Verdict verdict(double pValue, boolean above) {
        if (pValue < 2 * ConfidenceLevel.OF_99_8_PERCENT.tail()) {
            return above ? Verdict.ABOVE_99_8_PERCENT : Verdict.BELOW_99_8_PERCENT;
        }
        if (pValue < 2 * ConfidenceLevel.OF_95_PERCENT.tail()) {
            return above ? Verdict.ABOVE_95_PERCENT : Verdict.BELOW_95_PERCENT;
        }
        return Verdict.WITHIN;
    }
}
