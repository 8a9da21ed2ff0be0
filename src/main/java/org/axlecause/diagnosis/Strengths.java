package org.axlecause.diagnosis;

import java.util.Arrays;

/** By sign, in the order of their numbers, how strongly one cause shows it; few signs each, told one by one. */
final class Strengths {

    private static final int FEW = 4;

    private int[] signs = {};
    private double[] values = {};
    private int count;

    /** Notes the strength at a sign; what was noted there before no longer holds. */
    void put(int sign, double strength) {
        int at = Arrays.binarySearch(signs, 0, count, sign);
        if (at < 0) {
            at = -at - 1;
            if (count == signs.length) {
                signs = Arrays.copyOf(signs, Math.max(FEW, 2 * count));
                values = Arrays.copyOf(values, signs.length);
            }
            System.arraycopy(signs, at, signs, at + 1, count - at);
            System.arraycopy(values, at, values, at + 1, count - at);
            signs[at] = sign;
            count++;
        }
        values[at] = strength;
    }

    /** Strength at a sign; none where nothing was noted. */
    double of(int sign) {
        int at = Arrays.binarySearch(signs, 0, count, sign);
        return at < 0 ? 0 : values[at];
    }

    int count() {
        return count;
    }

    boolean isEmpty() {
        return count == 0;
    }

    /** Number of the sign at this position. */
    int sign(int at) {
        return signs[at];
    }

    double value(int at) {
        return values[at];
    }
}
