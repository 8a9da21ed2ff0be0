package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;

import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DueLine;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Place;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.SettledCause;
import org.axlecause.facts.VehicleLayout;

/**
 * Brake fluid, master cylinder, servo, pressure valves and the pedal: by confirmed cause, by state and by
 * measurement.
 */
final class FluidAndUnits {

    private FluidAndUnits() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sco261(facts);
        sco262(facts);
        sco263(facts);
        sco265(facts);
        sco266(facts);
        sco267(facts);
        sco268(facts);
        sco271(facts);
        sco272(facts);
        sco273(facts);
        sco274(facts);
        sco275(facts);
        sco276(facts);
        sco277(facts);
        sco278(facts);
        sco279(facts);
        sco280(facts);
        sco282(facts);
        sco283(facts);
        sco284(facts);
        sco285(facts);
        sco286(facts);
        sco289(facts);
        sco295(facts);
        sco296(facts);
    }

    /** Draws the lines that a due line brings with it. */
    static void follow(Facts facts, DueLine line) {
        sco264(facts, line);
        sco281(facts, line);
        sco287(facts, line);
        sco288(facts, line);
    }

    /** Brake fluid is confirmed to boil. */
    private static void sco261(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.FLUID_BOILING)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.BRAKE_FLUID,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-261", cause)));
            }
        }
    }

    /** Mineral oil is confirmed in the brake fluid. */
    private static void sco262(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.MINERAL_OIL_IN_FLUID)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HYDRAULIC_SYSTEM,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-262", cause)));
            }
        }
    }

    /** Brake fluid is found to be of the wrong kind. */
    private static void sco263(Facts facts) {
        for (PartState state : facts.partStates.of(Component.BRAKE_FLUID)) {
            if (state.condition() == Condition.WRONG_PART && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HYDRAULIC_SYSTEM,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-263", state)));
            }
        }
    }

    /** Every rubber part of the hydraulic system is renewed. */
    private static void sco264(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW && due.item() == ScopeItem.HYDRAULIC_SYSTEM) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.RENEW,
                    ScopeItem.BRAKE_FLUID,
                    Place.VEHICLE,
                    ScopeExtent.VEHICLE,
                    due.necessity(),
                    null,
                    because("SCO-264", due)));
        }
    }

    /** Brake fluid is found dark or with debris. */
    private static void sco265(Facts facts) {
        for (PartState state : facts.partStates.of(Component.BRAKE_FLUID)) {
            if (state.condition() == Condition.CONTAMINATED && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.BRAKE_FLUID,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-265", state)));
            }
        }
    }

    /** The water in the brake fluid is beyond the urgent limit of the policy. */
    private static void sco266(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.FLUID_WATER_CONTENT
                    && state.stage() != FindingStage.AFTER_WORK) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.FLUID_WATER_CONTENT_URGENT)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) >= 0) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.BRAKE_FLUID,
                                Place.VEHICLE,
                                ScopeExtent.VEHICLE,
                                Necessity.REQUIRED,
                                clause.code(),
                                because("SCO-266", state, clause)));
                    }
                }
            }
        }
    }

    /** The water in the brake fluid is beyond the limit of the policy. */
    private static void sco267(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.FLUID_WATER_CONTENT
                    && state.stage() != FindingStage.AFTER_WORK) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.FLUID_WATER_CONTENT)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) >= 0) {
                        for (PolicyClause renewal : facts.policyClauses.of(ClauseCode.FLUID_RENEWAL)) {
                            if (renewal.necessity() != null) {
                                facts.scopeProposals.draw(new ScopeProposal(
                                        ScopeAction.RENEW,
                                        ScopeItem.BRAKE_FLUID,
                                        Place.VEHICLE,
                                        ScopeExtent.VEHICLE,
                                        renewal.necessity(),
                                        renewal.code(),
                                        because("SCO-267", state, clause, renewal)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** The boiling point of the brake fluid is below the limit of the policy. */
    private static void sco268(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.FLUID_BOILING_POINT
                    && state.stage() != FindingStage.AFTER_WORK) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.FLUID_BOILING_POINT)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) < 0) {
                        for (PolicyClause renewal : facts.policyClauses.of(ClauseCode.FLUID_RENEWAL)) {
                            if (renewal.necessity() != null) {
                                facts.scopeProposals.draw(new ScopeProposal(
                                        ScopeAction.RENEW,
                                        ScopeItem.BRAKE_FLUID,
                                        Place.VEHICLE,
                                        ScopeExtent.VEHICLE,
                                        renewal.necessity(),
                                        renewal.code(),
                                        because("SCO-268", state, clause, renewal)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A master cylinder is confirmed to leak or to let pressure past its seals. */
    private static void sco271(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.MASTER_CYLINDER_BYPASSING
                            || cause.code() == CauseCode.MASTER_CYLINDER_LEAKING)
                    && cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.MASTER_CYLINDER,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-271", cause)));
            }
        }
    }

    /** A master cylinder is found leaking, worn, seized or corroded. */
    private static void sco272(Facts facts) {
        for (PartState state : facts.partStates.of(Component.MASTER_CYLINDER)) {
            if ((state.condition() == Condition.LEAKING
                            || state.condition() == Condition.WORN
                            || state.condition() == Condition.SEIZED
                            || state.condition() == Condition.TIGHT
                            || state.condition() == Condition.CORRODED
                            || state.condition() == Condition.BROKEN)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.MASTER_CYLINDER,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-272", state)));
            }
        }
    }

    /** The ports of a master cylinder are confirmed to stay covered. */
    private static void sco273(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.MASTER_CYLINDER_PORT_COVERED)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.ADJUST,
                        ScopeItem.MASTER_CYLINDER,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-273", cause)));
            }
        }
    }

    /** A servo is confirmed to be weak or to stick on. */
    private static void sco274(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.SERVO_WEAK || cause.code() == CauseCode.SERVO_STICKING_ON)
                    && cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.SERVO,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-274", cause)));
            }
        }
    }

    /** A servo is found broken, worn or stuck. */
    private static void sco275(Facts facts) {
        for (PartState state : facts.partStates.of(Component.SERVO)) {
            if ((state.condition() == Condition.BROKEN
                            || state.condition() == Condition.WORN
                            || state.condition() == Condition.SEIZED
                            || state.condition() == Condition.TIGHT
                            || state.condition() == Condition.CRACKED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.SERVO,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-275", state)));
            }
        }
    }

    /** A load-sensing valve is confirmed to be seized or out of setting. */
    private static void sco276(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.LOAD_SENSING_VALVE_SEIZED)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.ADJUST,
                        ScopeItem.LOAD_SENSING_VALVE,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-276", cause)));
            }
        }
    }

    /** The pressure valve of a circuit is confirmed to be stuck. */
    private static void sco277(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.CIRCUIT_VALVE_STUCK)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.LOAD_SENSING_VALVE,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-277", cause)));
            }
        }
    }

    /** A load-sensing valve is found leaking or broken. */
    private static void sco278(Facts facts) {
        for (PartState state : facts.partStates.of(Component.LOAD_SENSING_VALVE)) {
            if ((state.condition() == Condition.LEAKING
                            || state.condition() == Condition.BROKEN
                            || state.condition() == Condition.CORRODED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.LOAD_SENSING_VALVE,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-278", state)));
            }
        }
    }

    /** A load-sensing valve is found seized or its link off. */
    private static void sco279(Facts facts) {
        for (PartState state : facts.partStates.of(Component.LOAD_SENSING_VALVE)) {
            if ((state.condition() == Condition.SEIZED
                            || state.condition() == Condition.TIGHT
                            || state.condition() == Condition.DETACHED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.ADJUST,
                        ScopeItem.LOAD_SENSING_VALVE,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-279", state)));
            }
        }
    }

    /** A valve of the modulator is confirmed to be faulty. */
    private static void sco280(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.MODULATOR_VALVE_FAULTY)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.ANTILOCK_MODULATOR,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-280", cause)));
            }
        }
    }

    /** A modulator is renewed. */
    private static void sco281(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW && due.item() == ScopeItem.ANTILOCK_MODULATOR) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.BLEED,
                    ScopeItem.ANTILOCK_MODULATOR,
                    Place.VEHICLE,
                    ScopeExtent.VEHICLE,
                    due.necessity(),
                    null,
                    because("SCO-281", due)));
        }
    }

    /** A circuit is confirmed to be lost. */
    private static void sco282(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.CIRCUIT_LOST)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                for (VehicleLayout vehicle : facts.vehicleLayouts.all()) {
                    facts.scopeProposals.draw(new ScopeProposal(
                            ScopeAction.BLEED,
                            ScopeItem.BRAKE_FLUID,
                            vehicle.circuitOf(cause.place()),
                            vehicle.circuitExtentOf(cause.place()),
                            Necessity.REQUIRED,
                            null,
                            because("SCO-282", cause)));
                }
            }
        }
    }

    /** The pedal or its linkage is confirmed to bind. */
    private static void sco283(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.PEDAL_LINKAGE_BINDING)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.FREE,
                        ScopeItem.PEDAL_LINKAGE,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-283", cause)));
            }
        }
    }

    /** An anti-lock sensor is confirmed to be faulty. */
    private static void sco284(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.ANTILOCK_SENSOR_FAULTY)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.ANTILOCK_SENSOR,
                        cause.place().wheel(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-284", cause)));
            }
        }
    }

    /** What the test shows is confirmed to lie outside the brakes or to pass with use. */
    private static void sco285(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.TYRES_UNEQUAL
                            || cause.code() == CauseCode.GRIP_LIMIT
                            || cause.code() == CauseCode.TRANSMISSION_DRAG
                            || cause.code() == CauseCode.REGENERATIVE_BLENDING
                            || cause.code() == CauseCode.LONG_DISUSE
                            || cause.code() == CauseCode.RUST_FILM
                            || cause.code() == CauseCode.LINING_NOT_BEDDED)
                    && cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.MEASURE,
                        ScopeItem.ROLLER_TEST,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-285", cause)));
            }
        }
    }

    /** Brake fluid is confirmed to boil on a vehicle that may have an anti-lock system. */
    private static void sco286(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.FLUID_BOILING)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && any(
                            facts.vehicleLayouts.all(),
                            layout -> !Boolean.FALSE.equals(layout.vehicle().antilock()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.BLEED,
                        ScopeItem.ANTILOCK_MODULATOR,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-286", cause)));
            }
        }
    }

    /** Every rubber part is renewed on a vehicle that may have an anti-lock system. */
    private static void sco287(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW
                && due.item() == ScopeItem.HYDRAULIC_SYSTEM
                && any(
                        facts.vehicleLayouts.all(),
                        layout -> !Boolean.FALSE.equals(layout.vehicle().antilock()))) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.BLEED,
                    ScopeItem.ANTILOCK_MODULATOR,
                    Place.VEHICLE,
                    ScopeExtent.VEHICLE,
                    due.necessity(),
                    null,
                    because("SCO-287", due)));
        }
    }

    /** Every rubber part is renewed and the modulator has some that nobody can reach. */
    private static void sco288(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW
                && due.item() == ScopeItem.HYDRAULIC_SYSTEM
                && any(
                        facts.vehicleLayouts.all(),
                        layout -> !Boolean.FALSE.equals(layout.vehicle().antilock()))) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.RENEW,
                    ScopeItem.ANTILOCK_MODULATOR,
                    Place.VEHICLE,
                    ScopeExtent.VEHICLE,
                    Necessity.OPTIONAL,
                    null,
                    because("SCO-288", due)));
        }
    }

    /** A servo is found soaked with brake fluid. */
    private static void sco289(Facts facts) {
        for (PartState state : facts.partStates.of(Component.SERVO)) {
            if ((state.condition() == Condition.SOAKED || state.condition() == Condition.CONTAMINATED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.SERVO,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-289", state)));
            }
        }
    }

    /** The pedal is found spongy or long after the work. */
    private static void sco295(Facts facts) {
        for (PartState state : facts.partStates.of(Component.PEDAL)) {
            if ((state.condition() == Condition.SPONGY || state.condition() == Condition.LONG_TRAVEL)
                    && state.stage() == FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.BLEED,
                        ScopeItem.BRAKE_FLUID,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-295", state)));
            }
        }
    }

    /** The pedal is found spongy after the work on a vehicle that may have an anti-lock system. */
    private static void sco296(Facts facts) {
        for (PartState state : facts.partStates.of(Component.PEDAL)) {
            if (state.condition() == Condition.SPONGY
                    && state.stage() == FindingStage.AFTER_WORK
                    && any(
                            facts.vehicleLayouts.all(),
                            layout -> !Boolean.FALSE.equals(layout.vehicle().antilock()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.BLEED,
                        ScopeItem.ANTILOCK_MODULATOR,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-296", state)));
            }
        }
    }
}
