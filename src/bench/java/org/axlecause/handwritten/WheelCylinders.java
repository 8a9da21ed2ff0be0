package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.Agent;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Refutation;

/**
 * What proves and refutes faults of wheel cylinders. A film under a boot is no leak, and a dry cylinder says nothing
 * about its pistons.
 */
final class WheelCylinders {

    private WheelCylinders() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau010(facts);
        cau012(facts);
        cau020(facts);
        cau022(facts);
        cau030(facts);
        cau032(facts);
        cau040(facts);
        cau042(facts);
    }

    /** A wheel cylinder drips or runs under its boot. */
    private static void cau010(Facts facts) {
        for (Finding finding : facts.findings.of(Component.WHEEL_CYLINDER)) {
            if (finding.condition() == Condition.LEAKING
                    && (finding.agent() == null
                            || finding.agent() == Agent.BRAKE_FLUID
                            || finding.agent() == Agent.UNKNOWN)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_LEAKING)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-010", finding)));
                    }
                }
            }
        }
    }

    /** A wheel cylinder is dry or only damp under its boot. */
    private static void cau012(Facts facts) {
        for (Finding finding : facts.findings.of(Component.WHEEL_CYLINDER)) {
            if (finding.condition() == Condition.SOUND || finding.condition() == Condition.DAMP) {
                for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_LEAKING)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-012", finding)));
                    }
                }
            }
        }
    }

    /** A piston of a wheel cylinder does not move. */
    private static void cau020(Facts facts) {
        for (Finding finding : facts.findings.of(Component.WHEEL_CYLINDER)) {
            if (finding.condition() == Condition.SEIZED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_PISTON_STUCK)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-020", finding)));
                    }
                }
            }
        }
    }

    /** Both pistons of a wheel cylinder were tried and move freely, so none is stuck. */
    private static void cau022(Facts facts) {
        for (Finding finding : facts.findings.of(Component.WHEEL_CYLINDER)) {
            if (finding.sound()
                    && (finding.check() == CheckCode.SLIGHT_PEDAL_PRESS
                            || finding.check() == CheckCode.PUSH_PISTONS_BACK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_PISTON_STUCK)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-022", finding)));
                    }
                }
            }
        }
    }

    /** The pistons of a wheel cylinder move with effort or unequally. */
    private static void cau030(Facts facts) {
        for (Finding finding : facts.findings.of(Component.WHEEL_CYLINDER)) {
            if (finding.condition() == Condition.TIGHT) {
                for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-030", finding)));
                    }
                }
            }
        }
    }

    /** Both pistons of a wheel cylinder were tried and move freely, so none is tight. */
    private static void cau032(Facts facts) {
        for (Finding finding : facts.findings.of(Component.WHEEL_CYLINDER)) {
            if (finding.sound()
                    && (finding.check() == CheckCode.SLIGHT_PEDAL_PRESS
                            || finding.check() == CheckCode.PUSH_PISTONS_BACK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-032", finding)));
                    }
                }
            }
        }
    }

    /** A wheel cylinder has another bore than its twin. */
    private static void cau040(Facts facts) {
        for (Finding finding : facts.findings.of(Component.WHEEL_CYLINDER)) {
            if (finding.condition() == Condition.WRONG_PART) {
                for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_WRONG_BORE)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-040", finding)));
                    }
                }
            }
        }
    }

    /** The wheel cylinders of an axle were matched and are alike. */
    private static void cau042(Facts facts) {
        for (Finding finding : facts.findings.of(Component.WHEEL_CYLINDER)) {
            if (finding.sound() && finding.check() == CheckCode.MATCH_NEW_WITH_OLD) {
                for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_WRONG_BORE)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-042", finding)));
                    }
                }
            }
        }
    }
}
