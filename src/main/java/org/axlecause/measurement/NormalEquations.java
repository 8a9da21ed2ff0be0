package org.axlecause.measurement;

import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;

/**
 * Normal equations of a slow curve and the first two harmonics of a wheel's turn; the signal is taken about its mean so
 * that no digits are lost.
 */
final class NormalEquations {

    static final int HARMONICS = 4;

    private final Signal signal;
    private final int first;
    private final int stride;
    private final double middle;
    private final double half;
    private final double frequency;
    private final int trend;
    private final double[][] left;
    private final double[] right;
    private final double offset;
    private final int rows;
    private double squares;
    private double sum;

    NormalEquations(Signal signal, double from, double to, double frequency, int enough, int trend) {
        int width = trend + HARMONICS;
        this.trend = trend;
        this.left = new double[width][width];
        this.right = new double[width];
        this.signal = signal;
        this.first = signal.from(from);
        int last = signal.to(to);
        this.stride = Math.max(1, (last - first) / enough);
        this.rows = (last - first) / stride + 1;
        this.middle = (from + to) / 2;
        this.half = (to - from) / 2;
        this.frequency = frequency;
        this.offset = signal.mean(from, to);
        double[] columns = new double[width];
        for (int row = 0; row < rows; row++) {
            columns(row, columns);
            double value = signal.value(first + row * stride) - offset;
            squares += value * value;
            sum += value;
            for (int i = 0; i < width; i++) {
                right[i] += columns[i] * value;
                for (int j = 0; j <= i; j++) {
                    left[i][j] += columns[i] * columns[j];
                }
            }
        }
        for (int i = 0; i < width; i++) {
            for (int j = i + 1; j < width; j++) {
                left[i][j] = left[j][i];
            }
        }
    }

    /** Fills in the columns of a row and answers its time. */
    double columns(int row, double[] columns) {
        double time = signal.time(first + row * stride);
        fill(columns, trend, (time - middle) / half, time, frequency);
        return time;
    }

    /** Coefficients with the mean put back. */
    double[] solve() {
        double[] solved = new QRDecomposition(MatrixUtils.createRealMatrix(left))
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
        solved[0] += offset;
        return solved;
    }

    static void fill(double[] columns, int trend, double place, double time, double frequency) {
        double power = 1;
        for (int i = 0; i < trend; i++) {
            columns[i] = power;
            power *= place;
        }
        double angle = 2 * Math.PI * frequency * time;
        double cosine = Math.cos(angle);
        double sine = Math.sin(angle);
        columns[trend] = cosine;
        columns[trend + 1] = sine;
        columns[trend + 2] = cosine * cosine - sine * sine;
        columns[trend + 3] = 2 * sine * cosine;
    }

    int rows() {
        return rows;
    }

    /** Sum of the squares that the solution would leave. */
    double rest(double[] coefficients) {
        double rest = squares;
        for (int i = 0; i < coefficients.length; i++) {
            rest -= coefficients[i] * right[i];
        }
        return Math.max(0, rest + offset * sum);
    }
}
