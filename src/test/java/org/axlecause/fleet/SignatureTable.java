package org.axlecause.fleet;

import static org.axlecause.fleet.ReferenceAxle.BAR;
import static org.axlecause.fleet.ReferenceAxle.HEALTHY;
import static org.axlecause.fleet.ReferenceAxle.HYDRAULICS;
import static org.axlecause.fleet.ReferenceAxle.SHOE;

import java.util.List;

/**
 * The trade's signature table of faults on the reference axle, whole rows as printed there; low or faulty wheel first.
 * Standing: derived (by the author of the table from the forward model, independently of this code). The phase of the
 * oval drum, the spring pressure of the broken spring and the seed are not printed and were chosen here.
 */
public final class SignatureTable {

    /** Never falls to a tenth within the record; the table prints "more than 2.5". */
    public static final double NEVER = Double.POSITIVE_INFINITY;

    /**
     * One row: forces in newtons, shares in percent, times in seconds.
     *
     * @param name the fault
     * @param first wheel printed first
     * @param second wheel printed second
     * @param rolling rolling force of both
     * @param hold net force while held
     * @param imbalance at a quarter and half of the effort, and while held
     * @param ofPeaks imbalance of the net peaks
     * @param onset time to a tenth of the own force
     * @param rise time to nine tenths
     * @param release time down to a tenth
     * @param residual net force 1.5 s after the release
     * @param swing (highest - lowest) / highest within a turn
     */
    public record Row(
            String name,
            WheelBrake first,
            WheelBrake second,
            Pair rolling,
            Pair hold,
            Effort imbalance,
            double ofPeaks,
            Pair onset,
            Pair rise,
            Pair release,
            Pair residual,
            Pair swing) {

        @Override
        public String toString() {
            return name;
        }
    }

    /** A value of each wheel. */
    public record Pair(double first, double second) {}

    /** A value at three efforts. */
    public record Effort(double quarter, double half, double full) {}

    private SignatureTable() {}

