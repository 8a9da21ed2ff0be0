package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import java.util.Objects;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.Vehicle;

/** What proves and refutes faults of the fluid, of air in it, and of valves. */
final class FluidAndValves {

    private FluidAndValves() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau200(facts);
        cau202(facts);
        cau210(facts);
        cau211(facts);
        cau212(facts);
        cau213(facts);
        cau214(facts);
        cau215(facts);
        cau220(facts);
        cau222(facts);
        cau230(facts);
        cau240(facts);
        cau242(facts);
        cau250(facts);
        cau231(facts);
        cau251(facts);
    }

    /** Bubbles come out of a nipple. */
    private static void cau200(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BLEED_NIPPLE)) {
            if (finding.condition() == Condition.CONTAMINATED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.AIR_IN_CIRCUIT)) {
                    for (Vehicle vehicle : facts.vehicles.all()) {
                        if ((Objects.equals(
                                        candidate.place().circuit(),
                                        finding.place().circuit())
                                || Objects.equals(candidate.place().circuit(), vehicle.circuitOf(finding.place())))) {
                            facts.proofs.draw(
                                    new Proof(candidate.code(), candidate.place(), because("CAU-200", finding)));
                        }
                    }
                }
            }
        }
    }

    /** The pedal is firm. */
    private static void cau202(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.condition() == Condition.SOUND || finding.condition() == Condition.HARD) {
                for (Candidate candidate : facts.candidates.of(CauseCode.AIR_IN_CIRCUIT)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-202", finding)));
                }
            }
        }
    }

    /** The brake fluid was found too old. */
    private static void cau210(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.condition() == Condition.WORN) {
                for (Candidate candidate : facts.candidates.of(CauseCode.FLUID_BOILING)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-210", finding)));
                }
            }
        }
    }

    /** The brake fluid boils too early by its own limit. */
    private static void cau211(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.belowOwnLimit(MeasuredQuantity.FLUID_BOILING_POINT)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.FLUID_BOILING)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-211", finding)));
                }
            }
        }
    }

    /** The brake fluid boils too early by the limit of the workshop. */
    private static void cau212(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.FLUID_BOILING)) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.FLUID_BOILING_POINT_LEAST)) {
                    if (finding.below(MeasuredQuantity.FLUID_BOILING_POINT, limit.value())) {
                        facts.proofs.draw(
                                new Proof(candidate.code(), candidate.place(), because("CAU-212", finding, limit)));
                    }
                }
            }
        }
    }

    /** The brake fluid holds too much water by its own limit. */
    private static void cau213(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.aboveOwnLimit(MeasuredQuantity.FLUID_WATER_CONTENT)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.FLUID_BOILING)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-213", finding)));
                }
            }
        }
    }

    /** The brake fluid holds too much water by the limit of the workshop. */
    private static void cau214(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.FLUID_BOILING)) {
                for (Threshold limit : facts.thresholds.of(ThresholdCode.FLUID_WATER_CONTENT_MOST)) {
                    if (finding.above(MeasuredQuantity.FLUID_WATER_CONTENT, limit.value())) {
                        facts.proofs.draw(
                                new Proof(candidate.code(), candidate.place(), because("CAU-214", finding, limit)));
                    }
                }
            }
        }
    }

    /** The brake fluid was tested and is good. */
    private static void cau215(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.sound() && finding.check() == CheckCode.FLUID_TEST) {
                for (Candidate candidate : facts.candidates.of(CauseCode.FLUID_BOILING)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-215", finding)));
                }
            }
        }
    }

    /** A wrong liquid is in the brake system. */
    private static void cau220(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.condition() == Condition.WRONG_PART) {
                for (Candidate candidate : facts.candidates.of(CauseCode.MINERAL_OIL_IN_FLUID)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-220", finding)));
                }
            }
        }
    }

    /** The brake fluid was tested, so it is no mineral oil. */
    private static void cau222(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.sound() && finding.check() == CheckCode.FLUID_TEST) {
                for (Candidate candidate : facts.candidates.of(CauseCode.MINERAL_OIL_IN_FLUID)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-222", finding)));
                }
            }
        }
    }

    /** The modulator passes its test. */
    private static void cau230(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ANTILOCK_MODULATOR)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.MODULATOR_VALVE_FAULTY)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-230", finding)));
                }
            }
        }
    }

    /** The load-sensing valve is stiff, broken or out of setting. */
    private static void cau240(Facts facts) {
        for (Finding finding : facts.findings.of(Component.LOAD_SENSING_VALVE)) {
            if (finding.condition() == Condition.SEIZED
                    || finding.condition() == Condition.TIGHT
                    || finding.condition() == Condition.BROKEN
                    || finding.condition() == Condition.MISFITTED
                    || finding.condition() == Condition.MISSING) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LOAD_SENSING_VALVE_SEIZED)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-240", finding)));
                }
            }
        }
    }

    /** The load-sensing valve follows the load. */
    private static void cau242(Facts facts) {
        for (Finding finding : facts.findings.of(Component.LOAD_SENSING_VALVE)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LOAD_SENSING_VALVE_SEIZED)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-242", finding)));
                }
            }
        }
    }

    /** The pressures left and right behind the valve are equal. */
    private static void cau250(Facts facts) {
        for (Finding finding : facts.findings.of(Component.LOAD_SENSING_VALVE)) {
            if (finding.sound() && finding.check() == CheckCode.PRESSURE_GAUGES) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CIRCUIT_VALVE_STUCK)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-250", finding)));
                }
            }
        }
    }

    /** A modulator valve does not hold or let go of a wheel on command. */
    private static void cau231(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ANTILOCK_MODULATOR)) {
            if (finding.condition() == Condition.SEIZED
                    || finding.condition() == Condition.LEAKING
                    || finding.condition() == Condition.BLOCKED
                    || finding.condition() == Condition.BROKEN) {
                for (Candidate candidate : facts.candidates.of(CauseCode.MODULATOR_VALVE_FAULTY)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-231", finding)));
                    }
                }
            }
        }
    }

    /** The pressure behind the valve of one rear wheel falls short of the other. */
    private static void cau251(Facts facts) {
        for (Finding finding : facts.findings.of(Component.LOAD_SENSING_VALVE)) {
            if (finding.condition() == Condition.RESTRICTED || finding.condition() == Condition.BLOCKED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CIRCUIT_VALVE_STUCK)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-251", finding)));
                    }
                }
            }
        }
    }
}
