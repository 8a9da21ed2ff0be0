package org.axlecause.policy;

import java.time.LocalDate;
import java.time.OffsetDateTime;

/**
 * A published version of a policy document.
 *
 * @param name name of the policy
 * @param version its version, from 1
 * @param effectiveFrom first day on which it judges
 * @param document the document as JSON
 * @param publishedAt when it was published
 * @param publishedBy by whom
 */
public record PolicyVersion(
        String name,
        int version,
        LocalDate effectiveFrom,
        String document,
        OffsetDateTime publishedAt,
        String publishedBy) {}
