package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.Complaint;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DrivenCheckBarred;
import org.axlecause.facts.Extent;
import org.axlecause.facts.Finding;
import org.axlecause.facts.OpeningBarred;
import org.axlecause.facts.Place;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;

/**
 * When no check may run or load the brake: a running leak, a sinking pedal, fluid that can't be seen. What ends the
 * danger is work, not another look, so a later sound finding does not lift it here. And when no wheel is opened yet.
 */
final class BarredChecks {

    private BarredChecks() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sym901(facts);
        sym902(facts);
        sym903(facts);
        sym904(facts);
        sym905(facts);
        sym906(facts);
    }

    /** The pedal sinks under the foot. */
    private static void sym901(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PEDAL)) {
            if (finding.condition() == Condition.SINKING) {
                facts.drivenChecksBarred.draw(new DrivenCheckBarred(Place.VEHICLE, because("SYM-901", finding)));
            }
        }
    }

    /** The driver reports a sinking pedal. */
    private static void sym902(Facts facts) {
        for (Complaint complaint : facts.complaints.of(ComplaintCode.SINKING_PEDAL)) {
            facts.drivenChecksBarred.draw(new DrivenCheckBarred(Place.VEHICLE, because("SYM-902", complaint)));
        }
    }

    /** No brake fluid can be seen in the reservoir. */
    private static void sym903(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_FLUID)) {
            if (finding.condition() == Condition.NOT_VISIBLE) {
                facts.drivenChecksBarred.draw(new DrivenCheckBarred(Place.VEHICLE, because("SYM-903", finding)));
            }
        }
    }

    /** A wheel cylinder or calliper runs with fluid. */
    private static void sym904(Facts facts) {
        for (Finding finding : facts.findings.all()) {
            if ((finding.component() == Component.WHEEL_CYLINDER || finding.component() == Component.CALLIPER)
                    && finding.condition() == Condition.LEAKING
                    && finding.extent() == Extent.SEVERE) {
                facts.drivenChecksBarred.draw(new DrivenCheckBarred(finding.place(), because("SYM-904", finding)));
            }
        }
    }

    /** A pipe, hose, union or the master cylinder leaks. */
    private static void sym905(Facts facts) {
        for (Finding finding : facts.findings.all()) {
            if ((finding.component() == Component.BRAKE_PIPE
                            || finding.component() == Component.FLEXIBLE_HOSE
                            || finding.component() == Component.PIPE_UNION
                            || finding.component() == Component.MASTER_CYLINDER)
                    && finding.condition() == Condition.LEAKING) {
                facts.drivenChecksBarred.draw(new DrivenCheckBarred(finding.place(), because("SYM-905", finding)));
            }
        }
    }

    /** The vehicle as a whole brakes weakly with a hard pedal and nobody has checked the servo. */
    private static void sym906(Facts facts) {
        for (Symptom weak : facts.symptoms.of(SymptomCode.ALL_WHEELS_LOW)) {
            if (facts.findings.of(Component.SERVO).isEmpty()) {
                for (Symptom hard : facts.symptoms.of(SymptomCode.PEDAL_HARD)) {
                    facts.openingBarred.draw(new OpeningBarred(because("SYM-906", weak, hard)));
                }
            }
        }
    }
}
