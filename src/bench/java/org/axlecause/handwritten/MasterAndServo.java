package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import java.util.Objects;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.Vehicle;

/** What proves and refutes faults of master cylinder, servo and pedal. */
final class MasterAndServo {

    private MasterAndServo() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau260(facts);
        cau262(facts);
        cau263(facts);
        cau270(facts);
        cau272(facts);
        cau280(facts);
        cau282(facts);
        cau290(facts);
        cau300(facts);
        cau302(facts);
        cau310(facts);
        cau312(facts);
        cau320(facts);
        cau322(facts);
        cau291(facts);
        cau292(facts);
        cau293(facts);
        cau294(facts);
    }

    /** The master cylinder lets the pedal sink with nothing leaking outside. */
    private static void cau260(Facts facts) {
        for (Finding finding : facts.findings.of(Component.MASTER_CYLINDER)) {
            if (finding.condition() == Condition.SINKING) {
                for (Candidate candidate : facts.candidates.of(CauseCode.MASTER_CYLINDER_BYPASSING)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-260", finding)));
                }
            }
        }
    }

    /** The master cylinder holds. */
    private static void cau262(Facts facts) {
        for (Finding finding : facts.findings.of(Component.MASTER_CYLINDER)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.PRESSURE_GAUGES)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.MASTER_CYLINDER_BYPASSING)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-262", finding)));
                }
            }
        }
    }

    /** The pedal holds under a steady foot. */
    private static void cau263(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.MASTER_CYLINDER_BYPASSING)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-263", finding)));
                }
            }
        }
    }

    /** The flange behind the master cylinder is wet. */
    private static void cau270(Facts facts) {
        for (Finding finding : facts.findings.of(Component.MASTER_CYLINDER)) {
            if (finding.condition() == Condition.LEAKING) {
                for (Candidate candidate : facts.candidates.of(CauseCode.MASTER_CYLINDER_LEAKING)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-270", finding)));
                }
            }
        }
    }

    /** The master cylinder is dry. */
    private static void cau272(Facts facts) {
        for (Finding finding : facts.findings.of(Component.MASTER_CYLINDER)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.MASTER_CYLINDER_SLACKEN)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.MASTER_CYLINDER_LEAKING)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-272", finding)));
                }
            }
        }
    }

    /** Slackening the master cylinder frees the brakes. */
    private static void cau280(Facts facts) {
        for (Finding finding : facts.findings.of(Component.MASTER_CYLINDER)) {
            if (finding.condition() == Condition.BLOCKED
                    || finding.condition() == Condition.NOT_RETURNING
                    || finding.condition() == Condition.OVER_ADJUSTED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.MASTER_CYLINDER_PORT_COVERED)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-280", finding)));
                }
            }
        }
    }

    /** The master cylinder lets pressure go. */
    private static void cau282(Facts facts) {
        for (Finding finding : facts.findings.of(Component.MASTER_CYLINDER)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.MASTER_CYLINDER_SLACKEN)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.MASTER_CYLINDER_PORT_COVERED)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-282", finding)));
                }
            }
        }
    }

    /** Both chambers of the reservoir are full. */
    private static void cau290(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.FLUID_LEVEL_CHECK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CIRCUIT_LOST)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-290", finding)));
                }
            }
        }
    }

    /** The servo gives little or no help. */
    private static void cau300(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SERVO)) {
            if (finding.condition() == Condition.WEAK
                    || finding.condition() == Condition.LEAKING
                    || finding.condition() == Condition.BROKEN
                    || finding.condition() == Condition.SPLIT) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SERVO_WEAK)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-300", finding)));
                }
            }
        }
    }

    /** The servo helps. */
    private static void cau302(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SERVO)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SERVO_WEAK)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-302", finding)));
                }
            }
        }
    }

    /** The servo does not let go. */
    private static void cau310(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SERVO)) {
            if (finding.condition() == Condition.NOT_RETURNING
                    || finding.condition() == Condition.SEIZED
                    || finding.condition() == Condition.TIGHT) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SERVO_STICKING_ON)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-310", finding)));
                }
            }
        }
    }

    /** The servo lets go. */
    private static void cau312(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SERVO)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SERVO_STICKING_ON)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-312", finding)));
                }
            }
        }
    }

    /** The pedal does not return. */
    private static void cau320(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.condition() == Condition.NOT_RETURNING || finding.condition() == Condition.SEIZED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PEDAL_LINKAGE_BINDING)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-320", finding)));
                }
            }
        }
    }

    /** The pedal returns. */
    private static void cau322(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PEDAL_LINKAGE_BINDING)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-322", finding)));
                }
            }
        }
    }

    /** One chamber of the reservoir is empty. */
    private static void cau291(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.condition() == Condition.NOT_VISIBLE) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CIRCUIT_LOST)) {
                    for (Vehicle vehicle : facts.vehicles.all()) {
                        if ((Objects.equals(
                                        candidate.place().circuit(),
                                        finding.place().circuit())
                                || Objects.equals(candidate.place().circuit(), vehicle.circuitOf(finding.place())))) {
                            facts.proofs.draw(
                                    new Proof(candidate.code(), candidate.place(), because("CAU-291", finding)));
                        }
                    }
                }
            }
        }
    }

    /** One chamber is low and its diagonal pair of wheels reads low. */
    private static void cau292(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.condition() == Condition.LOW) {
                for (Symptom low : facts.symptoms.of(SymptomCode.DIAGONAL_LOW)) {
                    for (Candidate candidate : facts.candidates.of(CauseCode.CIRCUIT_LOST)) {
                        if (candidate.place().equals(low.place())) {
                            for (Vehicle vehicle : facts.vehicles.all()) {
                                if ((Objects.equals(
                                                candidate.place().circuit(),
                                                finding.place().circuit())
                                        || Objects.equals(
                                                candidate.place().circuit(), vehicle.circuitOf(finding.place())))) {
                                    facts.proofs.draw(new Proof(
                                            candidate.code(), candidate.place(), because("CAU-292", finding, low)));
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** The chamber of the front axle is low and the front axle reads low. */
    private static void cau293(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.condition() == Condition.LOW) {
                for (Symptom low : facts.symptoms.of(SymptomCode.FRONT_AXLE_LOW)) {
                    for (Candidate candidate : facts.candidates.of(CauseCode.CIRCUIT_LOST)) {
                        for (Vehicle vehicle : facts.vehicles.all()) {
                            if (vehicle.circuitSplit() == CircuitSplit.FRONT_REAR
                                    && Objects.equals(candidate.place().circuit(), vehicle.circuitOf(low.place()))
                                    && (Objects.equals(
                                                    candidate.place().circuit(),
                                                    finding.place().circuit())
                                            || Objects.equals(
                                                    candidate.place().circuit(), vehicle.circuitOf(finding.place())))) {
                                facts.proofs.draw(new Proof(
                                        candidate.code(), candidate.place(), because("CAU-293", finding, low)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** The chamber of the rear axle is low and the rear axle reads low. */
    private static void cau294(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.condition() == Condition.LOW) {
                for (Symptom low : facts.symptoms.of(SymptomCode.REAR_AXLE_LOW)) {
                    for (Candidate candidate : facts.candidates.of(CauseCode.CIRCUIT_LOST)) {
                        for (Vehicle vehicle : facts.vehicles.all()) {
                            if (vehicle.circuitSplit() == CircuitSplit.FRONT_REAR
                                    && Objects.equals(candidate.place().circuit(), vehicle.circuitOf(low.place()))
                                    && (Objects.equals(
                                                    candidate.place().circuit(),
                                                    finding.place().circuit())
                                            || Objects.equals(
                                                    candidate.place().circuit(), vehicle.circuitOf(finding.place())))) {
                                facts.proofs.draw(new Proof(
                                        candidate.code(), candidate.place(), because("CAU-294", finding, low)));
                            }
                        }
                    }
                }
            }
        }
    }
}
