package org.axlecause.inference;

import java.util.List;
import org.axlecause.shared.Recent;
import org.jspecify.annotations.Nullable;

/** A list of facts that many cases share, with what makes it quick to compare with another. */
final class FactList {

    private final List<?> facts;
    private final int hash;
    private final int[] codes;

    private FactList(List<?> facts) {
        this.facts = facts;
        this.hash = facts.hashCode();
        this.codes = facts.stream().mapToInt(Object::hashCode).sorted().toArray();
    }

    List<?> facts() {
        return facts;
    }

    /** Whether both hold equal facts in the same order. */
    @Override
    public boolean equals(@Nullable Object other) {
        return this == other || (other instanceof FactList list && hash == list.hash && facts.equals(list.facts));
    }

    @Override
    public int hashCode() {
        return hash;
    }

    /** How many facts both hold; a guess by their hash codes, which hardly ever says too many. */
    int common(FactList other) {
        int common = 0;
        int here = 0;
        int there = 0;
        while (here < codes.length && there < other.codes.length) {
            int order = Integer.compare(codes[here], other.codes[there]);
            common += order == 0 ? 1 : 0;
            here += order <= 0 ? 1 : 0;
            there += order >= 0 ? 1 : 0;
        }
        return common;
    }

    /** Lists that came lately: layouts and policies bring the same list again and again, and regimes equal ones. */
    static final class Known {

        private static final int MOST_KEPT = 1_000;

        private final Recent<Same, FactList> same = new Recent<>(MOST_KEPT);
        private final Recent<FactList, FactList> equal = new Recent<>(MOST_KEPT);

        /** The list of these facts, the same object for equal facts that came lately. */
        FactList of(List<?> facts) {
            Same sent = new Same(facts);
            FactList known = same.find(sent);
            return known == null ? same.keep(sent, equal(new FactList(facts))) : known;
        }

        private FactList equal(FactList list) {
            FactList known = equal.find(list);
            return known == null ? equal.keep(list, list) : known;
        }
    }

    /** The list itself and no equal one. */
    private static final class Same {

        private final List<?> facts;

        Same(List<?> facts) {
            this.facts = facts;
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Same same && same.facts == facts;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(facts);
        }
    }
}
