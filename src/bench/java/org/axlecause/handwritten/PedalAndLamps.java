package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.Complaint;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Place;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/** What the driver reports and what the pedal, the reservoir and the lamps say. */
final class PedalAndLamps {

    private PedalAndLamps() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sym290(facts);
        sym291(facts);
        sym292(facts);
        sym295(facts);
        sym300(facts);
        sym301(facts);
        sym305(facts);
        sym310(facts);
        sym311(facts);
        sym315(facts);
        sym320(facts);
        sym321(facts);
        sym325(facts);
        sym330(facts);
        sym331(facts);
        sym335(facts);
        sym340(facts);
        sym341(facts);
        sym345(facts);
        sym350(facts);
        sym351(facts);
        sym355(facts);
    }

    /** The driver reports a long pedal. */
    private static void sym290(Facts facts) {
        for (Complaint complaint : facts.complaints.of(ComplaintCode.LONG_PEDAL)) {
            facts.symptoms.draw(
                    new Symptom(SymptomCode.PEDAL_LONG, Place.VEHICLE, Strength.CLEAR, because("SYM-290", complaint)));
        }
    }

    /** The pedal was found long. */
    private static void sym291(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.condition() == Condition.LONG_TRAVEL) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.PEDAL_LONG, Place.VEHICLE, Strength.CLEAR, because("SYM-291", finding)));
            }
        }
    }

    /** The pedal leaves too little reserve. */
    private static void sym292(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            for (Threshold limit : facts.thresholds.of(ThresholdCode.PEDAL_RESERVE_LEAST)) {
                if (finding.below(MeasuredQuantity.PEDAL_RESERVE, limit.value())) {
                    facts.symptoms.draw(new Symptom(
                            SymptomCode.PEDAL_LONG, Place.VEHICLE, Strength.CLEAR, because("SYM-292", finding, limit)));
                }
            }
        }
    }

    /** The pedal was found sound, so a long one would show. */
    private static void sym295(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.sound()) {
                facts.symptomObservables.draw(
                        new SymptomObservable(SymptomCode.PEDAL_LONG, Place.VEHICLE, because("SYM-295", finding)));
            }
        }
    }

    /** The driver reports a spongy pedal. */
    private static void sym300(Facts facts) {
        for (Complaint complaint : facts.complaints.of(ComplaintCode.SPONGY_PEDAL)) {
            facts.symptoms.draw(new Symptom(
                    SymptomCode.PEDAL_SPONGY, Place.VEHICLE, Strength.CLEAR, because("SYM-300", complaint)));
        }
    }

    /** The pedal was found spongy. */
    private static void sym301(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.condition() == Condition.SPONGY) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.PEDAL_SPONGY, Place.VEHICLE, Strength.CLEAR, because("SYM-301", finding)));
            }
        }
    }

    /** The pedal was found sound, so a spongy one would show. */
    private static void sym305(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.sound()) {
                facts.symptomObservables.draw(
                        new SymptomObservable(SymptomCode.PEDAL_SPONGY, Place.VEHICLE, because("SYM-305", finding)));
            }
        }
    }

    /** The driver reports a sinking pedal. */
    private static void sym310(Facts facts) {
        for (Complaint complaint : facts.complaints.of(ComplaintCode.SINKING_PEDAL)) {
            facts.symptoms.draw(new Symptom(
                    SymptomCode.PEDAL_SINKING, Place.VEHICLE, Strength.CLEAR, because("SYM-310", complaint)));
        }
    }

    /** The pedal was found sinking. */
    private static void sym311(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.condition() == Condition.SINKING) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.PEDAL_SINKING, Place.VEHICLE, Strength.CLEAR, because("SYM-311", finding)));
            }
        }
    }

    /** The pedal was found sound, so a sinking one would show. */
    private static void sym315(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.sound()) {
                facts.symptomObservables.draw(
                        new SymptomObservable(SymptomCode.PEDAL_SINKING, Place.VEHICLE, because("SYM-315", finding)));
            }
        }
    }

    /** The driver reports a hard pedal. */
    private static void sym320(Facts facts) {
        for (Complaint complaint : facts.complaints.of(ComplaintCode.HARD_PEDAL)) {
            facts.symptoms.draw(
                    new Symptom(SymptomCode.PEDAL_HARD, Place.VEHICLE, Strength.CLEAR, because("SYM-320", complaint)));
        }
    }

    /** The pedal was found hard. */
    private static void sym321(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.condition() == Condition.HARD) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.PEDAL_HARD, Place.VEHICLE, Strength.CLEAR, because("SYM-321", finding)));
            }
        }
    }

    /** The pedal was found sound, so a hard one would show. */
    private static void sym325(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.sound()) {
                facts.symptomObservables.draw(
                        new SymptomObservable(SymptomCode.PEDAL_HARD, Place.VEHICLE, because("SYM-325", finding)));
            }
        }
    }

    /** The driver reports a pulsating pedal. */
    private static void sym330(Facts facts) {
        for (Complaint complaint : facts.complaints.of(ComplaintCode.PULSATING_PEDAL)) {
            facts.symptoms.draw(new Symptom(
                    SymptomCode.PEDAL_PULSATING, Place.VEHICLE, Strength.CLEAR, because("SYM-330", complaint)));
        }
    }

    /** The pedal was found pulsating. */
    private static void sym331(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.condition() == Condition.PULSATING) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.PEDAL_PULSATING, Place.VEHICLE, Strength.CLEAR, because("SYM-331", finding)));
            }
        }
    }

    /** The pedal was found sound, so a pulsating one would show. */
    private static void sym335(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.sound()) {
                facts.symptomObservables.draw(
                        new SymptomObservable(SymptomCode.PEDAL_PULSATING, Place.VEHICLE, because("SYM-335", finding)));
            }
        }
    }

    /** The driver reports loss of brake fluid. */
    private static void sym340(Facts facts) {
        for (Complaint complaint : facts.complaints.of(ComplaintCode.FLUID_LOSS)) {
            facts.symptoms.draw(
                    new Symptom(SymptomCode.FLUID_LOW, Place.VEHICLE, Strength.CLEAR, because("SYM-340", complaint)));
        }
    }

    /** The fluid level was found low. */
    private static void sym341(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.condition() == Condition.LOW || finding.condition() == Condition.NOT_VISIBLE) {
                facts.symptoms.draw(
                        new Symptom(SymptomCode.FLUID_LOW, Place.VEHICLE, Strength.CLEAR, because("SYM-341", finding)));
            }
        }
    }

    /** The fluid level was found good, so a low one would show. */
    private static void sym345(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.sound()) {
                facts.symptomObservables.draw(
                        new SymptomObservable(SymptomCode.FLUID_LOW, Place.VEHICLE, because("SYM-345", finding)));
            }
        }
    }

    /** The driver reports a warning lamp. */
    private static void sym350(Facts facts) {
        for (Complaint complaint : facts.complaints.of(ComplaintCode.WARNING_LAMP)) {
            facts.symptoms.draw(new Symptom(
                    SymptomCode.WARNING_LAMP_LIT, Place.VEHICLE, Strength.CLEAR, because("SYM-350", complaint)));
        }
    }

    /** A warning lamp was found lit. */
    private static void sym351(Facts facts) {
        for (Finding finding : facts.findings.of(Component.WARNING_LAMP)) {
            if (finding.condition() == Condition.LIT) {
                facts.symptoms.draw(new Symptom(
                        SymptomCode.WARNING_LAMP_LIT, Place.VEHICLE, Strength.CLEAR, because("SYM-351", finding)));
            }
        }
    }

    /** The warning lamps were found out as they should be, so a lit one would show. */
    private static void sym355(Facts facts) {
        for (Finding finding : facts.findings.of(Component.WARNING_LAMP)) {
            if (finding.sound()) {
                facts.symptomObservables.draw(new SymptomObservable(
                        SymptomCode.WARNING_LAMP_LIT, Place.VEHICLE, because("SYM-355", finding)));
            }
        }
    }
}
