package org.axlecause.diagnosis;

import java.util.Arrays;
import java.util.List;
import org.axlecause.diagnosis.Groups.Group;
import org.axlecause.diagnosis.Suspects.Suspect;

/**
 * The shares of sets of causes, summed by those members that an answer depends on. A pattern names up to three such
 * members by their digits, from 1 up, the highest in the lowest place. One table serves one question after the other:
 * a pattern lies where its hash says, or in the next free slot.
 */
final class SharesByPattern {

    private static final int PLACE = 10;
    private static final int DIGIT = (1 << PLACE) - 1;
    /** The golden ratio in 32 bits, which scatters patterns that differ in few bits. */
    private static final int SCATTER = 0x9E3779B9;

    private int[] patternIn = {};
    /** By slot the share of its pattern, none in a free one; the last slot is that of the empty pattern. */
    private double[] shares = {0};

    private int[] patternOf = {};
    private long[] patterns = new long[256];
    private int count;

    /** Sums the shares of a group's sets by these members, whose digits follow their order. */
    void sum(Group group, List<Suspect> members) {
        WeighedSets sets = group.sets();
        clear(sets.count());
        for (int digit = 1; digit <= members.size(); digit++) {
            for (int set : sets.with(members.get(digit - 1).position)) {
                patternOf[set] = patternOf[set] << PLACE | digit;
            }
        }
        double[] weights = sets.shares();
        double nobody = 0;
        for (int set = 0; set < weights.length; set++) {
            int pattern = patternOf[set];
            if (pattern == 0) {
                nobody += weights[set];
            } else {
                add(pattern, weights[set]);
                patternOf[set] = 0;
            }
        }
        shares[patternIn.length] = nobody;
        note(0, patternIn.length);
        Arrays.sort(patterns, 0, count);
    }

    private void add(int pattern, double share) {
        int slot = slotOf(pattern);
        if (shares[slot] == 0) {
            patternIn[slot] = pattern;
            note(pattern, slot);
        }
        shares[slot] += share;
    }

    private int slotOf(int pattern) {
        int slot = (pattern * SCATTER) >>> (Integer.numberOfLeadingZeros(patternIn.length) + 1);
        while (shares[slot] != 0 && patternIn[slot] != pattern) {
            slot = (slot + 1) & (patternIn.length - 1);
        }
        return slot;
    }

    private void clear(int sets) {
        for (int at = 0; at < count; at++) {
            shares[(int) patterns[at]] = 0;
        }
        count = 0;
        if (patternOf.length < sets) {
            patternOf = new int[sets];
            patternIn = new int[4 * Integer.highestOneBit(sets)];
            shares = new double[patternIn.length + 1];
        }
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
