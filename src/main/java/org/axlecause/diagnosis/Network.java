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
        Sets sets = new Sets(2 * causes);
        double[] sums = new double[causes];
        double total = shown(base);
        sets.add(-1, -1, -1, total);
        double[] one = new double[signs];
        double[] two = new double[signs];
        double[] freeOdds = new double[free.length];
        double[] firstTies = new double[free.length];
        double[][] freeMissing = new double[free.length][];
        for (int i = 0; i < free.length; i++) {
            freeOdds[i] = baseOdds[free[i]];
            freeMissing[i] = missing[free[i]];
        }
        for (int i = 0; i < free.length; i++) {
            int first = free[i];
            product(base, missing[first], one);
            double weightOne = baseOdds[first] * shown(one);
            double withFirst = weightOne;
            sets.add(first, -1, -1, weightOne);
            for (int k = i + 1; k < free.length; k++) {
                firstTies[k] = together[first][free[k]];
            }
            for (int j = i + 1; largest > 1 && j < free.length; j++) {
                int second = free[j];
                double pair = baseOdds[first] * baseOdds[second] * together[first][second];
                if (pair == 0) {
                    continue;
                }
                product(one, missing[second], two);
                double weightTwo = pair * shown(two);
                double withSecond = weightTwo;
                sets.add(first, second, -1, weightTwo);
                double[] secondTies = together[second];
                for (int k = j + 1; largest > 2 && k < free.length; k++) {
                    int third = free[k];
                    double weight = pair * freeOdds[k] * firstTies[k] * secondTies[third];
                    if (weight != 0) {
                        weight *= shown(two, freeMissing[k]);
                        withSecond += weight;
                        sums[third] += weight;
                        if (sets.mayKeep(weight)) {
                            sets.add(first, second, third, weight);
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
        for (int cause = 0; cause < causes; cause++) {
            marginals[cause] = certain[cause] ? 1 : sums[cause] / total;
        }
        return new Weighed(Arrays.stream(marginals).boxed().toList(), sets.kept(total));
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

    private double shown(double[] notShown, double[] by) {
        if (notShown.length == 1) {
            return 1 - notShown[0] * by[0];
        }
        double shown = 1;
        for (int sign = 0; sign < notShown.length; sign++) {
            shown *= 1 - notShown[sign] * by[sign];
        }
        return shown;
    }

    /**
     * What the weighing gave.
     *
     * @param marginals probability of each cause
     * @param sets sets of causes beside the proved ones that hold a share worth keeping, with their shares
     */
    record Weighed(List<Double> marginals, List<WeighedSet> sets) {}

    /**
     * A set of causes beside the proved ones.
     *
     * @param first index of a cause, or −1
     * @param second index of a cause, or −1
     * @param third index of a cause, or −1
     * @param share probability of exactly this set
     */
    record WeighedSet(int first, int second, int third, double share) {}

    /** Keeps the sets that may hold a share worth keeping. */
    private static final class Sets {

        private int[] members;
        private double[] weights;
        private int count;
        private double heaviest;
        private double least;

        Sets(int expected) {
            members = new int[3 * expected];
            weights = new double[expected];
        }

        boolean mayKeep(double weight) {
            return weight >= least;
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
            members[3 * count] = first;
            members[3 * count + 1] = second;
            members[3 * count + 2] = third;
            weights[count++] = weight;
        }

        List<WeighedSet> kept(double total) {
            WeighedSet[] kept = new WeighedSet[count];
            int size = 0;
            for (int i = 0; i < count; i++) {
                if (weights[i] >= total * WORTH_KEEPING) {
                    kept[size++] =
                            new WeighedSet(members[3 * i], members[3 * i + 1], members[3 * i + 2], weights[i] / total);
                }
            }
            return Arrays.asList(Arrays.copyOf(kept, size));
        }
    }
}
