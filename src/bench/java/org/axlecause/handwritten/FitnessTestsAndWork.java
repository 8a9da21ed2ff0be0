package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DecidedLine;
import org.axlecause.facts.Decision;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.DeficiencyInForce;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.FitnessGround;
import org.axlecause.facts.FitnessLevel;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Place;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.RefusedWork;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.RetestComparison;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.Stage;
import org.axlecause.facts.StandingCause;
import org.axlecause.facts.StandingDeficiency;
import org.axlecause.facts.StandingFault;
import org.axlecause.facts.StandingSymptom;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.Strength;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.TestedAxle;
import org.axlecause.facts.VehicleLayout;
import org.axlecause.facts.WorkOutcome;

/**
 * Advice on use by what tests show, by causes that stand and by work that is begun and not proven. Two independent
 * repairs on one axle weigh more than one; a cause and its own effects count as one.
 */
final class FitnessTestsAndWork {

    private FitnessTestsAndWork() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        out281(facts);
        out282(facts);
        out283(facts);
        out284(facts);
        out289(facts);
        out290(facts);
        out294(facts);
        out293(facts);
        out271(facts);
        out272(facts);
        out273(facts);
        out274(facts);
        out295(facts);
        out279(facts);
        out280(facts);
        out288(facts);
        out292(facts);
        out285(facts);
        out286(facts);
        out291(facts);
        out287(facts);
        out275(facts);
        out276(facts);
        out277(facts);
        out278(facts);
    }

    /** A deficiency of the dangerous class stands. */
    private static void out271(Facts facts) {
        for (DeficiencyInForce deficiency : facts.deficienciesInForce.all()) {
            if (deficiency.severity() == DeficiencyClass.DANGEROUS) {
                facts.fitnessGrounds.draw(new FitnessGround(
                        FitnessLevel.DO_NOT_DRIVE, deficiency.place(), because("OUT-271", deficiency)));
            }
        }
    }

    /** A deficiency of the major class stands. */
    private static void out272(Facts facts) {
        for (DeficiencyInForce deficiency : facts.deficienciesInForce.all()) {
            if (deficiency.severity() == DeficiencyClass.MAJOR) {
                facts.fitnessGrounds.draw(new FitnessGround(
                        FitnessLevel.REPAIR_BEFORE_USE, deficiency.place(), because("OUT-272", deficiency)));
            }
        }
    }

    /** A deficiency stands that the inspector has to judge. */
    private static void out273(Facts facts) {
        for (DeficiencyInForce deficiency : facts.deficienciesInForce.all()) {
            if (deficiency.severity() == null && !deficiency.ofPolicy()) {
                facts.fitnessGrounds.draw(new FitnessGround(
                        FitnessLevel.REPAIR_BEFORE_USE, deficiency.place(), because("OUT-273", deficiency)));
            }
        }
    }

    /** A deficiency of the minor class stands. */
    private static void out274(Facts facts) {
        for (DeficiencyInForce deficiency : facts.deficienciesInForce.all()) {
            if (deficiency.severity() == DeficiencyClass.MINOR) {
                facts.fitnessGrounds.draw(new FitnessGround(
                        FitnessLevel.REPAIR_PLANNED, deficiency.place(), because("OUT-274", deficiency)));
            }
        }
    }

    /** A figure stands that keeps the law and breaks a limit of the policy. */
    private static void out295(Facts facts) {
        for (DeficiencyInForce deficiency : facts.deficienciesInForce.all()) {
            if (deficiency.ofPolicy()) {
                facts.fitnessGrounds.draw(new FitnessGround(
                        FitnessLevel.REPAIR_PLANNED, deficiency.place(), because("OUT-295", deficiency)));
            }
        }
    }

    /** A confirmed cause stands. */
    private static void out275(Facts facts) {
        for (StandingCause cause : facts.standingCauses.all()) {
            facts.fitnessGrounds.draw(
                    new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, cause.place(), because("OUT-275", cause)));
        }
    }

    /** Two independent causes stand on one axle. */
    private static void out276(Facts facts) {
        for (StandingCause first : facts.standingCauses.all()) {
            for (StandingCause second : facts.standingCauses.all()) {
                if (second.followsOnAxle(first)) {
                    facts.fitnessGrounds.draw(new FitnessGround(
                            FitnessLevel.DO_NOT_DRIVE, first.place().axlePlace(), because("OUT-276", first, second)));
                }
            }
        }
    }

    /** A cause stands on a steered axle while the pedal shows a fault. */
    private static void out277(Facts facts) {
        for (StandingCause cause : facts.standingCauses.all()) {
            if (any(
                            facts.axleStates.all(),
                            axle -> axle.axle().steered() && axle.place().sameAxle(cause.place()))
                    && none(
                            facts.partStates.of(Component.PEDAL),
                            state ->
                                    state.condition() == Condition.SOUND && state.stage() == FindingStage.AFTER_WORK)) {
                for (StandingSymptom symptom : facts.standingSymptoms.all()) {
                    if (symptom.code() == SymptomCode.PEDAL_SPONGY
                            || symptom.code() == SymptomCode.PEDAL_LONG
                            || symptom.code() == SymptomCode.PEDAL_HARD
                            || symptom.code() == SymptomCode.PEDAL_PULSATING) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.DO_NOT_DRIVE, cause.place(), because("OUT-277", cause, symptom)));
                    }
                }
            }
        }
    }

    /** A cause stands on a steered axle while the pedal was found faulty. */
    private static void out278(Facts facts) {
        for (StandingCause cause : facts.standingCauses.all()) {
            if (any(
                    facts.axleStates.all(),
                    axle -> axle.axle().steered() && axle.place().sameAxle(cause.place()))) {
                for (StandingFault fault : facts.standingFaults.of(Component.PEDAL)) {
                    facts.fitnessGrounds.draw(new FitnessGround(
                            FitnessLevel.DO_NOT_DRIVE, cause.place(), because("OUT-278", cause, fault)));
                }
            }
        }
    }

    /** Work is done on an axle and no test of it after that is on record. */
    private static void out281(Facts facts) {
        for (LineDone done : facts.linesDone.all()) {
            if (done.isChangingForce()
                    && done.line().place().axle() != null
                    && none(
                            facts.retestComparisons.all(),
                            comparison -> comparison.isTested()
                                    && comparison.place().sameAxle(done.line().place()))) {
                facts.fitnessGrounds.draw(new FitnessGround(
                        FitnessLevel.REPAIR_BEFORE_USE, done.line().place().axlePlace(), because("OUT-281", done)));
            }
        }
    }

    /** Work is done on a circuit or the vehicle and no test after that is on record. */
    private static void out282(Facts facts) {
        for (LineDone done : facts.linesDone.all()) {
            if (done.isChangingForce()
                    && done.line().place().axle() == null
                    && none(facts.retestComparisons.all(), comparison -> comparison.isTested())) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, Place.VEHICLE, because("OUT-282", done)));
            }
        }
    }

    /** A figure of the final test is beyond the limit. */
    private static void out283(Facts facts) {
        for (RetestComparison figure : facts.retestComparisons.all()) {
            if (figure.isTested() && !figure.withinLimit()) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, figure.place(), because("OUT-283", figure)));
            }
        }
    }

    /** An electric parking brake was put into service mode and not calibrated after. */
    private static void out284(Facts facts) {
        for (ReportedStep step : facts.reportedSteps.all()) {
            if (step.step() == StepCode.SERVICE_MODE
                    && step.outcome() == WorkOutcome.DONE
                    && none(
                            facts.reportedSteps.all(),
                            reported -> reported.step() == StepCode.CALIBRATE_PARKING_BRAKE
                                    && reported.outcome() == WorkOutcome.DONE)) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, step.place(), because("OUT-284", step)));
            }
        }
    }

    /** Every axle was tested, nothing stands and nothing is suspected. */
    private static void out291(Facts facts) {
        if (!facts.openLines.isEmpty()
                || !facts.standingLeaks.isEmpty()
                || !facts.standingFaults.isEmpty()
                || !facts.deficienciesInForce.isEmpty()
                || !facts.standingSymptoms.isEmpty()) {
            return;
        }
        for (VehicleLayout vehicle : facts.vehicleLayouts.all()) {
            for (TestedAxle parking : facts.testedAxles.all()) {
                if (parking.brake() == BrakeSystem.PARKING
                        && none(
                                facts.axleStates.all(),
                                axle -> none(
                                        facts.testedAxles.all(),
                                        tested -> tested.place().equals(axle.place())
                                                && tested.brake() == BrakeSystem.SERVICE))
                        && none(
                                facts.settledCauses.all(),
                                cause -> cause.standing() == CauseStanding.SUSPECTED && cause.root())
                        && none(facts.retestComparisons.all(), figure -> figure.isTested() && !figure.withinLimit())) {
                    facts.fitnessGrounds.draw(new FitnessGround(
                            FitnessLevel.NO_RESTRICTION_FOUND, Place.VEHICLE, because("OUT-291", vehicle, parking)));
                }
            }
        }
    }

    /** A deficiency stands on a steered axle while the pedal shows a fault. */
    private static void out279(Facts facts) {
        for (DeficiencyInForce deficiency : facts.deficienciesInForce.all()) {
            if (!deficiency.ofPolicy()
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().steered() && axle.place().sameAxle(deficiency.place()))
                    && none(
                            facts.partStates.of(Component.PEDAL),
                            state ->
                                    state.condition() == Condition.SOUND && state.stage() == FindingStage.AFTER_WORK)) {
                for (StandingSymptom symptom : facts.standingSymptoms.all()) {
                    if (symptom.code() == SymptomCode.PEDAL_SPONGY
                            || symptom.code() == SymptomCode.PEDAL_LONG
                            || symptom.code() == SymptomCode.PEDAL_HARD
                            || symptom.code() == SymptomCode.PEDAL_PULSATING) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.DO_NOT_DRIVE,
                                deficiency.place(),
                                because("OUT-279", deficiency, symptom)));
                    }
                }
            }
        }
    }

    /** A deficiency stands on a steered axle while the pedal was found faulty. */
    private static void out280(Facts facts) {
        for (DeficiencyInForce deficiency : facts.deficienciesInForce.all()) {
            if (!deficiency.ofPolicy()
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().steered() && axle.place().sameAxle(deficiency.place()))) {
                for (StandingFault fault : facts.standingFaults.of(Component.PEDAL)) {
                    facts.fitnessGrounds.draw(new FitnessGround(
                            FitnessLevel.DO_NOT_DRIVE, deficiency.place(), because("OUT-280", deficiency, fault)));
                }
            }
        }
    }

    /** A required line was refused. */
    private static void out285(Facts facts) {
        for (ScopeProposal line : facts.scopeProposals.all()) {
            LineKey key = line.line();
            if (line.necessity() == Necessity.REQUIRED
                    && none(facts.linesDone.all(), done -> done.line().equals(key))
                    && none(facts.departures.all(), departure -> departure.frees(line))) {
                for (DecidedLine decided : facts.decidedLines.all()) {
                    if (decided.line().equals(key) && decided.decision() == Decision.REFUSED) {
                        facts.refusedWork.draw(
                                new RefusedWork(key, decided.decision(), because("OUT-285", decided, line)));
                    }
                }
            }
        }
    }

    /** A required line was put off. */
    private static void out286(Facts facts) {
        for (ScopeProposal line : facts.scopeProposals.all()) {
            LineKey key = line.line();
            if (line.necessity() == Necessity.REQUIRED
                    && none(facts.linesDone.all(), done -> done.line().equals(key))
                    && none(facts.departures.all(), departure -> departure.frees(line))) {
                for (DecidedLine decided : facts.decidedLines.all()) {
                    if (decided.line().equals(key) && decided.decision() == Decision.LATER) {
                        facts.refusedWork.draw(
                                new RefusedWork(key, decided.decision(), because("OUT-286", decided, line)));
                    }
                }
            }
        }
    }

    /** Required work was refused or put off. */
    private static void out287(Facts facts) {
        for (RefusedWork refused : facts.refusedWork.all()) {
            facts.fitnessGrounds.draw(new FitnessGround(
                    FitnessLevel.REPAIR_BEFORE_USE, refused.line().place(), because("OUT-287", refused)));
        }
    }

    /** A wheel gives no effort. */
    private static void out288(Facts facts) {
        for (DeficiencyInForce deficiency : facts.deficienciesInForce.all()) {
            if (deficiency.code() == DeficiencyCode.NO_EFFORT_AT_WHEEL) {
                facts.fitnessGrounds.draw(new FitnessGround(
                        FitnessLevel.DO_NOT_DRIVE, deficiency.place(), because("OUT-288", deficiency)));
            }
        }
    }

    /** One wheel of a steered axle is very low. */
    private static void out289(Facts facts) {
        for (StandingSymptom symptom : facts.standingSymptoms.of(SymptomCode.ONE_WHEEL_LOW)) {
            if (symptom.strength() == Strength.STRONG
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().steered() && axle.place().sameAxle(symptom.place()))) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.DO_NOT_DRIVE, symptom.place(), because("OUT-289", symptom)));
            }
        }
    }

    /** One wheel of an axle is low. */
    private static void out290(Facts facts) {
        for (StandingSymptom symptom : facts.standingSymptoms.of(SymptomCode.ONE_WHEEL_LOW)) {
            facts.fitnessGrounds.draw(
                    new FitnessGround(FitnessLevel.REPAIR_PLANNED, symptom.place(), because("OUT-290", symptom)));
        }
    }

    /** The wheels of an axle differ a little. */
    private static void out294(Facts facts) {
        for (TestedAxle tested : facts.testedAxles.all()) {
            if (tested.brake() == BrakeSystem.SERVICE
                    && tested.stage() != Stage.FINAL
                    && tested.imbalance() != null
                    && none(
                            facts.standingSymptoms.of(SymptomCode.ONE_WHEEL_LOW),
                            symptom -> symptom.place().sameAxle(tested.place()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.SLIGHT_UNEVENNESS)) {
                    if (clause.value() != null && tested.imbalance().compareTo(clause.value()) >= 0) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.REPAIR_PLANNED, tested.place(), because("OUT-294", tested, clause)));
                    }
                }
            }
        }
    }

    /** A brake binds that bears the marks of heat. */
    private static void out292(Facts facts) {
        for (DeficiencyInForce deficiency : facts.deficienciesInForce.all()) {
            if (deficiency.code() == DeficiencyCode.BINDING) {
                for (StandingFault fault : facts.standingFaults.all()) {
                    if (fault.condition() == Condition.HEAT_MARKED
                            && fault.place().sameAxle(deficiency.place())) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.DO_NOT_DRIVE, deficiency.place(), because("OUT-292", deficiency, fault)));
                    }
                }
            }
        }
    }

    /** The efficiency of the service brake reaches no more than a share of its minimum. */
    private static void out293(Facts facts) {
        for (StandingDeficiency deficiency : facts.standingDeficiencies.all()) {
            if (deficiency.code() == DeficiencyCode.SERVICE_EFFICIENCY
                    && !deficiency.ofPolicy()
                    && deficiency.share() != null) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.EFFICIENCY_DANGER_SHARE)) {
                    if (clause.value() != null && deficiency.share().compareTo(clause.value()) < 0) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.DO_NOT_DRIVE, deficiency.place(), because("OUT-293", deficiency, clause)));
                    }
                }
            }
        }
    }
}
