package org.axlecause.repair;

import java.util.List;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.StepCode;

/**
 * What is known of a caution.
 *
 * @param code the caution
 * @param text its words
 * @param precedes steps that it precedes
 * @param source document and section, or whose habit it is
 */
public record CatalogueCaution(CautionCode code, String text, List<StepCode> precedes, String source) {

    public CatalogueCaution {
        precedes = List.copyOf(precedes);
    }
}
