package org.axlecause.inference;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.stream.IntStream;

/** Facts that many cases share, in collections that come and go as a whole. */
final class SharedFacts {

    private final List<List<?>> collections;
    private final int[] hashes;
    private final int count;

    private SharedFacts(List<List<?>> collections) {
        this.collections = collections;
        this.hashes = collections.stream().mapToInt(List::hashCode).toArray();
        this.count = collections.stream().mapToInt(Collection::size).sum();
    }

    static SharedFacts of(List<? extends Collection<?>> collections) {
        List<List<?>> lists = new ArrayList<>();
        collections.forEach(
                collection -> lists.add(collection instanceof List<?> list ? list : List.copyOf(collection)));
        return new SharedFacts(lists);
    }

    int size() {
        return collections.size();
    }

    Collection<?> get(int at) {
        return collections.get(at);
    }

    /** How many facts there are. */
    int count() {
        return count;
    }

    /** Whether the collection at that place is equal in both. */
    boolean agree(SharedFacts other, int at) {
        return hashes[at] == other.hashes[at] && collections.get(at).equals(other.collections.get(at));
    }

    /** Whether all collections are equal in both, also where one of them is empty. */
    boolean agree(SharedFacts other) {
        return size() == other.size() && IntStream.range(0, size()).allMatch(at -> agree(other, at));
    }

    /** How many facts lie in collections that are equal in both; none where these are of other kinds. */
    int common(SharedFacts other) {
        int common = 0;
        for (int at = 0; at < size() && size() == other.size(); at++) {
            common += agree(other, at) ? collections.get(at).size() : 0;
        }
        return common;
    }
}
