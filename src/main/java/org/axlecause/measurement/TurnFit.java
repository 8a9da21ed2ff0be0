package org.axlecause.measurement;

/**
 * A force while held, as a slow curve of time and the first two harmonics of the wheel's turn, fitted by least squares.
 * The curve is a parabola, or of the third degree where a force still creeps up to its value: what a parabola leaves of
 * such a bend would pass for a swing.
 */
final class TurnFit {

    private static final int PARABOLA = 3;
    private static final int BENT = 4;
    /** Slope of the straight line that fits a curve of the third degree best. */
    private static final double SLOPE_OF_CUBE = 3.0 / 5;

    /** More rows than this add nothing to the fit but time. */
    private static final int ENOUGH_ROWS = 800;

    private final int trend;
    private final double frequency;
    private final double from;
    private final double to;
    private final double middle;
    private final double half;
    private final double[] coefficients;
    private final double mean;
    private final double residual;
    private final double error;
    private final double squares;

    private TurnFit(
            int trend,
            double frequency,
            double from,
            double to,
            double[] coefficients,
            double residual,
            double error,
            double squares) {
        this.trend = trend;
        this.frequency = frequency;
        this.from = from;
        this.to = to;
        this.middle = (from + to) / 2;
        this.half = (to - from) / 2;
        this.coefficients = coefficients;
        this.mean = coefficients[0] + coefficients[2] / 3;
        this.residual = residual;
        this.error = error;
        this.squares = squares;
    }

    /** Fits a signal between those times for a wheel that turns so often a second. */
    static TurnFit of(Signal signal, double from, double to, double frequency) {
        return of(signal, from, to, frequency, ENOUGH_ROWS, PARABOLA);
    }

    /** The same for a force that bends while held. */
    static TurnFit ofBent(Signal signal, double from, double to, double frequency) {
        return of(signal, from, to, frequency, ENOUGH_ROWS, BENT);
    }

    /** The same on about so many samples. */
    static TurnFit of(Signal signal, double from, double to, double frequency, int enough) {
        return of(signal, from, to, frequency, enough, PARABOLA);
    }

    private static TurnFit of(Signal signal, double from, double to, double frequency, int enough, int trend) {
        NormalEquations normal = new NormalEquations(signal, from, to, frequency, enough, trend);
        double[] coefficients = normal.solve();
        double[] columns = new double[trend + NormalEquations.HARMONICS];
        double squares = 0;
        double lagged = 0;
        double before = 0;
        for (int row = 0; row < normal.rows(); row++) {
            double time = normal.columns(row, columns);
            double left = signal.at(time);
            for (int i = 0; i < columns.length; i++) {
                left -= coefficients[i] * columns[i];
            }
            squares += left * left;
            lagged += row == 0 ? 0 : left * before;
            before = left;
        }
        int rows = normal.rows();
        double free = Math.max(1, rows - columns.length);
        double deviation = Math.sqrt(squares / free);
        double correlation = squares == 0 ? 0 : Math.max(0, Math.min(0.99, lagged / squares));
        double effective = Math.max(1, rows * (1 - correlation) / (1 + correlation));
        return new TurnFit(
                trend, frequency, from, to, coefficients, deviation, deviation * Math.sqrt(2 / effective), squares);
    }

    /** Sum of the squares that such a fit would leave, without making it. */
    static double rest(Signal signal, double from, double to, double frequency, int enough) {
        NormalEquations normal = new NormalEquations(signal, from, to, frequency, enough, PARABOLA);
        return normal.rest(normal.solve());
    }

    double frequency() {
        return frequency;
    }

    double turn() {
        return 1 / frequency;
    }

    double from() {
        return from;
    }

    double to() {
        return to;
    }

    /** Mean of the slow curve over the span of the fit. */
    double mean() {
        return mean;
    }

    /** Change of the slow curve per second, by the straight line that fits it best. */
    double slope() {
        return (coefficients[1] + (trend == BENT ? SLOPE_OF_CUBE * coefficients[BENT - 1] : 0)) / half;
    }

    /** Standard error of the slope. */
    double slopeError() {
        return error * Math.sqrt(1.5) / half;
    }

    /** Amplitude of the first or second harmonic in the unit of the signal. */
    double amplitude(int harmonic) {
        return Math.hypot(coefficients[trend + 2 * harmonic - 2], coefficients[trend + 2 * harmonic - 1]);
    }

    /** Standard error of an amplitude. */
    double amplitudeError() {
        return error;
    }

    /** Standard error of the mean. */
    double meanError() {
        return error / Math.sqrt(2);
    }

    /** Standard deviation of what the fit leaves. */
    double residual() {
        return residual;
    }

    /** Sum of the squares that the fit leaves. */
    double squares() {
        return squares;
    }

    double curveAt(double time) {
        double[] columns = new double[coefficients.length];
        NormalEquations.fill(columns, trend, (time - middle) / half, time, frequency);
        double sum = 0;
        for (int i = 0; i < columns.length; i++) {
            sum += coefficients[i] * columns[i];
        }
        return sum;
    }

    /** Highest value of the fitted curve within its span. */
    double highest() {
        double highest = Double.NEGATIVE_INFINITY;
        double step = turn() / 200;
        for (double time = from; time <= to; time += step) {
            highest = Math.max(highest, curveAt(time));
        }
        return highest;
    }

    /**
     * Swing of the fitted curve within its last turn over its highest point there: (highest - lowest) / highest.
     *
     * @param base what is added to the fitted force to make it the force as read
     */
    double swingOfLastTurn(double base) {
        double highest = Double.NEGATIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= 200; i++) {
            double value = curveAt(to - turn() * i / 200);
            highest = Math.max(highest, value);
            lowest = Math.min(lowest, value);
        }
        return (highest - lowest) / (base + highest);
    }

    /** Difference between the highest and lowest point of the harmonics alone. */
    double range() {
        double highest = Double.NEGATIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < 400; i++) {
            double swing = swingAt(turn() * i / 400);
            highest = Math.max(highest, swing);
            lowest = Math.min(lowest, swing);
        }
        return highest - lowest;
    }

    /** Highest point of the harmonics alone. */
    double crest() {
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < 400; i++) {
            highest = Math.max(highest, swingAt(turn() * i / 400));
        }
        return highest;
    }

    private double swingAt(double time) {
        double angle = 2 * Math.PI * frequency * time;
        double cosine = Math.cos(angle);
        double sine = Math.sin(angle);
        return coefficients[trend] * cosine
                + coefficients[trend + 1] * sine
                + coefficients[trend + 2] * (cosine * cosine - sine * sine)
                + coefficients[trend + 3] * 2 * sine * cosine;
    }

    /** Factor of the swing on the mean force at any time of the test: the rollers turn evenly. */
    double factorAt(double time) {
        return mean == 0 ? 1 : Math.max(0.1, 1 + swingAt(time) / mean);
    }
}
