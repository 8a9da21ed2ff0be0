package org.axlecause.statistics;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.apache.commons.text.similarity.JaroWinklerSimilarity;

/** The valid words that are nearest to a wrong one. */
final class NearestWords {

    private static final int SHOWN = 3;
    private static final JaroWinklerSimilarity SIMILARITY = new JaroWinklerSimilarity();

    private NearestWords() {}

    /** Up to three words, the nearest first. */
    static List<String> to(String wrong, Collection<String> valid) {
        String sought = wrong.toLowerCase(Locale.ROOT);
        return valid.stream()
                .distinct()
                .sorted(Comparator.<String>comparingDouble(
                                word -> -SIMILARITY.apply(sought, word.toLowerCase(Locale.ROOT)))
                        .thenComparing(Comparator.naturalOrder()))
                .limit(SHOWN)
                .toList();
    }
}
