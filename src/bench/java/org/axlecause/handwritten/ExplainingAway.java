package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import java.util.Objects;
import org.axlecause.facts.Agent;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.ExplainedAway;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Vehicle;

/**
 * What falls to the background once something certain accounts for it. It is not ruled out: with a proof of its own
 * it stands again.
 */
final class ExplainingAway {

    private ExplainingAway() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau830(facts);
        cau831(facts);
        cau832(facts);
        cau833(facts);
        cau834(facts);
        cau840(facts);
        cau841(facts);
    }

    /** A hose proved choked accounts for the drag of its wheel, so its calliper is not condemned. */
    private static void cau830(Facts facts) {
        for (Proof proof : facts.proofs.of(CauseCode.HOSE_RESTRICTED)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.CALLIPER_PISTON_SEIZED)) {
                if (candidate.place().equals(proof.place())
                        && none(
                                facts.proofs.of(CauseCode.CALLIPER_PISTON_SEIZED),
                                otherProof -> otherProof.place().equals(candidate.place()))) {
                    facts.explainedAway.draw(
                            new ExplainedAway(candidate.code(), candidate.place(), because("CAU-830", proof)));
                }
            }
        }
    }

    /** A hose proved choked accounts for the drag of its wheel, so its wheel cylinder is not condemned. */
    private static void cau831(Facts facts) {
        for (Proof proof : facts.proofs.of(CauseCode.HOSE_RESTRICTED)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT)) {
                if (candidate.place().equals(proof.place())
                        && none(
                                facts.proofs.of(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT),
                                otherProof -> otherProof.place().equals(candidate.place()))) {
                    facts.explainedAway.draw(
                            new ExplainedAway(candidate.code(), candidate.place(), because("CAU-831", proof)));
                }
            }
        }
    }

    /** A wheel cylinder proved leaking accounts for a long or soft pedal. */
    private static void cau832(Facts facts) {
        for (Proof proof : facts.proofs.of(CauseCode.WHEEL_CYLINDER_LEAKING)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.AIR_IN_CIRCUIT)) {
                if (none(
                        facts.proofs.of(CauseCode.AIR_IN_CIRCUIT),
                        otherProof -> otherProof.place().equals(candidate.place()))) {
                    for (Vehicle vehicle : facts.vehicles.all()) {
                        if (Objects.equals(candidate.place().circuit(), vehicle.circuitOf(proof.place()))) {
                            facts.explainedAway.draw(
                                    new ExplainedAway(candidate.code(), candidate.place(), because("CAU-832", proof)));
                        }
                    }
                }
            }
        }
    }

    /** A wheel cylinder proved leaking accounts for a sinking pedal. */
    private static void cau833(Facts facts) {
        for (Proof proof : facts.proofs.of(CauseCode.WHEEL_CYLINDER_LEAKING)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.MASTER_CYLINDER_BYPASSING)) {
                if (none(
                        facts.proofs.of(CauseCode.MASTER_CYLINDER_BYPASSING),
                        otherProof -> otherProof.place().equals(candidate.place()))) {
                    facts.explainedAway.draw(
                            new ExplainedAway(candidate.code(), candidate.place(), because("CAU-833", proof)));
                }
            }
        }
    }

    /** A hub seal proved leaking accounts for a wet drum. */
    private static void cau834(Facts facts) {
        for (Proof proof : facts.proofs.of(CauseCode.HUB_SEAL_LEAKING)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_LEAKING)) {
                if (candidate.place().equals(proof.place())
                        && none(
                                facts.proofs.of(CauseCode.WHEEL_CYLINDER_LEAKING),
                                otherProof -> otherProof.place().equals(candidate.place()))) {
                    facts.explainedAway.draw(
                            new ExplainedAway(candidate.code(), candidate.place(), because("CAU-834", proof)));
                }
            }
        }
    }

    /** A soaked lining accounts for the low friction of its wheel, so glaze falls to the background. */
    private static void cau840(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if ((finding.condition() == Condition.SOAKED || finding.condition() == Condition.CONTAMINATED)
                    && finding.agent() != Agent.WATER) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_GLAZED)) {
                    if (candidate.place().covers(finding.place())
                            && none(
                                    facts.proofs.of(CauseCode.LINING_GLAZED),
                                    proof -> proof.place().equals(candidate.place()))) {
                        facts.explainedAway.draw(
                                new ExplainedAway(candidate.code(), candidate.place(), because("CAU-840", finding)));
                    }
                }
            }
        }
    }

    /** A soaked lining accounts for the low friction of its wheel, so unlike linings fall to the background. */
    private static void cau841(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if ((finding.condition() == Condition.SOAKED || finding.condition() == Condition.CONTAMINATED)
                    && finding.agent() != Agent.WATER) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LININGS_UNLIKE)) {
                    if (candidate.place().covers(finding.place())
                            && none(
                                    facts.proofs.of(CauseCode.LININGS_UNLIKE),
                                    proof -> proof.place().equals(candidate.place()))) {
                        facts.explainedAway.draw(
                                new ExplainedAway(candidate.code(), candidate.place(), because("CAU-841", finding)));
                    }
                }
            }
        }
    }
}
