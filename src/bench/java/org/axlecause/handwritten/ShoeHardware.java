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

/** What proves and refutes faults of adjusters, springs and back plates. */
final class ShoeHardware {

    private ShoeHardware() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau530(facts);
        cau532(facts);
        cau533(facts);
        cau540(facts);
        cau542(facts);
        cau543(facts);
        cau550(facts);
        cau552(facts);
        cau560(facts);
        cau562(facts);
        cau570(facts);
        cau572(facts);
        cau580(facts);
        cau582(facts);
        cau590(facts);
        cau592(facts);
        cau600(facts);
        cau602(facts);
    }

    /** An adjuster has not taken up. */
    private static void cau530(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ADJUSTER)) {
            if (finding.condition() == Condition.NOT_TAKEN_UP
                    || finding.condition() == Condition.SEIZED
                    || finding.condition() == Condition.WORN
                    || finding.condition() == Condition.STRIPPED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.ADJUSTER_NOT_TAKEN_UP)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-530", finding)));
                    }
                }
            }
        }
    }

    /** An adjuster works and the shoes rub slightly and evenly. */
    private static void cau532(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ADJUSTER)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.ADJUSTER_NOT_TAKEN_UP)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-532", finding)));
                    }
                }
            }
        }
    }

    /** Shoes are set too tight, so they are taken up. */
    private static void cau533(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ADJUSTER)) {
            if (finding.condition() == Condition.OVER_ADJUSTED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.ADJUSTER_NOT_TAKEN_UP)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-533", finding)));
                    }
                }
            }
        }
    }

    /** Shoes are set too tight. */
    private static void cau540(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ADJUSTER)) {
            if (finding.condition() == Condition.OVER_ADJUSTED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SHOES_OVER_ADJUSTED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-540", finding)));
                    }
                }
            }
        }
    }

    /** The setting of the shoes is right. */
    private static void cau542(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ADJUSTER)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SHOES_OVER_ADJUSTED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-542", finding)));
                    }
                }
            }
        }
    }

    /** Shoes are too loose, so they are not too tight. */
    private static void cau543(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ADJUSTER)) {
            if (finding.condition() == Condition.NOT_TAKEN_UP
                    || finding.condition() == Condition.SEIZED
                    || finding.condition() == Condition.WORN
                    || finding.condition() == Condition.STRIPPED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SHOES_OVER_ADJUSTED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-543", finding)));
                    }
                }
            }
        }
    }

    /** A return spring is weak, broken or missing. */
    private static void cau550(Facts facts) {
        for (Finding finding : facts.findings.of(Component.RETURN_SPRING)) {
            if (finding.condition() == Condition.BROKEN
                    || finding.condition() == Condition.STRETCHED
                    || finding.condition() == Condition.WEAK
                    || finding.condition() == Condition.MISSING) {
                for (Candidate candidate : facts.candidates.of(CauseCode.RETURN_SPRING_BROKEN)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-550", finding)));
                    }
                }
            }
        }
    }

    /** The return springs are good. */
    private static void cau552(Facts facts) {
        for (Finding finding : facts.findings.of(Component.RETURN_SPRING)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.RETURN_SPRING_BROKEN)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-552", finding)));
                    }
                }
            }
        }
    }

    /** A hold-down is broken or missing. */
    private static void cau560(Facts facts) {
        for (Finding finding : facts.findings.of(Component.HOLD_DOWN)) {
            if (finding.condition() == Condition.BROKEN
                    || finding.condition() == Condition.MISSING
                    || finding.condition() == Condition.LOOSE) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HOLD_DOWN_BROKEN)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-560", finding)));
                    }
                }
            }
        }
    }

    /** The hold-downs are in place. */
    private static void cau562(Facts facts) {
        for (Finding finding : facts.findings.of(Component.HOLD_DOWN)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HOLD_DOWN_BROKEN)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-562", finding)));
                    }
                }
            }
        }
    }

    /** The ledges of a back plate are grooved or dry. */
    private static void cau570(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BACK_PLATE)) {
            if (finding.condition() == Condition.SCORED || finding.condition() == Condition.WORN) {
                for (Candidate candidate : facts.candidates.of(CauseCode.BACK_PLATE_LEDGES_WORN)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-570", finding)));
                    }
                }
            }
        }
    }

    /** The ledges of a back plate are smooth. */
    private static void cau572(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BACK_PLATE)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.HARDWARE_LOOK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.BACK_PLATE_LEDGES_WORN)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-572", finding)));
                    }
                }
            }
        }
    }

    /** A back plate is loose, bent or rusted through. */
    private static void cau580(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BACK_PLATE)) {
            if (finding.condition() == Condition.LOOSE
                    || finding.condition() == Condition.CORRODED
                    || finding.condition() == Condition.CRACKED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.BACK_PLATE_LOOSE)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-580", finding)));
                    }
                }
            }
        }
    }

    /** A back plate is tight. */
    private static void cau582(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BACK_PLATE)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.HARDWARE_LOOK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.BACK_PLATE_LOOSE)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-582", finding)));
                    }
                }
            }
        }
    }

    /** Dust, mud or a loose part lies in a drum. */
    private static void cau590(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BACK_PLATE)) {
            if (finding.condition() == Condition.DIRTY) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DEBRIS_IN_DRUM)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-590", finding)));
                    }
                }
            }
        }
    }

    /** A drum is clean inside. */
    private static void cau592(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BACK_PLATE)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.HARDWARE_LOOK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DEBRIS_IN_DRUM)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-592", finding)));
                    }
                }
            }
        }
    }

    /** A handed adjuster sits on the wrong side. */
    private static void cau600(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ADJUSTER)) {
            if (finding.condition() == Condition.MISFITTED || finding.condition() == Condition.WRONG_PART) {
                for (Candidate candidate : facts.candidates.of(CauseCode.ADJUSTER_ON_WRONG_SIDE)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-600", finding)));
                    }
                }
            }
        }
    }

    /** An adjuster works and is of its own side. */
    private static void cau602(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ADJUSTER)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.ADJUSTER_ON_WRONG_SIDE)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-602", finding)));
                    }
                }
            }
        }
    }
}
