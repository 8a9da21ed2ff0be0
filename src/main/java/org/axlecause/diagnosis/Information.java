package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.axlecause.diagnosis.Groups.Group;
import org.axlecause.diagnosis.Suspects.Suspect;
import org.jspecify.annotations.Nullable;

/**
 * How many bits an answer is expected to tell about the causes of a group: the entropy of the answers less the entropy
 * that is left once the causes are known. One answer comes out: one of the signs, or none of them.
 */
final class Information {

    private static final double LN2 = Math.log(2);

    private final Possibilities possibilities;
    private final Suspects suspects;
    private final SharesByPattern shares = new SharesByPattern();
    /** By candidate, while a question is prepared. */
    private final double[] @Nullable [] rows;
    /** Of the candidates that have a row. */
    private final int[] numbers;

    /** Rows of the last question, which serve the next one as well; some are longer than it needs. */
    private final List<double[]> spare = new ArrayList<>();

    private final List<Suspect> linked = new ArrayList<>();
    private final List<double[]> missing = new ArrayList<>();
    private double[] leakMissing = {};

    Information(Possibilities possibilities, Suspects suspects) {
        this.possibilities = possibilities;
        this.suspects = suspects;
        this.rows = new double[possibilities.candidates().size()][];
        this.numbers = new int[rows.length];
    }

    /** Prepares what the causes would do to signs that nobody has looked for yet. */
    void ask(int[] open) {
        linked.clear();
        missing.clear();
        leakMissing = new double[open.length];
        int count = 0;
        for (int sign = 0; sign < open.length; sign++) {
            leakMissing[sign] = possibilities.leakMissing(open[sign]);
            for (Possibilities.Showing showing : possibilities.showing(open[sign])) {
                Suspect suspect = suspects.of(showing.candidate());
                double strength = suspect == null ? 0 : suspects.ifLookedFor(suspect, showing.effect());
                if (suspect != null && strength > 0) {
                    double[] row = rows[suspect.number];
                    if (row == null) {
                        row = certainlyMissing(count, open.length);
                        rows[suspect.number] = row;
                        numbers[count++] = suspect.number;
                    }
                    row[sign] *= 1 - strength;
                }
            }
        }
        Arrays.sort(numbers, 0, count);
        for (int at = 0; at < count; at++) {
            double[] row = rows[numbers[at]];
            Suspect suspect = suspects.of(numbers[at]);
            if (row != null && suspect != null) {
                linked.add(suspect);
                missing.add(row);
            }
            rows[numbers[at]] = null;
        }
    }

    private double[] certainlyMissing(int number, int signs) {
        if (number == spare.size() || spare.get(number).length < signs) {
            double[] longer = new double[signs];
            if (number == spare.size()) {
                spare.add(longer);
            } else {
                spare.set(number, longer);
            }
        }
        double[] row = spare.get(number);
        Arrays.fill(row, 0, signs, 1);
        return row;
    }

    /** Bits that the answer tells about a group; a member of no set that was kept changes none of them. */
    double about(Group group) {
        List<Suspect> members = new ArrayList<>();
        List<double[]> own = new ArrayList<>();
        boolean tells = false;
        for (int i = 0; i < linked.size(); i++) {
            Suspect suspect = linked.get(i);
            if (!suspect.certain && suspect.group == group.number()) {
                tells = true;
                if (group.sets().with(suspect.position).length > 0) {
                    members.add(suspect);
                    own.add(missing.get(i));
                }
            }
        }
        if (!tells) {
            return 0;
        }
        shares.sum(group, members);
        return expected(own, missingOthers(group));
    }

    /** By sign the chance that neither the outside nor causes beyond the group or proved ones show it. */
    private double[] missingOthers(Group group) {
        double[] base = leakMissing.clone();
        for (int i = 0; i < linked.size(); i++) {
            Suspect suspect = linked.get(i);
            double[] row = missing.get(i);
            if (suspect.certain) {
                for (int sign = 0; sign < base.length; sign++) {
                    base[sign] *= row[sign];
                }
            } else if (suspect.group != group.number()) {
                for (int sign = 0; sign < base.length; sign++) {
                    base[sign] *= 1 - suspect.probability * (1 - row[sign]);
                }
            }
        }
        return base;
    }

    private double expected(List<double[]> own, double[] base) {
        double[] answers = new double[base.length + 1];
        double[] given = new double[base.length + 1];
        double leftOver = 0;
        double total = 0;
        for (int at = 0; at < shares.count(); at++) {
            double share = shares.share(at);
            answersGiven(shares.pattern(at), own, base, given);
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

    private static void answersGiven(int pattern, List<double[]> own, double[] base, double[] given) {
        System.arraycopy(base, 0, given, 0, base.length);
        for (int rest = pattern; rest > 0; rest = SharesByPattern.rest(rest)) {
            double[] row = own.get(SharesByPattern.digit(rest) - 1);
            for (int sign = 0; sign < base.length; sign++) {
                given[sign] *= row[sign];
            }
        }
        double none = 1;
        double sum = 0;
        for (int sign = 0; sign < base.length; sign++) {
            none *= given[sign];
            given[sign] = 1 - given[sign];
            sum += given[sign];
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
