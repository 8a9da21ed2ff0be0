package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.axlecause.diagnosis.Groups.Group;
import org.axlecause.diagnosis.Suspects.Suspect;

/**
 * How many bits an answer is expected to tell about the causes of a group: the entropy of the answers less the entropy
 * that is left once the causes are known. One answer comes out: one of the signs, or none of them.
 */
final class Information {

    private static final double LN2 = Math.log(2);

    private final int signs;
    private final double[] leakMissing;
    private final List<Suspect> linked = new ArrayList<>();
    private final List<double[]> missing = new ArrayList<>();

    /** Prepares what the causes would do to signs that nobody has looked for yet. */
    Information(int[] open, Possibilities possibilities, Suspects suspects, CauseModel model) {
        this.signs = open.length;
        this.leakMissing = new double[signs];
        double[][] rows = new double[possibilities.candidates().size()][];
        for (int sign = 0; sign < signs; sign++) {
            leakMissing[sign] = 1 - model.leak(possibilities.signs().get(open[sign]));
            for (Possibilities.Showing showing : possibilities.showing(open[sign])) {
                Suspect suspect = suspects.of(showing.candidate());
                double strength = suspect == null ? 0 : suspects.ifLookedFor(suspect, showing.effect());
                if (suspect != null && strength > 0) {
                    double[] row = rows[suspect.number];
                    if (row == null) {
                        row = certainlyMissing();
                        rows[suspect.number] = row;
                    }
                    row[sign] *= 1 - strength;
                }
            }
        }
        for (int number = 0; number < rows.length; number++) {
            Suspect suspect = rows[number] == null ? null : suspects.of(number);
            if (suspect != null) {
                linked.add(suspect);
                missing.add(rows[number]);
            }
        }
    }

    private double[] certainlyMissing() {
        double[] row = new double[signs];
        Arrays.fill(row, 1);
        return row;
    }

    /** Bits that the answer tells about a group. */
    double about(Group group) {
        int[] digits = new int[group.members().size() + 1];
        List<double[]> own = new ArrayList<>();
        for (int i = 0; i < linked.size(); i++) {
            Suspect suspect = linked.get(i);
            if (!suspect.certain && suspect.group == group.number()) {
                own.add(missing.get(i));
                digits[suspect.position] = own.size();
            }
        }
        return own.isEmpty() ? 0 : expected(group, digits, own, missingOthers(group));
    }

    /** By sign the chance that neither the outside nor causes beyond the group or proved ones show it. */
    private double[] missingOthers(Group group) {
        double[] base = leakMissing.clone();
        for (int i = 0; i < linked.size(); i++) {
            Suspect suspect = linked.get(i);
            double[] row = missing.get(i);
            if (suspect.certain) {
                for (int sign = 0; sign < signs; sign++) {
                    base[sign] *= row[sign];
                }
            } else if (suspect.group != group.number()) {
                for (int sign = 0; sign < signs; sign++) {
                    base[sign] *= 1 - suspect.probability * (1 - row[sign]);
                }
            }
        }
        return base;
    }

    private double expected(Group group, int[] digits, List<double[]> own, double[] base) {
        int side = own.size() + 1;
        SharesByPattern shares = new SharesByPattern(group, digits, side);
        double[] answers = new double[signs + 1];
        double[] given = new double[signs + 1];
        double leftOver = 0;
        double total = 0;
        for (int at = 0; at < shares.count(); at++) {
            double share = shares.share(at);
            answersGiven(shares.pattern(at), side, own, base, given);
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

    private static void answersGiven(int pattern, int side, List<double[]> own, double[] base, double[] given) {
        double none = 1;
        double sum = 0;
        for (int sign = 0; sign < base.length; sign++) {
            double miss = base[sign];
            for (int rest = pattern; rest > 0; rest /= side) {
                int member = rest % side - 1;
                if (member >= 0) {
                    miss *= own.get(member)[sign];
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
