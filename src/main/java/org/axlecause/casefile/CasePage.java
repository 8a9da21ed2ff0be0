package org.axlecause.casefile;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A page of cases, newest first.
 *
 * @param cases the cases, without their documents
 * @param next cursor of the next page; null where there is none
 */
public record CasePage(List<StoredCase> cases, @Nullable String next) {

    public CasePage {
        cases = List.copyOf(cases);
    }
}
