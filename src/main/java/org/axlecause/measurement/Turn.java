package org.axlecause.measurement;

import java.math.BigDecimal;
import org.axlecause.facts.Tester;
import org.jspecify.annotations.Nullable;

/**
 * How often a second the wheels turn.
 *
 * @param frequency turns a second
 * @param found whether the forces themselves show it
 * @param ambiguous whether half or double of it would explain the forces as well
 */
record Turn(double frequency, boolean found, boolean ambiguous) {

    private static final int ROWS_OF_SEARCH = 160;
    private static final int GRID = 48;
    private static final int REFINEMENTS = 14;
    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    private static final double SIGNIFICANT = 6;
    private static final double TURNS_OF_SEARCH = 8;
    /** Fewer turns than these in the hold can't be told from a slow change. */
    private static final double FEWEST_TURNS = 1.6;

    private static final double AS_GOOD = 1.1;
    /** Change of a force over the hold, as a share of it, up to which its turns are looked for. */
    private static final double STEADY = 0.05;

    private static final double TINY = 1e-4;
    /** Time that forces need to follow a pedal that has come to rest, seconds. */
    private static final double SETTLING = 0.5;

    /** What the tester's speed and a usual tyre make of it, before a force has been looked at. */
    static Turn usual(@Nullable Tester tester, TradeValues trade) {
        BigDecimal speed = tester == null ? null : tester.speed();
        double rollers = speed == null
                ? (trade.of(TradeValueCode.SLOWEST_ROLLERS) + trade.of(TradeValueCode.FASTEST_ROLLERS)) / 2
                : speed.doubleValue();
        return new Turn(rollers / (2 * Math.PI * trade.of(TradeValueCode.USUAL_TYRE_RADIUS)), false, false);
    }

    /** Looks for the turn in both forces while held. */
    static Turn find(
            Signal left, Signal right, double holdStart, double holdEnd, @Nullable Tester tester, TradeValues trade) {
        Turn usual = usual(tester, trade);
        BigDecimal speed = tester == null ? null : tester.speed();
        double slowest = speed == null ? trade.of(TradeValueCode.SLOWEST_ROLLERS) : speed.doubleValue();
        double quickest = speed == null ? trade.of(TradeValueCode.FASTEST_ROLLERS) : speed.doubleValue();
        double lowest = slowest / (2 * Math.PI * trade.of(TradeValueCode.LARGEST_TYRE_RADIUS));
        double highest = quickest / (2 * Math.PI * trade.of(TradeValueCode.SMALLEST_TYRE_RADIUS));
        double from = Math.max(
                Math.min(holdStart + SETTLING, holdEnd - 2 / usual.frequency()),
                holdEnd - TURNS_OF_SEARCH / usual.frequency());
        from = Math.max(holdStart, from);
        double possible = lowest;
        lowest = Math.max(lowest, FEWEST_TURNS / (holdEnd - from));
        if (lowest >= highest) {
            return usual;
        }
        Search clearest = null;
        double best = usual.frequency();
        double clarity = SIGNIFICANT;
        for (Signal wheel : new Signal[] {left, right}) {
            Search search = new Search(wheel, from, holdEnd);
            double frequency = search.best(lowest, highest);
            double found = search.clarity(frequency);
            if (found > clarity && search.isSteady(frequency)) {
                clarity = found;
                best = frequency;
                clearest = search;
            }
        }
        if (clearest == null) {
            return usual;
        }
        boolean ambiguous = best / 2 > possible && best / 2 <= lowest && !clearest.hasSecond(best);
        double fastest = best;
        double rest = clearest.rest(best);
        for (double other : new double[] {best / 2, best * 2}) {
            if (other > lowest && other < highest) {
                double near = clearest.best(Math.max(lowest, other * 0.95), Math.min(highest, other * 1.05));
                if (clearest.rest(near) <= AS_GOOD * rest + TINY * clearest.swing(best)) {
                    ambiguous = true;
                    fastest = Math.max(fastest, near);
                }
            }
        }
        return new Turn(fastest, true, ambiguous);
    }

    double length() {
        return 1 / frequency;
    }

    /** Fits one wheel for many turns. */
    private record Search(Signal wheel, double from, double to) {

        private TurnFit fit(double frequency) {
            return TurnFit.of(wheel, from, to, frequency, ROWS_OF_SEARCH);
        }

        /** Whether the force swings twice a turn as well, which half of the turns could not explain. */
        boolean hasSecond(double frequency) {
            TurnFit fit = fit(frequency);
            return fit.amplitude(2) > Math.max(SIGNIFICANT / 2 * fit.amplitudeError(), TINY * Math.abs(fit.mean()));
        }

        /** Whether the force neither rises nor falls so much that its bend could pass for a swing. */
        boolean isSteady(double frequency) {
            double first = wheel.mean(from, from + 1 / frequency);
            double last = wheel.mean(to - 1 / frequency, to);
            return Math.abs(first - last) <= STEADY * Math.max(Math.abs(first), Math.abs(last));
        }

        double rest(double frequency) {
            return TurnFit.rest(wheel, from, to, frequency, ROWS_OF_SEARCH);
        }

        double swing(double frequency) {
            TurnFit fit = fit(frequency);
            return ROWS_OF_SEARCH * Math.pow(Math.max(fit.amplitude(1), fit.amplitude(2)), 2);
        }

        /** Largest harmonic in standard errors. */
        double clarity(double frequency) {
            TurnFit fit = fit(frequency);
            double error = Math.max(fit.amplitudeError(), TINY * Math.abs(fit.mean()));
            return error == 0 ? 0 : Math.max(fit.amplitude(1), fit.amplitude(2)) / error;
        }

        double best(double lowest, double highest) {
            double best = lowest;
            double least = Double.POSITIVE_INFINITY;
            double step = (highest - lowest) / GRID;
            for (int i = 0; i <= GRID; i++) {
                double rest = rest(lowest + i * step);
                if (rest < least) {
                    least = rest;
                    best = lowest + i * step;
                }
            }
            return refined(Math.max(lowest, best - step), Math.min(highest, best + step));
        }

        private double refined(double from, double to) {
            double low = from;
            double high = to;
            double first = high - GOLDEN * (high - low);
            double second = low + GOLDEN * (high - low);
            double atFirst = rest(first);
            double atSecond = rest(second);
            for (int i = 0; i < REFINEMENTS; i++) {
                if (atFirst < atSecond) {
                    high = second;
                    second = first;
                    atSecond = atFirst;
                    first = high - GOLDEN * (high - low);
                    atFirst = rest(first);
                } else {
                    low = first;
                    first = second;
                    atFirst = atSecond;
                    second = low + GOLDEN * (high - low);
                    atSecond = rest(second);
                }
            }
            return (low + high) / 2;
        }
    }
}
