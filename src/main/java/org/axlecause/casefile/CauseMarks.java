package org.axlecause.casefile;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Marks that make distinct cases countable by adding: of all causes of a case that are alike in a choice of members,
 * exactly one bears the mark of that choice. To count cases by code and axle, add up what bears the mark of code and axle.
 */
public final class CauseMarks {

    /** Told apart by the code of the cause. */
    public static final int CODE = 1;
    /** Told apart by the axle. */
    public static final int AXLE = 2;
    /** Told apart by the side. */
    public static final int SIDE = 4;
    /** Told apart by root and contributing. */
    public static final int ROLE = 8;

    static final int CHOICES = 16;
    /** Every mark. */
    static final int ALL = (1 << CHOICES) - 1;

    private CauseMarks() {}

    /** The causes of one case with their marks, in their own order. */
    static List<Countable> marked(Collection<Countable> causes) {
        Set<String> taken = new HashSet<>();
        return causes.stream()
                .sorted()
                .distinct()
                .map(cause -> Countable.cause(
                        cause.code(), cause.axle(), cause.side(), cause.standing(), marks(cause, taken)))
                .toList();
    }

    private static int marks(Countable cause, Set<String> taken) {
        int marks = 0;
        for (int choice = 0; choice < CHOICES; choice++) {
            String alike = choice
                    + ((choice & CODE) == 0 ? "" : " c " + cause.code())
                    + ((choice & AXLE) == 0 ? "" : " a " + cause.axle())
                    + ((choice & SIDE) == 0 ? "" : " s " + cause.side())
                    + ((choice & ROLE) == 0 ? "" : " r " + cause.standing());
            marks |= taken.add(alike) ? of(choice) : 0;
        }
        return marks;
    }

    /** The mark of a choice, a sum of the members above. */
    public static int of(int members) {
        return 1 << members;
    }
}
