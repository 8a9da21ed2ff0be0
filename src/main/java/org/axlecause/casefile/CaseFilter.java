package org.axlecause.casefile;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which cases a list holds; what is null or empty filters nothing.
 *
 * @param sites codes of sites; null for all
 * @param status highest status that holds
 * @param cause code of a cause that is not ruled out
 * @param from first day, at the site
 * @param to day after the last, at the site
 * @param judging how the last judging went
 * @param words part of reference, make or model
 */
public record CaseFilter(
        @Nullable List<String> sites,
        @Nullable String status,
        @Nullable String cause,
        @Nullable LocalDate from,
        @Nullable LocalDate to,
        @Nullable Judging judging,
        @Nullable String words) {

    public CaseFilter {
        sites = sites == null ? null : List.copyOf(sites);
    }

    /** Every case. */
    public static final CaseFilter ALL = new CaseFilter(null, null, null, null, null, null, null);
}
