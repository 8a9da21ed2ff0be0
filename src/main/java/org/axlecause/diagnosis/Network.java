package org.axlecause.diagnosis;

import java.util.Arrays;
import java.util.List;

/**
 * A noisy-OR network of one group of causes and the evidence that was seen. Evidence that was looked for and is not
 * there has already gone into the causes' odds, because in a noisy-OR it speaks for each cause by itself.
 */
final class Network {

    private static final int LARGEST_SET = 3;
    private static final double WORTH_KEEPING = 1e-4;

    private final int causes;
    private final int signs;
    private final double[] odds;
    private final boolean[] certain;
    private final double[][] missing;
    private final double[] leakMissing;
    private final double[][] together;

    /**
     * @param odds odds of each cause without the seen evidence
     * @param certain causes that are proved
     * @param missing by cause and seen sign, the chance that the cause does not show it
     * @param leakMissing by seen sign, the chance that nothing outside the causes shows it
     * @param together by pair of causes, how many times likelier both are than each by itself; none where they exclude
     *     each other
     */
    Network(double[] odds, boolean[] certain, double[][] missing, double[] leakMissing, double[][] together) {
        this.causes = odds.length;
        this.signs = leakMissing.length;
        this.odds = odds;
        this.certain = certain;
        this.missing = missing;
        this.leakMissing = leakMissing;
        this.together = together;
    }

    /** Weighs every set of up to three causes beside the proved ones; with three proved, of one more. */
    Weighed weigh() {
        int[] free = free();
        int nobody = free.length;
        int proved = causes - free.length;
        int largest = Math.max(1, LARGEST_SET - proved);
        double[] base = leakMissing.clone();
        double[] baseOdds = odds.clone();
        for (int cause = 0; cause < causes; cause++) {
            if (certain[cause]) {
                multiply(base, missing[cause]);
                for (int other : free) {
                    baseOdds[other] *= together[cause][other];
                }
            }
        }
        Sets sets = new Sets(causes, free);
        double[] sums = new double[free.length];
        double total = shown(base);
        sets.add(nobody, nobody, nobody, total);
        double[] one = new double[signs];
        double[] two = new double[signs];
        double[] freeOdds = new double[free.length];
        double[][] freeMissing = new double[free.length][];
        double[][] missingBySign = new double[signs][free.length];
        double[][] ties = new double[free.length][];
        double[] shown = new double[free.length];
        for (int i = 0; i < free.length; i++) {
            freeOdds[i] = baseOdds[free[i]];
            freeMissing[i] = missing[free[i]];
            for (int sign = 0; sign < signs; sign++) {
                missingBySign[sign][i] = freeMissing[i][sign];
            }
            ties[i] = proved == 0 ? together[i] : tiesOf(free[i], free);
        }
        for (int first = 0; first < free.length; first++) {
            double[] firstTies = ties[first];
            product(base, freeMissing[first], one);
            double weightOne = freeOdds[first] * shown(one);
            double withFirst = weightOne;
            sets.add(first, nobody, nobody, weightOne);
            for (int second = first + 1; largest > 1 && second < free.length; second++) {
                double pair = freeOdds[first] * freeOdds[second] * firstTies[second];
                if (pair == 0) {
                    continue;
                }
                product(one, freeMissing[second], two);
                double weightTwo = pair * shown(two);
                double withSecond = weightTwo;
                sets.add(first, second, nobody, weightTwo);
                if (largest > 2) {
                    Arrays.fill(shown, second + 1, free.length, 1);
                    for (int sign = 0; sign < signs; sign++) {
                        multiplyByShown(second + 1, two[sign], missingBySign[sign], shown);
                    }
                    double[] secondTies = ties[second];
                    double least = sets.least();
                    for (int third = second + 1; third < free.length; third++) {
                        double weight = pair * freeOdds[third] * firstTies[third] * secondTies[third] * shown[third];
                        withSecond += weight;
                        sums[third] += weight;
                        if (weight >= least && weight > 0) {
                            sets.add(first, second, third, weight);
                            least = sets.least();
                        }
                    }
                }
                sums[second] += withSecond;
                withFirst += withSecond;
            }
            sums[first] += withFirst;
            total += withFirst;
        }
        double[] marginals = new double[causes];
        Arrays.fill(marginals, 1);
        for (int i = 0; i < free.length; i++) {
            marginals[free[i]] = sums[i] / total;
        }
        return new Weighed(Arrays.stream(marginals).boxed().toList(), sets.kept(total));
    }

    private double[] tiesOf(int cause, int[] others) {
        double[] ties = new double[others.length];
        for (int i = 0; i < ties.length; i++) {
            ties[i] = together[cause][others[i]];
        }
        return ties;
    }

    private int[] free() {
        int[] free = new int[causes];
        int count = 0;
        for (int cause = 0; cause < causes; cause++) {
            if (!certain[cause]) {
                free[count++] = cause;
            }
        }
        return Arrays.copyOf(free, count);
    }

    private void multiply(double[] into, double[] by) {
        for (int sign = 0; sign < signs; sign++) {
            into[sign] *= by[sign];
        }
    }

    private void product(double[] left, double[] right, double[] into) {
        for (int sign = 0; sign < signs; sign++) {
            into[sign] = left[sign] * right[sign];
        }
    }

    private double shown(double[] notShown) {
        double shown = 1;
        for (int sign = 0; sign < signs; sign++) {
            shown *= 1 - notShown[sign];
        }
        return shown;
    }

    /** By third cause, how likely one more sign shows; a plain loop, so that the machine takes several at a time. */
    private static void multiplyByShown(int from, double notShown, double[] missing, double[] shown) {
        for (int third = from; third < shown.length; third++) {
            shown[third] *= 1 - notShown * missing[third];
        }
    }

    /**
     * What the weighing gave.
     *
     * @param marginals probability of each cause
     * @param sets sets of causes beside the proved ones that hold a share worth keeping, with their shares
     */
    record Weighed(List<Double> marginals, WeighedSets sets) {}

    /** Keeps the sets that may hold a share worth keeping. */
    private static final class Sets {

        private final int[] positions;
        private int[] members;
        private double[] weights;
        private int count;
        private double heaviest;
        private double least;

        Sets(int causes, int[] free) {
            positions = Arrays.copyOf(free, free.length + 1);
            positions[free.length] = causes;
            members = new int[6 * causes];
            weights = new double[2 * causes];
        }

        /** What a set must weigh at least to be kept. */
        double least() {
            return least;
        }

        void add(int first, int second, int third, double weight) {
            if (weight > heaviest) {
                heaviest = weight;
                least = heaviest * WORTH_KEEPING;
            } else if (weight < least) {
                return;
            }
            if (count == weights.length) {
                weights = Arrays.copyOf(weights, 2 * count);
                members = Arrays.copyOf(members, 6 * count);
            }
            members[3 * count] = positions[first];
            members[3 * count + 1] = positions[second];
            members[3 * count + 2] = positions[third];
            weights[count++] = weight;
        }

        WeighedSets kept(double total) {
            int size = 0;
            for (int i = 0; i < count; i++) {
                if (weights[i] >= total * WORTH_KEEPING) {
                    weights[size] = weights[i] / total;
                    for (int member = 0; member < 3; member++) {
                        members[3 * size + member] = members[3 * i + member];
                    }
                    size++;
                }
            }
            return new WeighedSets(
                    positions[positions.length - 1], Arrays.copyOf(members, 3 * size), Arrays.copyOf(weights, size));
        }
    }
}
