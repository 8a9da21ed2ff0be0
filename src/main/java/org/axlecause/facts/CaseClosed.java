package org.axlecause.facts;

import java.util.List;

/**
 * The sender closed the case.
 *
 * @param outcome how
 * @param confirmedCauses causes as the technician judged them
 */
public record CaseClosed(CloseOutcome outcome, List<JudgedCause> confirmedCauses) implements Entry {

    public CaseClosed {
        confirmedCauses = List.copyOf(confirmedCauses);
    }
}
