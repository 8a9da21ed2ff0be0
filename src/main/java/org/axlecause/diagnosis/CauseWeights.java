package org.axlecause.diagnosis;

import java.util.EnumMap;
import java.util.Map;
import org.axlecause.facts.CauseCode;
import org.jspecify.annotations.Nullable;

/**
 * By what weights causes are weighed before anything is seen: those of the cause model, the book, but where a published
 * version has learned others.
 *
 * @param version number of the published version; null where none was published
 * @param learned by cause and group of axles the weight that stands in place of the book's, above 0
 */
public record CauseWeights(@Nullable Integer version, Map<CauseCode, Map<PriorGroup, Double>> learned) {

    /** The weights of the cause model. */
    public static final CauseWeights BOOK = new CauseWeights(null, Map.of());

    public CauseWeights {
        Map<CauseCode, Map<PriorGroup, Double>> copy = new EnumMap<>(CauseCode.class);
        learned.forEach((cause, byGroup) -> {
            byGroup.forEach((group, weight) -> {
                if (!(weight > 0 && Double.isFinite(weight))) {
                    throw new IllegalArgumentException(
                            "The learned weight of %s in %s is %s: it must be a number above 0"
                                    .formatted(cause, group, weight));
                }
            });
            copy.put(cause, Map.copyOf(byGroup));
        });
        learned = Map.copyOf(copy);
    }

    boolean areOfTheBook() {
        return learned.isEmpty();
    }

    /** The weight of a cause in a group; null where it can't be there, which nothing that was learned changes. */
    @Nullable
    Double of(Cause cause, PriorGroup group) {
        Double book = cause.weights().of(group);
        Map<PriorGroup, Double> byGroup = learned.get(cause.code());
        return book == null || byGroup == null ? book : byGroup.getOrDefault(group, book);
    }
}
