package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Refutation;

/** What proves and refutes faults of the parking brake. */
final class ParkingBrakeCauses {

    private ParkingBrakeCauses() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau610(facts);
        cau612(facts);
        cau620(facts);
        cau622(facts);
        cau630(facts);
        cau640(facts);
        cau642(facts);
        cau650(facts);
        cau652(facts);
        cau660(facts);
        cau662(facts);
        cau670(facts);
        cau672(facts);
        cau680(facts);
        cau681(facts);
        cau682(facts);
    }

    /** A parking cable does not slide in its sheath. */
    private static void cau610(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PARKING_CABLE)) {
            if (finding.condition() == Condition.SEIZED
                    || finding.condition() == Condition.TIGHT
                    || finding.condition() == Condition.CORRODED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_CABLE_SEIZED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-610", finding)));
                    }
                }
            }
        }
    }

    /** A parking cable slides freely. */
    private static void cau612(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PARKING_CABLE)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_CABLE_SEIZED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-612", finding)));
                    }
                }
            }
        }
    }

    /** A parking cable is broken, frayed or unhooked. */
    private static void cau620(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PARKING_CABLE)) {
            if (finding.condition() == Condition.BROKEN
                    || finding.condition() == Condition.DETACHED
                    || finding.condition() == Condition.FRAYED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_CABLE_BROKEN)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-620", finding)));
                    }
                }
            }
        }
    }

    /** A parking cable is whole. */
    private static void cau622(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PARKING_CABLE)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_CABLE_BROKEN)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-622", finding)));
                    }
                }
            }
        }
    }

    /** The parking cables are stretched or out of basic setting. */
    private static void cau630(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PARKING_CABLE)) {
            if (finding.condition() == Condition.STRETCHED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_CABLE_STRETCHED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-630", finding)));
                    }
                }
            }
        }
    }

    /** The equaliser stands crooked and does not pivot. */
    private static void cau640(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PARKING_EQUALISER)) {
            if (finding.condition() == Condition.SEIZED
                    || finding.condition() == Condition.MISFITTED
                    || finding.condition() == Condition.TIGHT) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_EQUALISER_SEIZED)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-640", finding)));
                }
            }
        }
    }

    /** The equaliser pivots. */
    private static void cau642(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PARKING_EQUALISER)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_EQUALISER_SEIZED)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-642", finding)));
                }
            }
        }
    }

    /** A shoe lever is stiff with its cable off. */
    private static void cau650(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LEVER)) {
            if (finding.condition() == Condition.SEIZED
                    || finding.condition() == Condition.TIGHT
                    || finding.condition() == Condition.NOT_RETURNING) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SHOE_LEVER_SEIZED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-650", finding)));
                    }
                }
            }
        }
    }

    /** A shoe lever is free by hand. */
    private static void cau652(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LEVER)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SHOE_LEVER_SEIZED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-652", finding)));
                    }
                }
            }
        }
    }

    /** The parking shoes in a disc are worn, rusted or bare. */
    private static void cau660(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.condition() == Condition.WORN
                    || finding.condition() == Condition.DETACHED
                    || finding.condition() == Condition.CORRODED
                    || finding.condition() == Condition.MISSING) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_SHOES_WORN)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-660", finding)));
                    }
                }
            }
        }
    }

    /** The parking shoes in a disc are good. */
    private static void cau662(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_SHOES_WORN)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-662", finding)));
                    }
                }
            }
        }
    }

    /** An electric parking actuator is weak, faulty or not calibrated. */
    private static void cau670(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ELECTRIC_PARKING_ACTUATOR)) {
            if (finding.condition() == Condition.WEAK
                    || finding.condition() == Condition.BROKEN
                    || finding.condition() == Condition.STRIPPED
                    || finding.condition() == Condition.NOT_TAKEN_UP) {
                for (Candidate candidate : facts.candidates.of(CauseCode.ELECTRIC_PARKING_ACTUATOR_WEAK)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-670", finding)));
                    }
                }
            }
        }
    }

    /** An electric parking actuator applies its full force. */
    private static void cau672(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ELECTRIC_PARKING_ACTUATOR)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.ELECTRIC_PARKING_ACTUATOR_WEAK)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-672", finding)));
                    }
                }
            }
        }
    }

    /** The parking cables are set too tight. */
    private static void cau680(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PARKING_CABLE)) {
            if (finding.condition() == Condition.OVER_ADJUSTED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_CABLE_OVER_TIGHT)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-680", finding)));
                    }
                }
            }
        }
    }

    /** A shoe lever is off its stop with the parking brake let off. */
    private static void cau681(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LEVER)) {
            if (finding.condition() == Condition.OFF_STOP) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_CABLE_OVER_TIGHT)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-681", finding)));
                    }
                }
            }
        }
    }

    /** The shoe levers of an axle are on their stops. */
    private static void cau682(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LEVER)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PARKING_CABLE_OVER_TIGHT)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-682", finding)));
                    }
                }
            }
        }
    }
}
