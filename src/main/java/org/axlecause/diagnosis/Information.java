package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.diagnosis.Groups.Group;
import org.axlecause.diagnosis.Suspects.Suspect;

/**
 * How many bits an answer is expected to tell about the causes of a group: the entropy of the answers less the entropy
 * that is left once the causes are known. One answer comes out: one of the signs, or none of them.
 */
final class Information {

    private static final double LN2 = Math.log(2);

    private Information() {}

    static double of(List<Sign> open, Group group, Suspects suspects, CauseModel model) {
        int signs = open.size();
        List<Suspect> members = group.members();
        int[] local = new int[members.size()];
        Arrays.fill(local, -1);
        List<double[]> missing = new ArrayList<>();
        double[] base = new double[signs];
        for (int sign = 0; sign < signs; sign++) {
            base[sign] = 1 - model.leak(open.get(sign));
        }
        for (Map.Entry<Suspect, double[]> linked : suspects.missing(open).entrySet()) {
            Suspect suspect = linked.getKey();
            double[] row = linked.getValue();
            int at = Collections.binarySearch(members, suspect);
            if (suspect.certain) {
                for (int sign = 0; sign < signs; sign++) {
                    base[sign] *= row[sign];
                }
            } else if (at < 0) {
                for (int sign = 0; sign < signs; sign++) {
                    base[sign] *= 1 - suspect.probability * (1 - row[sign]);
                }
            } else {
                local[at] = missing.size();
                missing.add(row);
            }
        }
        return missing.isEmpty() ? 0 : expected(group, local, missing, base);
    }

    private static double expected(Group group, int[] local, List<double[]> missing, double[] base) {
        int side = missing.size() + 1;
        TreeMap<Integer, double[]> shares = new TreeMap<>();
        for (Network.WeighedSet set : group.sets()) {
            shares.computeIfAbsent(pattern(set, local, side), pattern -> new double[1])[0] += set.share();
        }
        double[] answers = new double[base.length + 1];
        double[] given = new double[base.length + 1];
        double leftOver = 0;
        double total = 0;
        for (Map.Entry<Integer, double[]> pattern : shares.entrySet()) {
            double share = pattern.getValue()[0];
            answersGiven(pattern.getKey(), side, missing, base, given);
            total += share;
            leftOver += share * entropy(given);
            for (int answer = 0; answer < answers.length; answer++) {
                answers[answer] += share * given[answer];
            }
        }
        if (total <= 0) {
            return 0;
        }
        for (int answer = 0; answer < answers.length; answer++) {
            answers[answer] /= total;
        }
        return Math.max(0, entropy(answers) - leftOver / total);
    }

    /** Members of the set that the answers depend on, as three digits; members are sorted, so the digits are too. */
    private static int pattern(Network.WeighedSet set, int[] local, int side) {
        int pattern = 0;
        if (set.first() >= 0 && local[set.first()] >= 0) {
            pattern = local[set.first()] + 1;
        }
        if (set.second() >= 0 && local[set.second()] >= 0) {
            pattern = pattern * side + local[set.second()] + 1;
        }
        if (set.third() >= 0 && local[set.third()] >= 0) {
            pattern = pattern * side + local[set.third()] + 1;
        }
        return pattern;
    }

    private static void answersGiven(int pattern, int side, List<double[]> missing, double[] base, double[] given) {
        double none = 1;
        double sum = 0;
        for (int sign = 0; sign < base.length; sign++) {
            double miss = base[sign];
            for (int rest = pattern; rest > 0; rest /= side) {
                int member = rest % side - 1;
                if (member >= 0) {
                    miss *= missing.get(member)[sign];
                }
            }
            none *= miss;
            sum += 1 - miss;
            given[sign] = 1 - miss;
        }
        given[base.length] = none;
        for (int sign = 0; sign < base.length; sign++) {
            given[sign] = sum > 0 ? (1 - none) * given[sign] / sum : 0;
        }
    }

    private static double entropy(double[] probabilities) {
        double entropy = 0;
        for (double probability : probabilities) {
            if (probability > 0) {
                entropy -= probability * Math.log(probability);
            }
        }
        return entropy / LN2;
    }
}
