package org.axlecause.diagnosis;

import java.util.Arrays;
import java.util.List;
import org.axlecause.diagnosis.Groups.Group;
import org.axlecause.diagnosis.Suspects.Suspect;

/**
 * The shares of sets of causes, summed by those members that an answer depends on. A pattern names up to three such
 * members by their digits, from 1 up, the highest in the lowest place. One table serves one question after the other.
 */
final class SharesByPattern {

    private static final int FEW = 12;
    private static final int PLACE = 10;
    private static final int DIGIT = (1 << PLACE) - 1;

    /** How many pairs of digits, each of which may be missing, come before those with this higher digit. */
    private int[] pairs = {0};
    /** How many patterns come before those with this highest digit. */
    private int[] triples = {0};

    private double[] shares = {0};
    private int[] patternOf = {};
    private long[] patterns = new long[256];
    private int count;

    /** Sums the shares of a group's sets by these members, whose digits follow their order. */
    void sum(Group group, List<Suspect> members) {
        WeighedSets sets = group.sets();
        clear(sets.count(), members.size());
        for (int digit = 1; digit <= members.size(); digit++) {
            for (int set : sets.with(members.get(digit - 1).position)) {
                patternOf[set] = patternOf[set] << PLACE | digit;
            }
        }
        double nobody = 0;
        for (int set = 0; set < sets.count(); set++) {
            int pattern = patternOf[set];
            if (pattern == 0) {
                nobody += sets.share(set);
                continue;
            }
            int slot = triples[digit(pattern)] + pairs[digit(rest(pattern))] + rest(rest(pattern));
            if (shares[slot] == 0) {
                note(pattern, slot);
            }
            shares[slot] += sets.share(set);
            patternOf[set] = 0;
        }
        shares[0] = nobody;
        note(0, 0);
        Arrays.sort(patterns, 0, count);
    }

    private void clear(int sets, int digits) {
        for (int at = 0; at < count; at++) {
            shares[(int) patterns[at]] = 0;
        }
        count = 0;
        if (patternOf.length < sets) {
            patternOf = new int[sets];
        }
        if (pairs.length <= digits) {
            makeRoom(Math.max(FEW, digits));
        }
    }

    private void makeRoom(int digits) {
        pairs = new int[digits + 1];
        triples = new int[digits + 1];
        pairs[1] = 1;
        triples[1] = 1;
        for (int digit = 2; digit <= digits; digit++) {
            pairs[digit] = pairs[digit - 1] + digit - 1;
            triples[digit] = triples[digit - 1] + pairs[digit - 1];
        }
        shares = new double[triples[digits] + pairs[digits] + digits];
    }

    private void note(int pattern, int slot) {
        if (count == patterns.length) {
            patterns = Arrays.copyOf(patterns, 2 * count);
        }
        patterns[count++] = (long) pattern << Integer.SIZE | slot;
    }

    /** How many patterns there are. */
    int count() {
        return count;
    }

    /** A pattern; the smallest comes first. */
    int pattern(int at) {
        return (int) (patterns[at] >>> Integer.SIZE);
    }

    double share(int at) {
        return shares[(int) patterns[at]];
    }

    /** The highest digit of a pattern; none in the empty one. */
    static int digit(int pattern) {
        return pattern & DIGIT;
    }

    /** A pattern without its highest digit. */
    static int rest(int pattern) {
        return pattern >>> PLACE;
    }
}
