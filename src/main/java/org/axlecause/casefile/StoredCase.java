package org.axlecause.casefile;

import org.jspecify.annotations.Nullable;

/**
 * A case as it was last judged.
 *
 * @param reference its reference
 * @param columns what lists need
 * @param document the bytes that are served; none until a first judgement succeeded
 * @param judging how the last judging went
 * @param policy what it was judged by
 * @param rulebook version of the rule base
 */
public record StoredCase(
        String reference,
        CaseColumns columns,
        @Nullable String document,
        Judging judging,
        @Nullable String policy,
        @Nullable String rulebook) {}
