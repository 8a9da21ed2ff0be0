package org.axlecause.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The weighing of sets of causes against a textbook example and against counting them out. */
class NetworkTest {

    private static final double[][] NO_TIES = {{1, 1, 1}, {1, 1, 1}, {1, 1, 1}};

    /**
     * Cold, flu and malaria fail to give fever with 0.6, 0.2 and 0.1: the noisy-OR table of Russell and Norvig,
     * Artificial Intelligence, chapter on probabilistic reasoning (from memory). With even odds for each disease the
     * marginals given fever follow from the eight rows of that table: P(fever) = (0 + 0.9 + 0.8 + 0.98 + 0.4 + 0.94 +
     * 0.88 + 0.988) / 8.
     */
    @Test
    void fever_speaks_for_its_three_diseases_as_the_textbook_table_says() {
        double[][] missing = {{0.6}, {0.2}, {0.1}};

        Network.Weighed weighed =
                new Network(new double[] {1, 1, 1}, new boolean[3], missing, new double[] {1}, NO_TIES).weigh();

        double all = 0.9 + 0.8 + 0.98 + 0.4 + 0.94 + 0.88 + 0.988;
        assertThat(weighed.marginals().get(0)).isCloseTo((0.4 + 0.94 + 0.88 + 0.988) / all, within(1e-12));
        assertThat(weighed.marginals().get(1)).isCloseTo((0.8 + 0.98 + 0.88 + 0.988) / all, within(1e-12));
        assertThat(weighed.marginals().get(2)).isCloseTo((0.9 + 0.98 + 0.94 + 0.988) / all, within(1e-12));
    }

    static Stream<Long> seeds() {
        return IntStream.rangeClosed(1, 40).mapToObj(seed -> 20260302L + seed);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void every_set_of_up_to_three_is_counted_exactly_once(long seed) {
        Random random = new Random(seed);
        int causes = 1 + random.nextInt(8);
        int signs = random.nextInt(5);
        double[] odds = random.doubles(causes, 0.001, 2).toArray();
        double[] leaks = random.doubles(signs, 0.5, 0.99).toArray();
        double[][] missing = new double[causes][];
        double[][] together = new double[causes][causes];
        boolean[] certain = new boolean[causes];
        for (int i = 0; i < causes; i++) {
            missing[i] = random.doubles(signs, 0, 1).toArray();
            certain[i] = random.nextInt(6) == 0;
            for (int j = 0; j <= i; j++) {
                double tie = i == j || random.nextInt(3) > 0 ? 1 : random.nextInt(2) * 5;
                together[i][j] = tie;
                together[j][i] = tie;
            }
        }

        Network.Weighed weighed = new Network(odds, certain, missing, leaks, together).weigh();

        double[] expected = countedOut(odds, certain, missing, leaks, together);
        for (int i = 0; i < causes; i++) {
            assertThat(weighed.marginals().get(i))
                    .as("cause %d of %d with seed %d", i, causes, seed)
                    .isCloseTo(expected[i], within(1e-9));
        }
        assertThat(IntStream.range(0, weighed.sets().count())
                        .mapToDouble(weighed.sets()::share)
                        .sum())
                .as("kept shares with seed %d", seed)
                .isBetween(0.98, 1 + 1e-9);
    }

    /** All subsets by bits, those left out that hold more than three causes or fewer than the proved ones. */
    private static double[] countedOut(
            double[] odds, boolean[] certain, double[][] missing, double[] leaks, double[][] together) {
        int causes = odds.length;
        int proved = 0;
        for (boolean one : certain) {
            proved += one ? 1 : 0;
        }
        double[] sums = new double[causes];
        double total = 0;
        for (int set = 0; set < 1 << causes; set++) {
            if (Integer.bitCount(set) - proved > Math.max(1, 3 - proved)) {
                continue;
            }
            double weight = 1;
            for (int i = 0; i < causes; i++) {
                boolean in = (set >> i & 1) == 1;
                if (certain[i] && !in) {
                    weight = 0;
                }
                for (int j = 0; in && j < i; j++) {
                    if ((set >> j & 1) == 1 && !(certain[i] && certain[j])) {
                        weight *= together[i][j];
                    }
                }
                weight *= in && !certain[i] ? odds[i] : 1;
            }
            for (int sign = 0; sign < leaks.length; sign++) {
                double notShown = leaks[sign];
                for (int i = 0; i < causes; i++) {
                    notShown *= (set >> i & 1) == 1 ? missing[i][sign] : 1;
                }
                weight *= 1 - notShown;
            }
            total += weight;
            for (int i = 0; i < causes; i++) {
                sums[i] += (set >> i & 1) == 1 ? weight : 0;
            }
        }
        for (int i = 0; i < causes; i++) {
            sums[i] /= total;
        }
        return sums;
    }
}
