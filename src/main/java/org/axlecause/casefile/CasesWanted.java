package org.axlecause.casefile;

import org.jspecify.annotations.Nullable;

/**
 * The parameters of a list of cases as they were asked; what is null filters nothing.
 *
 * @param site code of a site
 * @param status status of the case
 * @param cause code of a cause that is not ruled out
 * @param from first day of opening
 * @param to day after the last
 * @param judging how the last judging went
 * @param words part of reference, make or model
 * @param limit size of a page
 * @param cursor where the page begins
 */
public record CasesWanted(
        @Nullable String site,
        @Nullable String status,
        @Nullable String cause,
        @Nullable String from,
        @Nullable String to,
        @Nullable String judging,
        @Nullable String words,
        @Nullable String limit,
        @Nullable String cursor) {

    /** The newest cases of a status that words are found in. */
    public static CasesWanted of(
            @Nullable String status, @Nullable String words, @Nullable String limit, @Nullable String cursor) {
        return new CasesWanted(null, status, null, null, null, null, words, limit, cursor);
    }
}