    /** Every row. */
    public static List<Row> rows() {
        return List.of(
                row("healthy", HEALTHY, HEALTHY, 60, 60, 956, 956, 0, 0, 0, 0)
                        .timed(0.29, 0.29, 1.83, 1.83, 0.29, 0.29, 0, 0, 3, 3),
                row(
                                "soaked lining, friction 0.12",
                                HEALTHY.withFriction(0.12),
                                HEALTHY,
                                60,
                                60,
                                258,
                                956,
                                73,
                                73,
                                73,
                                73)
                        .timed(0.29, 0.29, 1.83, 1.83, 0.29, 0.29, 0, 0, 3, 3),
                row(
                                "glazed lining, friction 0.25",
                                HEALTHY.withFriction(0.25),
                                HEALTHY,
                                60,
                                60,
                                568,
                                956,
                                41,
                                41,
                                41,
                                41)
                        .timed(0.29, 0.29, 1.83, 1.83, 0.29, 0.29, 0, 0, 3, 3),
                row("leading piston stuck", shoes(0, 1), HEALTHY, 60, 60, 287, 956, 70, 70, 70, 70)
                        .timed(0.29, 0.29, 1.83, 1.83, 0.29, 0.29, 0, 0, 3, 3),
                row("trailing piston stuck", shoes(1, 0), HEALTHY, 60, 60, 669, 956, 30, 30, 30, 30)
                        .timed(0.29, 0.29, 1.83, 1.83, 0.29, 0.29, 0, 0, 3, 3),
                row(
                                "tight piston, 6 bar",
                                HEALTHY.with(HYDRAULICS.withPistonFriction(6 * BAR)),
                                HEALTHY,
                                60,
                                60,
                                843,
                                956,
                                56,
                                25,
                                12,
                                12)
                        .timed(0.49, 0.29, 1.85, 1.83, NEVER, 0.29, 90, 0, 3, 3),
                row(
                                "tight piston, 12 bar",
                                HEALTHY.with(HYDRAULICS.withPistonFriction(12 * BAR)),
                                HEALTHY,
                                60,
                                60,
                                724,
                                956,
                                100,
                                52,
                                24,
                                24)
                        .timed(0.71, 0.29, 1.87, 1.83, NEVER, 0.29, 211, 0, 3, 3),
                row(
                                "hose choked both ways",
                                HEALTHY.with(HYDRAULICS.restricted(0.8, 1.5, 0)),
                                HEALTHY,
                                60,
                                60,
                                935,
                                956,
                                85,
                                60,
                                2,
                                1)
                        .timed(0.74, 0.29, 2.93, 1.83, NEVER, 0.29, 309, 0, 4, 3),
                row(
                                "hose with a one-way flap",
                                HEALTHY.with(HYDRAULICS.restricted(0.15, 6, 0)),
                                HEALTHY,
                                60,
                                60,
                                956,
                                956,
                                28,
                                13,
                                0,
                                0)
                        .timed(0.40, 0.29, 1.95, 1.83, NEVER, 0.29, 739, 0, 3, 3),
                row(
                                "adjuster not taken up",
                                HEALTHY.with(HYDRAULICS.withClearanceTime(0.8)),
                                HEALTHY,
                                60,
                                60,
                                956,
                                956,
                                100,
                                0,
                                0,
                                0)
                        .timed(0.80, 0.29, 1.83, 1.83, 0.29, 0.29, 0, 0, 3, 3),
                row(
                                "travel runs out at 22 bar",
                                HEALTHY.with(HYDRAULICS.withTravelLimit(22 * BAR)),
                                HEALTHY,
                                60,
                                60,
                                401,
                                956,
                                0,
                                11,
                                58,
                                58)
                        .timed(0.18, 0.29, 0.83, 1.83, 0.31, 0.29, 0, 0, 3, 3),
                row(
                                "return spring broken",
                                HEALTHY.with(HYDRAULICS.withSpringPressure(0.2 * BAR)),
                                HEALTHY,
                                60,
                                60,
                                982,
                                956,
                                -11,
                                -5,
                                -3,
                                -3)
                        .timed(0.24, 0.29, 1.82, 1.83, 0.30, 0.29, 2, 0, 3, 3),
                row(
                                "oval drum on the second wheel",
                                HEALTHY,
                                HEALTHY.with(new Swing(0.01, 0, 0.25, 1.66)),
                                60,
                                60,
                                956,
                                956,
                                18,
                                11,
                                0,
                                19)
                        .timed(0.29, 0.29, 1.83, 1.66, 0.29, 0.29, 0, 0, 3, 39),
                row(
                                "eccentric drum on the first wheel",
                                HEALTHY.with(new Swing(0.20, 0, 0.01, 0)),
                                HEALTHY,
                                60,
                                60,
                                956,
                                956,
                                3,
                                11,
                                0,
                                -15)
                        .timed(0.26, 0.29, 2.34, 1.83, 0.29, 0.29, 0, 0, 32, 3),
                row("second wheel rubbing, 150 N", HEALTHY, HEALTHY.withDragForce(150), 60, 210, 956, 956, 0, 0, 0, 0)
                        .timed(0.29, 0.29, 1.83, 1.83, 0.29, 0.29, 0, 0, 3, 3),
                row(
                                "second wheel grabbing, friction 0.50",
                                HEALTHY,
                                HEALTHY.withFriction(0.50),
                                60,
                                60,
                                956,
                                1460,
                                35,
                                35,
                                35,
                                35)
                        .timed(0.29, 0.29, 1.83, 1.83, 0.29, 0.29, 0, 0, 3, 3),
                row("first wheel slips, grip 0.35", HEALTHY.withGrip(0.35), HEALTHY, 60, 60, 815, 956, 0, 0, 15, 16)
                        .timed(0.26, 0.29, 1.58, 1.83, 0.29, 0.29, 0, 0, 0, 3));
    }

    /** The row of that name. */
    public static Row named(String name) {
        return rows().stream()
                .filter(row -> row.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(name));
    }

    private static WheelBrake shoes(double leading, double trailing) {
        return HEALTHY.with(new FrictionPair.Simplex(0.38, SHOE, leading, trailing));
    }

    private static Forces row(
            String name,
            WheelBrake first,
            WheelBrake second,
            double rollingFirst,
            double rollingSecond,
            double holdFirst,
            double holdSecond,
            double quarter,
            double half,
            double full,
            double ofPeaks) {
        return new Forces(
                name,
                first,
                second,
                new Pair(rollingFirst, rollingSecond),
                new Pair(holdFirst, holdSecond),
                new Effort(quarter, half, full),
                ofPeaks);
    }

    private record Forces(
            String name,
            WheelBrake first,
            WheelBrake second,
            Pair rolling,
            Pair hold,
            Effort imbalance,
            double ofPeaks) {

        Row timed(
                double onsetFirst,
                double onsetSecond,
                double riseFirst,
                double riseSecond,
                double releaseFirst,
                double releaseSecond,
                double residualFirst,
                double residualSecond,
                double swingFirst,
                double swingSecond) {
            return new Row(
                    name,
                    first,
                    second,
                    rolling,
                    hold,
                    imbalance,
                    ofPeaks,
                    new Pair(onsetFirst, onsetSecond),
                    new Pair(riseFirst, riseSecond),
                    new Pair(releaseFirst, releaseSecond),
                    new Pair(residualFirst, residualSecond),
                    new Pair(swingFirst, swingSecond));
        }
    }
}
