package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;

/** The signs that causes and checks of one layout can tell of, numbered in their order. */
final class Signs {

    /** Number of a sign that no cause of the layout shows and no check there tells. */
    static final int NONE = -1;

    private final List<Sign> sorted;
    private final Map<Sign, Integer> numbers = new HashMap<>();

    Signs(SortedSet<Sign> signs) {
        sorted = List.copyOf(signs);
        for (Sign sign : sorted) {
            numbers.put(sign, numbers.size());
        }
    }

    int count() {
        return sorted.size();
    }

    Sign get(int number) {
        return sorted.get(number);
    }

    int numberOf(Sign sign) {
        return numbers.getOrDefault(sign, NONE);
    }

    int[] numbersOf(Iterable<Sign> signs) {
        List<Integer> found = new ArrayList<>();
        signs.forEach(sign -> found.add(numberOf(sign)));
        return found.stream().mapToInt(Integer::intValue).toArray();
    }
}
