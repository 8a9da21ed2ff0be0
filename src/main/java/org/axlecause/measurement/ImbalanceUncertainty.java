package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.axlecause.facts.Tester;
import org.axlecause.measurement.MonteCarlo.Input;
import org.axlecause.measurement.MonteCarlo.Spread;
import org.axlecause.measurement.UncertaintyBudget.Component;
import org.axlecause.shared.Recent;
import org.jspecify.annotations.Nullable;

/**
 * Standard uncertainty of an imbalance of the form (high - low) / high. Where the forces are so close or so small that
 * either wheel may be the higher one, or that the higher one is hardly known, it is simulated instead of linearised.
 */
public final class ImbalanceUncertainty {

    private static final int DRAWS = 4_096;
    /** Standard uncertainties by which the forces must differ for the linear way. */
    private static final double CLEARLY_APART = 4;
    /** Relative standard uncertainty of the higher force up to which the linear way holds. */
    private static final double WELL_KNOWN = 0.05;

    private static final int MOST_KEPT = 256;

    /** The latest simulations: a case is judged again with every entry, and its forces stay what they were. */
    private static final Recent<Simulation, MonteCarlo.Result> SIMULATED = new Recent<>(MOST_KEPT);

    private ImbalanceUncertainty() {}

    /**
     * The standard uncertainty of an imbalance read on that tester, with the errors of its two sides taken as
     * independent; null where the tester's accuracy is not known.
     */
    public static @Nullable BigDecimal of(BigDecimal high, BigDecimal low, @Nullable Tester tester) {
        ForceUncertainty ofHigh = ForceUncertainty.of(high, tester);
        ForceUncertainty ofLow = ForceUncertainty.of(low, tester);
        if (ofHigh == null || ofLow == null || high.signum() <= 0) {
            return null;
        }
        return Rounded.uncertainty(of(high.doubleValue(), low.doubleValue(), ofHigh, ofLow));
    }

    /** The same with the uncertainty of each force given. */
    public static double of(double high, double low, ForceUncertainty ofHigh, ForceUncertainty ofLow) {
        return isLinear(high, low, ofHigh.combined(), ofLow.combined())
                ? linear(high, low, ofHigh.combined(), ofLow.combined(), 0)
                : simulated(high, low, ofHigh, ofLow).uncertainty();
    }

    /** Whether linear propagation holds: the forces are clearly apart, and the higher one is well known. */
    public static boolean isLinear(double high, double low, double ofHigh, double ofLow) {
        return isApart(high - low, ofHigh, ofLow) && ofHigh <= WELL_KNOWN * high;
    }

    /** Whether a difference of two forces is so great that it is known which of them is the higher one. */
    static boolean isApart(double difference, double ofHigh, double ofLow) {
        return difference > CLEARLY_APART * Math.hypot(ofHigh, ofLow);
    }

    /**
     * By linear propagation (JCGM 100:2008, 5.2): a scale error common to both sides (correlation 1) cancels.
     *
     * @param high higher force
     * @param low lower force
     * @param ofHigh standard uncertainty of the higher force
     * @param ofLow standard uncertainty of the lower force
     * @param correlation correlation of the two errors
     */
    public static double linear(double high, double low, double ofHigh, double ofLow, double correlation) {
        double byLow = ofLow / high;
        double byHigh = low * ofHigh / (high * high);
        double apart = UncertaintyBudget.of(Component.of(1 / high, ofLow), Component.of(low / (high * high), ofHigh))
                .combined();
        return Math.sqrt(Math.max(0, apart * apart - 2 * correlation * byLow * byHigh));
    }

    /** By simulation (JCGM 101:2008): whichever wheel is the higher one in a draw is the one that is divided by. */
    public static MonteCarlo.Result simulated(
            double high, double low, ForceUncertainty ofHigh, ForceUncertainty ofLow) {
        List<Input> inputs = new ArrayList<>();
        inputs.add(new Input(high, Spread.NORMAL, 0));
        inputs.add(new Input(low, Spread.NORMAL, 0));
        inputs.addAll(ofHigh.errors());
        inputs.addAll(ofLow.errors());
        return simulated(new Simulation(inputs, null), ImbalanceUncertainty::imbalance);
    }

    /** The same for a difference over a base that is known for sure. */
    static MonteCarlo.Result simulatedDifference(
            double difference, double base, ForceUncertainty ofHigh, ForceUncertainty ofLow) {
        List<Input> inputs = new ArrayList<>();
        inputs.add(new Input(difference, Spread.NORMAL, 0));
        inputs.addAll(ofHigh.errors());
        inputs.addAll(ofLow.errors());
        return simulated(
                new Simulation(inputs, base),
                drawn -> Math.abs(drawn[0] + drawn[1] + drawn[2] + drawn[3] - drawn[4] - drawn[5] - drawn[6]) / base);
    }

    private static MonteCarlo.Result simulated(Simulation simulation, ToDoubleFunction<double[]> model) {
        MonteCarlo.Result known = SIMULATED.find(simulation);
        return known == null
                ? SIMULATED.keep(simulation, MonteCarlo.propagate(simulation.inputs(), model, DRAWS))
                : known;
    }

    /**
     * What a simulation depends on.
     *
     * @param inputs the forces and their errors
     * @param base what a difference is divided by; null where the higher force is
     */
    private record Simulation(List<Input> inputs, @Nullable Double base) {

        private Simulation {
            inputs = List.copyOf(inputs);
        }
    }

    private static double imbalance(double[] drawn) {
        double first = Math.max(0, drawn[0] + drawn[2] + drawn[3] + drawn[4]);
        double second = Math.max(0, drawn[1] + drawn[5] + drawn[6] + drawn[7]);
        double top = Math.max(first, second);
        return top == 0 ? 0 : Math.abs(first - second) / top;
    }
}
