package org.axlecause.statistics;

import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.diagnosis.PriorGroup;
import org.axlecause.facts.CauseCode;
import org.jspecify.annotations.Nullable;

/**
 * Weights of causes that were published; never changed.
 *
 * @param version its number, from 1
 * @param effectiveFrom moment from which on presented vehicles are judged by it
 * @param proposal id of the proposal that it was
 * @param weights weights that stand in place of the book's; none where the book was published again
 * @param authors who proposed it
 * @param reason why it was published
 * @param publishedAt when it was published
 * @param publishedBy by whom
 */
record WeightsVersion(
        int version,
        OffsetDateTime effectiveFrom,
        UUID proposal,
        List<Published> weights,
        List<String> authors,
        String reason,
        OffsetDateTime publishedAt,
        String publishedBy) {

    WeightsVersion {
        weights = List.copyOf(weights);
        authors = List.copyOf(authors);
    }

    /** Whether a version judges what is presented now. */
    enum State {
        TO_COME,
        IN_FORCE,
        SUPERSEDED;

        /** The code on the wire. */
        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /**
     * A weight that stands in place of the book's.
     *
     * @param cause the cause
     * @param group group of axles
     * @param bookWeight weight of the book when it was learned
     * @param weight what stands in its place
     */
    record Published(CauseCode cause, PriorGroup group, double bookWeight, double weight) {}

    /** As causes are weighed by it. */
    CauseWeights causeWeights() {
        return causeWeights(version, weights);
    }

    /** As causes are weighed by such weights; the version is null where they aren't published. */
    static CauseWeights causeWeights(@Nullable Integer version, List<Published> weights) {
        Map<CauseCode, Map<PriorGroup, Double>> learned = new EnumMap<>(CauseCode.class);
        weights.forEach(
                published -> learned.computeIfAbsent(published.cause(), cause -> new EnumMap<>(PriorGroup.class))
                        .put(published.group(), published.weight()));
        return new CauseWeights(version, learned);
    }
}
