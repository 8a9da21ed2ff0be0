package org.axlecause.judgement;

import java.math.BigDecimal;
import java.util.List;
import org.axlecause.diagnosis.ChainNode;
import org.axlecause.diagnosis.EvidenceWeight;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.Place;
import org.axlecause.facts.Reason;

/**
 * A cause as the case document shows it.
 *
 * @param code the cause
 * @param place where
 * @param text what it is
 * @param standing how settled it is
 * @param probability its probability given all evidence
 * @param root whether it is the most upstream cause
 * @param chain steps from the root to the symptom, each seen or inferred
 * @param evidence what spoke for and against it, in decibans
 * @param because rules behind it
 */
public record ShownCause(
        CauseCode code,
        Place place,
        String text,
        CauseStanding standing,
        BigDecimal probability,
        boolean root,
        List<ShownNode> chain,
        List<EvidenceWeight> evidence,
        List<Reason> because) {

    /**
     * One step of a chain.
     *
     * @param code code of a cause, a state in between or a symptom
     * @param text the step in words
     * @param place where
     * @param basis {@code seen} or {@code inferred}
     */
    public record ShownNode(String code, String text, Place place, String basis) {

        static ShownNode of(ChainNode node) {
            return new ShownNode(node.code(), node.text(), node.place(), node.seen() ? "seen" : "inferred");
        }
    }
}
