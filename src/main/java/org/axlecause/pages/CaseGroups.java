package org.axlecause.pages;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Cases by whom they wait for.
 *
 * @param asked words that were looked for; empty for none
 * @param some whether not all cases are listed that there are
 * @param groups the groups
 */
public record CaseGroups(String asked, boolean some, List<Group> groups) {

    /**
     * Cases of one status.
     *
     * @param status code of the status
     * @param state the status in words
     * @param cases the cases, newest first
     * @param next cursor of the next page; null where there is none
     */
    public record Group(
            String status,
            CaseView.State state,
            List<Line> cases,
            @Nullable String next) {}

    /**
     * A case in a list.
     *
     * @param reference its reference
     * @param vehicle make and model, as far as they are known
     * @param site name of its site; empty while it is unknown
     * @param opened day of its opening
     */
    public record Line(String reference, String vehicle, String site, String opened) {}

    /** Whether no case is shown at all. */
    public boolean none() {
        return groups.stream().allMatch(group -> group.cases().isEmpty());
    }
}
