package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.Spot;

/** What proves and refutes faults of callipers, slides and pads in their carrier. */
final class Callipers {

    private Callipers() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau050(facts);
        cau052(facts);
        cau060(facts);
        cau062(facts);
        cau070(facts);
        cau072(facts);
        cau080(facts);
        cau082(facts);
        cau090(facts);
        cau092(facts);
        cau100(facts);
        cau102(facts);
        cau110(facts);
        cau112(facts);
        cau120(facts);
        cau122(facts);
    }

    /** A calliper piston will not go back by hand. */
    private static void cau050(Facts facts) {
        for (Finding finding : facts.findings.of(Component.CALLIPER)) {
            if ((finding.condition() == Condition.SEIZED || finding.condition() == Condition.TIGHT)
                    && (finding.place().spot() == null
                            || finding.place().spot() == Spot.LEADING
                            || finding.place().spot() == Spot.TRAILING
                            || finding.place().spot() == Spot.UPPER
                            || finding.place().spot() == Spot.LOWER)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CALLIPER_PISTON_SEIZED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-050", finding)));
                    }
                }
            }
        }
    }

    /** A calliper piston goes back by hand. */
    private static void cau052(Facts facts) {
        for (Finding finding : facts.findings.of(Component.CALLIPER)) {
            if (finding.sound() && finding.check() == CheckCode.CALLIPER_PISTON_PUSH_BACK) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CALLIPER_PISTON_SEIZED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-052", finding)));
                    }
                }
            }
        }
    }

    /** A calliper cannot be slid by hand. */
    private static void cau060(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SLIDE_PIN)) {
            if (finding.condition() == Condition.SEIZED
                    || finding.condition() == Condition.TIGHT
                    || finding.condition() == Condition.CORRODED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SLIDE_PINS_SEIZED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-060", finding)));
                    }
                }
            }
        }
    }

    /** A calliper slides by hand. */
    private static void cau062(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SLIDE_PIN)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SLIDE_PINS_SEIZED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-062", finding)));
                    }
                }
            }
        }
    }

    /** A pad is stuck in its carrier. */
    private static void cau070(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.condition() == Condition.SEIZED || finding.condition() == Condition.TIGHT) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PADS_SEIZED_IN_CARRIER)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-070", finding)));
                    }
                }
            }
        }
    }

    /** The pads of a wheel are sound and loose in their carrier. */
    private static void cau072(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PADS_SEIZED_IN_CARRIER)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-072", finding)));
                    }
                }
            }
        }
    }

    /** A calliper drips or runs. */
    private static void cau080(Facts facts) {
        for (Finding finding : facts.findings.of(Component.CALLIPER)) {
            if (finding.condition() == Condition.LEAKING) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CALLIPER_LEAKING)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-080", finding)));
                    }
                }
            }
        }
    }

    /** A calliper is dry under its boot. */
    private static void cau082(Facts facts) {
        for (Finding finding : facts.findings.of(Component.CALLIPER)) {
            if (finding.condition() == Condition.SOUND || finding.condition() == Condition.DAMP) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CALLIPER_LEAKING)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-082", finding)));
                    }
                }
            }
        }
    }

    /** The parking lever of a calliper stays off its stop. */
    private static void cau090(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PARKING_LEVER)) {
            if (finding.condition() == Condition.OFF_STOP || finding.condition() == Condition.NOT_RETURNING) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CALLIPER_LEVER_NOT_RETURNING)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-090", finding)));
                    }
                }
            }
        }
    }

    /** The parking lever of a calliper returns to its stop. */
    private static void cau092(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PARKING_LEVER)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CALLIPER_LEVER_NOT_RETURNING)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-092", finding)));
                    }
                }
            }
        }
    }

    /** The parking lever of a calliper travels fully without clamping. */
    private static void cau100(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PARKING_LEVER)) {
            if (finding.condition() == Condition.LONG_TRAVEL || finding.condition() == Condition.NOT_TAKEN_UP) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CALLIPER_LEVER_NOT_APPLYING)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-100", finding)));
                    }
                }
            }
        }
    }

    /** The parking lever of a calliper clamps. */
    private static void cau102(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PARKING_LEVER)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CALLIPER_LEVER_NOT_APPLYING)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-102", finding)));
                    }
                }
            }
        }
    }

    /** One bank of pistons of a fixed calliper does not move. */
    private static void cau110(Facts facts) {
        for (Finding finding : facts.findings.of(Component.CALLIPER)) {
            if ((finding.condition() == Condition.SEIZED || finding.condition() == Condition.TIGHT)
                    && (finding.place().spot() == Spot.INNER || finding.place().spot() == Spot.OUTER)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CALLIPER_BANK_SEIZED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-110", finding)));
                    }
                }
            }
        }
    }

    /** All pistons of a fixed calliper go back by hand. */
    private static void cau112(Facts facts) {
        for (Finding finding : facts.findings.of(Component.CALLIPER)) {
            if (finding.sound() && finding.check() == CheckCode.CALLIPER_PISTON_PUSH_BACK) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CALLIPER_BANK_SEIZED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-112", finding)));
                    }
                }
            }
        }
    }

    /** A bleed nipple weeps or is loose. */
    private static void cau120(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BLEED_NIPPLE)) {
            if (finding.condition() == Condition.LEAKING || finding.condition() == Condition.LOOSE) {
                for (Candidate candidate : facts.candidates.of(CauseCode.BLEED_NIPPLE_WEEPING)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-120", finding)));
                    }
                }
            }
        }
    }

    /** A bleed nipple is dry and tight. */
    private static void cau122(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BLEED_NIPPLE)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.BLEED_NIPPLE_WEEPING)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-122", finding)));
                    }
                }
            }
        }
    }
}
