package org.axlecause.diagnosis;

import org.jspecify.annotations.Nullable;

/** Sets of up to three causes of a group beside the proved ones, with the probability of exactly this set. */
final class WeighedSets {

    /** What a group has that was not weighed as one. */
    static final WeighedSets NONE = new WeighedSets(0, new int[0], new double[0]);

    private static final int LARGEST = 3;

    private final int causes;
    private final int[] members;
    private final double[] shares;
    private int @Nullable [][] byMember;

    /**
     * @param causes how many causes the group has
     * @param members by set the positions of its members in the group, sorted; the size of the group where there is none
     * @param shares by set its probability
     */
    WeighedSets(int causes, int[] members, double[] shares) {
        this.causes = causes;
        this.members = members;
        this.shares = shares;
    }

    /** The sets that hold the member at this position. */
    int[] with(int position) {
        if (byMember == null) {
            byMember = byMember();
        }
        return byMember[position];
    }

    private int[][] byMember() {
        int[] sizes = new int[causes + 1];
        for (int member : members) {
            sizes[member]++;
        }
        int[][] sets = new int[causes + 1][];
        for (int member = 0; member < sets.length; member++) {
            sets[member] = new int[sizes[member]];
        }
        for (int at = members.length - 1; at >= 0; at--) {
            sets[members[at]][--sizes[members[at]]] = at / LARGEST;
        }
        return sets;
    }

    int count() {
        return shares.length;
    }

    int first(int set) {
        return members[LARGEST * set];
    }

    int second(int set) {
        return members[LARGEST * set + 1];
    }

    int third(int set) {
        return members[LARGEST * set + 2];
    }

    /** By set its probability; to be read only. */
    double[] shares() {
        return shares;
    }

    double share(int set) {
        return shares[set];
    }
}
