package org.axlecause.diagnosis;

import java.util.Arrays;
import org.axlecause.diagnosis.Groups.Group;

/**
 * The shares of sets of causes, summed by those members that an answer depends on. A pattern names up to three such
 * members as digits; members are sorted, so the digits are too.
 */
final class SharesByPattern {

    private static final int SPREAD = 0x9E3779B1;
    private static final int UPPER_BITS = 7;

    private final int[] slots;
    private int[] patterns = new int[16];
    private double[] shares = new double[16];
    private int count;

    /**
     * @param digits by position in the group the digit of a member, none for one that the answer does not depend on; one
     *     longer than the group
     * @param side one more than there are digits
     */
    SharesByPattern(Group group, int[] digits, int side) {
        int nobody = digits.length - 1;
        slots = new int[Integer.highestOneBit(group.sets().size() + 1) * 4];
        add(0, 0);
        for (Network.WeighedSet set : group.sets()) {
            int pattern = digits[set.first() < 0 ? nobody : set.first()];
            pattern = with(digits[set.second() < 0 ? nobody : set.second()], pattern, side);
            pattern = with(digits[set.third() < 0 ? nobody : set.third()], pattern, side);
            if (pattern == 0) {
                shares[0] += set.share();
            } else {
                add(pattern, set.share());
            }
        }
        sort();
    }

    private static int with(int digit, int pattern, int side) {
        return digit == 0 ? pattern : pattern * side + digit;
    }

    private void add(int pattern, double share) {
        int slot = ((pattern * SPREAD) >>> UPPER_BITS) & (slots.length - 1);
        while (slots[slot] != 0 && patterns[slots[slot] - 1] != pattern) {
            slot = (slot + 1) & (slots.length - 1);
        }
        if (slots[slot] == 0) {
            if (count == patterns.length) {
                patterns = Arrays.copyOf(patterns, 2 * count);
                shares = Arrays.copyOf(shares, 2 * count);
            }
            patterns[count] = pattern;
            slots[slot] = ++count;
        }
        shares[slots[slot] - 1] += share;
    }

    /** Smallest pattern first. */
    private void sort() {
        long[] order = new long[count];
        for (int at = 0; at < count; at++) {
            order[at] = (long) patterns[at] << Integer.SIZE | at;
        }
        Arrays.sort(order);
        double[] unsorted = shares;
        shares = new double[count];
        for (int at = 0; at < count; at++) {
            patterns[at] = (int) (order[at] >>> Integer.SIZE);
            shares[at] = unsorted[(int) order[at]];
        }
    }

    int count() {
        return count;
    }

    int pattern(int at) {
        return patterns[at];
    }

    double share(int at) {
        return shares[at];
    }
}
