package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.DeficiencyInForce;
import org.axlecause.facts.Extent;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.FitnessGround;
import org.axlecause.facts.FitnessLevel;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Place;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.StandingFault;
import org.axlecause.facts.StandingLeak;
import org.axlecause.facts.StandingSymptom;
import org.axlecause.facts.SymptomCode;

/**
 * Advice on use where brake fluid leaks, is missing or is bad, or the pedal shows it. The classes of the law differ
 * by country and stand with the deficiencies; this is advice to the workshop, never a certificate.
 */
final class FitnessLeaksAndFluid {

    private FitnessLeaksAndFluid() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        out209(facts);
        out210(facts);
        out213(facts);
        out214(facts);
        out215(facts);
        out201(facts);
        out203(facts);
        out204(facts);
        out205(facts);
        out206(facts);
        out207(facts);
        out208(facts);
        out211(facts);
        out212(facts);
        out216(facts);
        out202(facts);
    }

    /** A pipe, union, hose, valve or the master cylinder leaks. */
    private static void out201(Facts facts) {
        for (StandingLeak leak : facts.standingLeaks.all()) {
            if (leak.component() == Component.BRAKE_PIPE
                    || leak.component() == Component.PIPE_UNION
                    || leak.component() == Component.FLEXIBLE_HOSE
                    || leak.component() == Component.MASTER_CYLINDER
                    || leak.component() == Component.LOAD_SENSING_VALVE) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.DO_NOT_DRIVE, leak.place(), because("OUT-201", leak)));
            }
        }
    }

    /** A leak at a wheel already shows in the brake force. */
    private static void out202(Facts facts) {
        for (StandingLeak leak : facts.standingLeaks.all()) {
            if (leak.component() == Component.WHEEL_CYLINDER
                    || leak.component() == Component.CALLIPER
                    || leak.component() == Component.BLEED_NIPPLE) {
                for (DeficiencyInForce deficiency : facts.deficienciesInForce.all()) {
                    if (deficiency.place().sameAxle(leak.place())
                            && deficiency.code() != DeficiencyCode.WHEEL_CYLINDER_LEAKING
                            && deficiency.code() != DeficiencyCode.CALLIPER_LEAKING
                            && deficiency.code() != DeficiencyCode.FLEXIBLE_HOSE_LEAKING
                            && deficiency.code() != DeficiencyCode.BRAKE_PIPE_LEAKING
                            && deficiency.code() != DeficiencyCode.BRAKE_FLUID_LOW) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.DO_NOT_DRIVE, leak.place(), because("OUT-202", leak, deficiency)));
                    }
                }
            }
        }
    }

    /** A wheel cylinder, calliper or nipple leaks. */
    private static void out203(Facts facts) {
        for (StandingLeak leak : facts.standingLeaks.all()) {
            if (leak.component() == Component.WHEEL_CYLINDER
                    || leak.component() == Component.CALLIPER
                    || leak.component() == Component.BLEED_NIPPLE) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, leak.place(), because("OUT-203", leak)));
            }
        }
    }

    /** A hub seal leaks. */
    private static void out204(Facts facts) {
        for (StandingLeak leak : facts.standingLeaks.all()) {
            if (leak.component() == Component.HUB_SEAL) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, leak.place(), because("OUT-204", leak)));
            }
        }
    }

    /** Brake fluid cannot be seen. */
    private static void out205(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.BRAKE_FLUID)) {
            if (fault.condition() == Condition.NOT_VISIBLE) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.DO_NOT_DRIVE, fault.place(), because("OUT-205", fault)));
            }
        }
    }

    /** Brake fluid is low, more than a little or by an unknown amount. */
    private static void out206(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.BRAKE_FLUID)) {
            if (fault.condition() == Condition.LOW && fault.extent() != Extent.LIGHT) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-206", fault)));
            }
        }
    }

    /** Brake fluid is a little low. */
    private static void out207(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.BRAKE_FLUID)) {
            if (fault.condition() == Condition.LOW && fault.extent() == Extent.LIGHT) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_PLANNED, fault.place(), because("OUT-207", fault)));
            }
        }
    }

    /** Brake fluid is contaminated or of the wrong kind. */
    private static void out208(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.BRAKE_FLUID)) {
            if (fault.condition() == Condition.CONTAMINATED || fault.condition() == Condition.WRONG_PART) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-208", fault)));
            }
        }
    }

    /** The water in the brake fluid is beyond the urgent limit of the policy. */
    private static void out209(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.FLUID_WATER_CONTENT
                    && none(
                            facts.linesDone.all(),
                            done -> done.line().item() == ScopeItem.BRAKE_FLUID
                                    && done.line().action() == ScopeAction.RENEW)) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.FLUID_WATER_CONTENT_URGENT)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) >= 0) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.REPAIR_BEFORE_USE, Place.VEHICLE, because("OUT-209", state, clause)));
                    }
                }
            }
        }
    }

    /** The water in the brake fluid is beyond the limit of the policy. */
    private static void out210(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.FLUID_WATER_CONTENT
                    && none(
                            facts.linesDone.all(),
                            done -> done.line().item() == ScopeItem.BRAKE_FLUID
                                    && done.line().action() == ScopeAction.RENEW)) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.FLUID_WATER_CONTENT)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) >= 0) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.REPAIR_PLANNED, Place.VEHICLE, because("OUT-210", state, clause)));
                    }
                }
            }
        }
    }

    /** The pedal sinks. */
    private static void out211(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.PEDAL)) {
            if (fault.condition() == Condition.SINKING) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.DO_NOT_DRIVE, fault.place(), because("OUT-211", fault)));
            }
        }
    }

    /** The pedal is spongy, long, hard or does not return. */
    private static void out212(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.PEDAL)) {
            if (fault.condition() == Condition.SPONGY
                    || fault.condition() == Condition.LONG_TRAVEL
                    || fault.condition() == Condition.HARD
                    || fault.condition() == Condition.SEIZED
                    || fault.condition() == Condition.TIGHT
                    || fault.condition() == Condition.NOT_RETURNING) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-212", fault)));
            }
        }
    }

    /** The pedal shows as sinking. */
    private static void out213(Facts facts) {
        for (StandingSymptom symptom : facts.standingSymptoms.of(SymptomCode.PEDAL_SINKING)) {
            if (none(
                    facts.partStates.of(Component.PEDAL),
                    state -> state.condition() == Condition.SOUND && state.stage() == FindingStage.AFTER_WORK)) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.DO_NOT_DRIVE, Place.VEHICLE, because("OUT-213", symptom)));
            }
        }
    }

    /** The pedal shows as spongy, long or hard. */
    private static void out214(Facts facts) {
        for (StandingSymptom symptom : facts.standingSymptoms.all()) {
            if ((symptom.code() == SymptomCode.PEDAL_SPONGY
                            || symptom.code() == SymptomCode.PEDAL_LONG
                            || symptom.code() == SymptomCode.PEDAL_HARD)
                    && none(
                            facts.partStates.of(Component.PEDAL),
                            state ->
                                    state.condition() == Condition.SOUND && state.stage() == FindingStage.AFTER_WORK)) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, Place.VEHICLE, because("OUT-214", symptom)));
            }
        }
    }

    /** The level of the brake fluid shows as low and nobody has looked at it. */
    private static void out215(Facts facts) {
        for (StandingSymptom symptom : facts.standingSymptoms.of(SymptomCode.FLUID_LOW)) {
            if (facts.partStates.of(Component.BRAKE_FLUID).isEmpty()) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, Place.VEHICLE, because("OUT-215", symptom)));
            }
        }
    }

    /** A leak at a wheel runs. */
    private static void out216(Facts facts) {
        for (StandingLeak leak : facts.standingLeaks.all()) {
            if (leak.component() == Component.WHEEL_CYLINDER || leak.component() == Component.CALLIPER) {
                for (PartState state : facts.partStates.all()) {
                    if (state.component() == leak.component()
                            && state.condition() == Condition.LEAKING
                            && state.extent() == Extent.SEVERE
                            && state.place().sameWheel(leak.place())) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.DO_NOT_DRIVE, leak.place(), because("OUT-216", leak, state)));
                    }
                }
            }
        }
    }
}
