package org.axlecause.inference;

import java.util.List;

/** Facts that many cases share, in lists each of one kind. */
final class SharedFacts {

    private final List<FactList> lists;
    private final int count;

    SharedFacts(List<FactList> lists) {
        this.lists = lists;
        this.count = lists.stream().mapToInt(list -> list.facts().size()).sum();
    }

    int size() {
        return lists.size();
    }

    List<?> get(int at) {
        return lists.get(at).facts();
    }

    /** How many facts there are. */
    int count() {
        return count;
    }

    /** Whether the list at that place is equal in both. */
    boolean agree(SharedFacts other, int at) {
        return lists.get(at).equals(other.lists.get(at));
    }

    /** Whether all lists are equal in both, also where one of them is empty. */
    boolean agree(SharedFacts other) {
        return lists.equals(other.lists);
    }

    /** About how many facts both hold; none where they are of other kinds. */
    int common(SharedFacts other) {
        int common = 0;
        for (int at = 0; at < size() && size() == other.size(); at++) {
            common += lists.get(at).common(other.lists.get(at));
        }
        return common;
    }
}
