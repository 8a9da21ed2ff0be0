package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Refutation;

/** What excludes what: two faults that cannot be at one place, and a drag that pressure does not explain. */
final class Exclusions {

    private Exclusions() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau820(facts);
        cau821(facts);
        cau810(facts);
        cau811(facts);
        cau812(facts);
        cau813(facts);
    }

    /** One stuck piston is proved at a wheel and tight pistons are not. */
    private static void cau810(Facts facts) {
        for (Proof proof : facts.proofs.of(CauseCode.WHEEL_CYLINDER_PISTON_STUCK)) {
            if (none(
                    facts.proofs.of(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT),
                    otherProof -> otherProof.place().equals(proof.place()))) {
                for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT)) {
                    if (candidate.place().equals(proof.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-810", proof)));
                    }
                }
            }
        }
    }

    /** Tight pistons are proved at a wheel and a stuck one is not. */
    private static void cau811(Facts facts) {
        for (Proof proof : facts.proofs.of(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT)) {
            if (none(
                    facts.proofs.of(CauseCode.WHEEL_CYLINDER_PISTON_STUCK),
                    otherProof -> otherProof.place().equals(proof.place()))) {
                for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_PISTON_STUCK)) {
                    if (candidate.place().equals(proof.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-811", proof)));
                    }
                }
            }
        }
    }

    /** Parking cables are proved too tight, so they are not slack. */
    private static void cau812(Facts facts) {
        for (Proof proof : facts.proofs.of(CauseCode.PARKING_CABLE_OVER_TIGHT)) {
            if (none(
                    facts.proofs.of(CauseCode.PARKING_CABLE_STRETCHED),
                    otherProof -> otherProof.place().equals(proof.place()))) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_CABLE_STRETCHED)) {
                    if (candidate.place().equals(proof.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-812", proof)));
                    }
                }
            }
        }
    }

    /** Parking cables are proved slack, so they are not too tight. */
    private static void cau813(Facts facts) {
        for (Proof proof : facts.proofs.of(CauseCode.PARKING_CABLE_STRETCHED)) {
            if (none(
                    facts.proofs.of(CauseCode.PARKING_CABLE_OVER_TIGHT),
                    otherProof -> otherProof.place().equals(proof.place()))) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_CABLE_OVER_TIGHT)) {
                    if (candidate.place().equals(proof.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-813", proof)));
                    }
                }
            }
        }
    }

    /** A wheel drags on with its nipple open, so the master cylinder does not trap pressure. */
    private static void cau820(Facts facts) {
        for (Finding finding : facts.findings.of(Component.FLEXIBLE_HOSE)) {
            if (finding.sound() && finding.check() == CheckCode.OPEN_NIPPLE_ON_DRAGGING_WHEEL) {
                for (Candidate candidate : facts.candidates.of(CauseCode.MASTER_CYLINDER_PORT_COVERED)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-820", finding)));
                }
            }
        }
    }

    /** A wheel drags on with its nipple open, so the servo does not keep it braked. */
    private static void cau821(Facts facts) {
        for (Finding finding : facts.findings.of(Component.FLEXIBLE_HOSE)) {
            if (finding.sound() && finding.check() == CheckCode.OPEN_NIPPLE_ON_DRAGGING_WHEEL) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SERVO_STICKING_ON)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-821", finding)));
                }
            }
        }
    }
}
