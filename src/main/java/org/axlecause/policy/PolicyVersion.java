package org.axlecause.policy;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A published version of a policy; never changed.
 *
 * @param name name of the policy
 * @param version its version, from 1
 * @param effectiveFrom first day on which it judges
 * @param document its layers
 * @param covers codes of the only sites that it judges; null for all
 * @param authors who wrote it
 * @param reason why it was published
 * @param publishedAt when it was published
 * @param publishedBy by whom
 */
public record PolicyVersion(
        String name,
        int version,
        LocalDate effectiveFrom,
        PolicyDocument document,
        @Nullable List<String> covers,
        List<String> authors,
        String reason,
        OffsetDateTime publishedAt,
        String publishedBy) {

    /** Whether it judges cases of that site. */
    boolean covers(String site) {
        return covers == null || covers.contains(site);
    }
}
