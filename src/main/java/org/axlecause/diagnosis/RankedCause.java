package org.axlecause.diagnosis;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.axlecause.facts.Because;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.Place;

/**
 * A cause at a place with its standing.
 *
 * @param code the cause
 * @param place where
 * @param text what it is, one sentence
 * @param standing how settled it is
 * @param probability its probability given all evidence
 * @param root whether no confirmed cause lies upstream of it
 * @param chain steps from the most upstream cause to the symptom
 * @param evidence what spoke for and against it, strongest first
 * @param because rules behind it
 */
public record RankedCause(
        CauseCode code,
        Place place,
        String text,
        CauseStanding standing,
        BigDecimal probability,
        boolean root,
        List<ChainNode> chain,
        List<EvidenceWeight> evidence,
        List<Because> because) {

    public RankedCause {
        chain = List.copyOf(chain);
        evidence = List.copyOf(evidence);
        because = List.copyOf(because);
    }

    /** Its probability in whole percent, as calibration counts it. */
    public int percent() {
        return probability.movePointRight(2).setScale(0, RoundingMode.HALF_EVEN).intValueExact();
    }

    /** The same cause with the rules behind it. */
    RankedCause because(List<Because> rules) {
        return new RankedCause(code, place, text, standing, probability, root, chain, evidence, rules);
    }

    /** How strongly all that was seen and not seen speaks for it, in decibans, whatever age and layout say. */
    BigDecimal spokenFor() {
        return evidence.stream()
                .filter(weight -> !weight.code().equals(EvidenceWeight.PRIOR))
                .map(EvidenceWeight::decibans)
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }
}
