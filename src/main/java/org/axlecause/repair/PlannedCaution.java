package org.axlecause.repair;

import java.util.List;
import org.axlecause.facts.CautionCode;

/**
 * A caution that belongs before steps of the plan.
 *
 * @param code the caution
 * @param text its words
 * @param before ids of the steps that it precedes, in order
 * @param source document and section, or whose habit it is
 */
public record PlannedCaution(CautionCode code, String text, List<String> before, String source) {

    public PlannedCaution {
        before = List.copyOf(before);
    }
}
