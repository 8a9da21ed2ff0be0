package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Extent;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.FitnessGround;
import org.axlecause.facts.FitnessLevel;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Place;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.StandingFault;
import org.axlecause.facts.StandingSymptom;
import org.axlecause.facts.SymptomCode;

/** Advice on use by the state of parts that neither work nor a look after the work has ended. */
final class FitnessParts {

    private FitnessParts() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        out256(facts);
        out257(facts);
        out258(facts);
        out259(facts);
        out260(facts);
        out231(facts);
        out232(facts);
        out233(facts);
        out234(facts);
        out235(facts);
        out236(facts);
        out237(facts);
        out238(facts);
        out239(facts);
        out240(facts);
        out241(facts);
        out242(facts);
        out243(facts);
        out244(facts);
        out245(facts);
        out246(facts);
        out247(facts);
        out248(facts);
        out249(facts);
        out250(facts);
        out251(facts);
        out252(facts);
        out253(facts);
        out254(facts);
        out255(facts);
    }

    /** A lining or pad is loose, missing or wrongly fitted. */
    private static void out231(Facts facts) {
        for (StandingFault fault : facts.standingFaults.all()) {
            if ((fault.component() == Component.SHOE_LINING || fault.component() == Component.PAD)
                    && (fault.condition() == Condition.DETACHED
                            || fault.condition() == Condition.MISSING
                            || fault.condition() == Condition.MISFITTED)) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.DO_NOT_DRIVE, fault.place(), because("OUT-231", fault)));
            }
        }
    }

    /** A lining or pad is contaminated, worn, cracked or of another kind. */
    private static void out232(Facts facts) {
        for (StandingFault fault : facts.standingFaults.all()) {
            if ((fault.component() == Component.SHOE_LINING || fault.component() == Component.PAD)
                    && (fault.condition() == Condition.SOAKED
                            || fault.condition() == Condition.CONTAMINATED
                            || fault.condition() == Condition.WORN
                            || fault.condition() == Condition.CRACKED
                            || fault.condition() == Condition.WRONG_PART)) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-232", fault)));
            }
        }
    }

    /** A drum or disc is cracked, loose or missing. */
    private static void out233(Facts facts) {
        for (StandingFault fault : facts.standingFaults.all()) {
            if ((fault.component() == Component.DRUM || fault.component() == Component.DISC)
                    && (fault.condition() == Condition.CRACKED
                            || fault.condition() == Condition.BROKEN
                            || fault.condition() == Condition.LOOSE
                            || fault.condition() == Condition.MISSING)) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.DO_NOT_DRIVE, fault.place(), because("OUT-233", fault)));
            }
        }
    }

    /** A drum or disc is worn beyond its size, out of true or contaminated. */
    private static void out234(Facts facts) {
        for (StandingFault fault : facts.standingFaults.all()) {
            if ((fault.component() == Component.DRUM || fault.component() == Component.DISC)
                    && (fault.condition() == Condition.OVERSIZE
                            || fault.condition() == Condition.UNDERSIZE
                            || fault.condition() == Condition.OVAL
                            || fault.condition() == Condition.ECCENTRIC
                            || fault.condition() == Condition.CONTAMINATED)) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-234", fault)));
            }
        }
    }

    /** A drum or disc is scored or corroded, more than a little or by an unknown amount. */
    private static void out235(Facts facts) {
        for (StandingFault fault : facts.standingFaults.all()) {
            if ((fault.component() == Component.DRUM || fault.component() == Component.DISC)
                    && (fault.condition() == Condition.SCORED
                            || fault.condition() == Condition.CORRODED
                            || fault.condition() == Condition.PITTED)
                    && fault.extent() != Extent.LIGHT) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-235", fault)));
            }
        }
    }

    /** A drum or disc is a little scored or corroded. */
    private static void out236(Facts facts) {
        for (StandingFault fault : facts.standingFaults.all()) {
            if ((fault.component() == Component.DRUM || fault.component() == Component.DISC)
                    && (fault.condition() == Condition.SCORED
                            || fault.condition() == Condition.CORRODED
                            || fault.condition() == Condition.PITTED)
                    && fault.extent() == Extent.LIGHT) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_PLANNED, fault.place(), because("OUT-236", fault)));
            }
        }
    }

    /** A back plate is loose or damaged. */
    private static void out237(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.BACK_PLATE)) {
            if (fault.condition() == Condition.LOOSE
                    || fault.condition() == Condition.CRACKED
                    || fault.condition() == Condition.CORRODED
                    || fault.condition() == Condition.BROKEN
                    || fault.condition() == Condition.STRIPPED) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-237", fault)));
            }
        }
    }

    /** A hose is a little cracked. */
    private static void out238(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.FLEXIBLE_HOSE)) {
            if ((fault.condition() == Condition.CRACKED || fault.condition() == Condition.CORRODED)
                    && fault.extent() == Extent.LIGHT) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_PLANNED, fault.place(), because("OUT-238", fault)));
            }
        }
    }

    /** A hose is cracked badly or closed inside. */
    private static void out239(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.FLEXIBLE_HOSE)) {
            if ((fault.condition() == Condition.CRACKED
                            || fault.condition() == Condition.CORRODED
                            || fault.condition() == Condition.SPLIT
                            || fault.condition() == Condition.RESTRICTED
                            || fault.condition() == Condition.BLOCKED)
                    && fault.extent() != Extent.LIGHT) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-239", fault)));
            }
        }
    }

    /** A hose bulges badly or by an unknown amount. */
    private static void out240(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.FLEXIBLE_HOSE)) {
            if (fault.condition() == Condition.BULGING
                    && fault.extent() != Extent.LIGHT
                    && fault.extent() != Extent.MODERATE) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.DO_NOT_DRIVE, fault.place(), because("OUT-240", fault)));
            }
        }
    }

    /** A hose bulges. */
    private static void out241(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.FLEXIBLE_HOSE)) {
            if (fault.condition() == Condition.BULGING && fault.extent() != null && fault.extent() != Extent.SEVERE) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-241", fault)));
            }
        }
    }

    /** A brake pipe is badly corroded or by an unknown amount. */
    private static void out242(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.BRAKE_PIPE)) {
            if ((fault.condition() == Condition.CORRODED
                            || fault.condition() == Condition.PITTED
                            || fault.condition() == Condition.CRACKED
                            || fault.condition() == Condition.BROKEN)
                    && fault.extent() != Extent.LIGHT
                    && fault.extent() != Extent.MODERATE) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.DO_NOT_DRIVE, fault.place(), because("OUT-242", fault)));
            }
        }
    }

    /** A brake pipe is corroded. */
    private static void out243(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.BRAKE_PIPE)) {
            if ((fault.condition() == Condition.CORRODED
                            || fault.condition() == Condition.PITTED
                            || fault.condition() == Condition.CRACKED
                            || fault.condition() == Condition.RESTRICTED)
                    && fault.extent() != null
                    && fault.extent() != Extent.SEVERE) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-243", fault)));
            }
        }
    }

    /** A wheel cylinder or calliper does not work freely. */
    private static void out244(Facts facts) {
        for (StandingFault fault : facts.standingFaults.all()) {
            if ((fault.component() == Component.WHEEL_CYLINDER
                            || fault.component() == Component.CALLIPER
                            || fault.component() == Component.SLIDE_PIN)
                    && (fault.condition() == Condition.SEIZED
                            || fault.condition() == Condition.TIGHT
                            || fault.condition() == Condition.PITTED
                            || fault.condition() == Condition.SPLIT
                            || fault.condition() == Condition.BROKEN
                            || fault.condition() == Condition.WRONG_PART
                            || fault.condition() == Condition.CORRODED)) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-244", fault)));
            }
        }
    }

    /** The parking brake has a bad cable, lever or actuator. */
    private static void out245(Facts facts) {
        for (StandingFault fault : facts.standingFaults.all()) {
            if ((fault.component() == Component.PARKING_CABLE
                            || fault.component() == Component.PARKING_LEVER
                            || fault.component() == Component.PARKING_EQUALISER
                            || fault.component() == Component.SHOE_LEVER
                            || fault.component() == Component.ELECTRIC_PARKING_ACTUATOR)
                    && (fault.condition() == Condition.FRAYED
                            || fault.condition() == Condition.SEIZED
                            || fault.condition() == Condition.TIGHT
                            || fault.condition() == Condition.BROKEN
                            || fault.condition() == Condition.STRETCHED
                            || fault.condition() == Condition.SPLIT
                            || fault.condition() == Condition.OFF_STOP
                            || fault.condition() == Condition.WORN
                            || fault.condition() == Condition.LONG_TRAVEL
                            || fault.condition() == Condition.DETACHED
                            || fault.condition() == Condition.STRIPPED
                            || fault.condition() == Condition.CORRODED
                            || fault.condition() == Condition.NOT_RETURNING
                            || fault.condition() == Condition.WEAK)) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-245", fault)));
            }
        }
    }

    /** An adjuster is bad. */
    private static void out246(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.ADJUSTER)) {
            if (fault.condition() == Condition.SEIZED
                    || fault.condition() == Condition.WORN
                    || fault.condition() == Condition.STRIPPED
                    || fault.condition() == Condition.BROKEN
                    || fault.condition() == Condition.MISSING
                    || fault.condition() == Condition.MISFITTED
                    || fault.condition() == Condition.WRONG_PART
                    || fault.condition() == Condition.CORRODED
                    || fault.condition() == Condition.NOT_TAKEN_UP
                    || fault.condition() == Condition.OVER_ADJUSTED) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-246", fault)));
            }
        }
    }

    /** A load-sensing valve does not work and no anti-lock system is known to stand behind it. */
    private static void out247(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.LOAD_SENSING_VALVE)) {
            if ((fault.condition() == Condition.SEIZED
                            || fault.condition() == Condition.BROKEN
                            || fault.condition() == Condition.CORRODED
                            || fault.condition() == Condition.DETACHED)
                    && none(
                            facts.vehicleLayouts.all(),
                            layout -> Boolean.TRUE.equals(layout.vehicle().antilock()))) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.DO_NOT_DRIVE, fault.place(), because("OUT-247", fault)));
            }
        }
    }

    /** A load-sensing valve does not work. */
    private static void out248(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.LOAD_SENSING_VALVE)) {
            if (fault.condition() == Condition.SEIZED
                    || fault.condition() == Condition.BROKEN
                    || fault.condition() == Condition.CORRODED
                    || fault.condition() == Condition.DETACHED
                    || fault.condition() == Condition.TIGHT) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-248", fault)));
            }
        }
    }

    /** A brake or anti-lock lamp is lit. */
    private static void out249(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.WARNING_LAMP)) {
            if (fault.condition() == Condition.LIT) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-249", fault)));
            }
        }
    }

    /** The master cylinder is defective or loose. */
    private static void out250(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.MASTER_CYLINDER)) {
            if (fault.condition() == Condition.WORN
                    || fault.condition() == Condition.TIGHT
                    || fault.condition() == Condition.SEIZED
                    || fault.condition() == Condition.LOOSE
                    || fault.condition() == Condition.BROKEN
                    || fault.condition() == Condition.CORRODED) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-250", fault)));
            }
        }
    }

    /** The servo gives no help. */
    private static void out251(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.SERVO)) {
            if (fault.condition() == Condition.BROKEN
                    || fault.condition() == Condition.SEIZED
                    || fault.condition() == Condition.DETACHED) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.DO_NOT_DRIVE, fault.place(), because("OUT-251", fault)));
            }
        }
    }

    /** The servo is weak. */
    private static void out252(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.SERVO)) {
            if (fault.condition() == Condition.WORN
                    || fault.condition() == Condition.TIGHT
                    || fault.condition() == Condition.RESTRICTED
                    || fault.condition() == Condition.CRACKED) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-252", fault)));
            }
        }
    }

    /** A hub bearing is loose or rough. */
    private static void out253(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.HUB_BEARING)) {
            if (fault.condition() == Condition.LOOSE
                    || fault.condition() == Condition.WORN
                    || fault.condition() == Condition.PITTED
                    || fault.condition() == Condition.SEIZED
                    || fault.condition() == Condition.BROKEN) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-253", fault)));
            }
        }
    }

    /** A hub bearing is near breaking up. */
    private static void out254(Facts facts) {
        for (StandingFault fault : facts.standingFaults.of(Component.HUB_BEARING)) {
            if ((fault.condition() == Condition.LOOSE
                            || fault.condition() == Condition.WORN
                            || fault.condition() == Condition.PITTED
                            || fault.condition() == Condition.SEIZED
                            || fault.condition() == Condition.BROKEN)
                    && fault.extent() == Extent.SEVERE) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.DO_NOT_DRIVE, fault.place(), because("OUT-254", fault)));
            }
        }
    }

    /** Springs of the shoes are broken or missing. */
    private static void out255(Facts facts) {
        for (StandingFault fault : facts.standingFaults.all()) {
            if ((fault.component() == Component.RETURN_SPRING || fault.component() == Component.HOLD_DOWN)
                    && (fault.condition() == Condition.BROKEN
                            || fault.condition() == Condition.MISSING
                            || fault.condition() == Condition.STRETCHED
                            || fault.condition() == Condition.WEAK
                            || fault.condition() == Condition.DETACHED
                            || fault.condition() == Condition.MISFITTED)) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, fault.place(), because("OUT-255", fault)));
            }
        }
    }

    /** A pad is as thin as the policy lets it become. */
    private static void out256(Facts facts) {
        for (PartState state : facts.partStates.of(Component.PAD)) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.PAD_THICKNESS
                    && state.stage() != FindingStage.AFTER_WORK
                    && none(facts.linesDone.all(), done -> done.mends(state.item(), state.place()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.PAD_RENEWAL_THICKNESS)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) <= 0) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.REPAIR_PLANNED, state.place(), because("OUT-256", state, clause)));
                    }
                }
            }
        }
    }

    /** A shoe lining is as thin as the policy lets it become. */
    private static void out257(Facts facts) {
        for (PartState state : facts.partStates.of(Component.SHOE_LINING)) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.LINING_THICKNESS
                    && state.stage() != FindingStage.AFTER_WORK
                    && none(facts.linesDone.all(), done -> done.mends(state.item(), state.place()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.LINING_RENEWAL_THICKNESS)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) <= 0) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.REPAIR_PLANNED, state.place(), because("OUT-257", state, clause)));
                    }
                }
            }
        }
    }

    /** A shoe lining is thinner than the figure below which it is dangerous. */
    private static void out258(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.LINING_THICKNESS
                    && state.stage() != FindingStage.AFTER_WORK
                    && none(facts.linesDone.all(), done -> done.mends(state.item(), state.place()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.FRICTION_DANGER_THICKNESS)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) < 0) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.DO_NOT_DRIVE, state.place(), because("OUT-258", state, clause)));
                    }
                }
            }
        }
    }

    /** A pad is thinner than the figure below which it is dangerous. */
    private static void out259(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.PAD_THICKNESS
                    && state.stage() != FindingStage.AFTER_WORK
                    && none(facts.linesDone.all(), done -> done.mends(state.item(), state.place()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.FRICTION_DANGER_THICKNESS)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) < 0) {
                        facts.fitnessGrounds.draw(new FitnessGround(
                                FitnessLevel.DO_NOT_DRIVE, state.place(), because("OUT-259", state, clause)));
                    }
                }
            }
        }
    }

    /** A brake or anti-lock lamp shows as lit and was not found out after the work. */
    private static void out260(Facts facts) {
        for (StandingSymptom symptom : facts.standingSymptoms.of(SymptomCode.WARNING_LAMP_LIT)) {
            if (none(
                    facts.partStates.of(Component.WARNING_LAMP),
                    state -> state.condition() == Condition.SOUND && state.stage() == FindingStage.AFTER_WORK)) {
                facts.fitnessGrounds.draw(
                        new FitnessGround(FitnessLevel.REPAIR_BEFORE_USE, Place.VEHICLE, because("OUT-260", symptom)));
            }
        }
    }
}
