package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;

import org.axlecause.facts.AxleState;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DueLine;
import org.axlecause.facts.FailedPart;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.PartState;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.SettledCause;

/**
 * Springs, pins and clips: condemned by their state, or renewed as a kit with new shoes on an older vehicle. Torn
 * boots, stretched springs and bent clips are never transferred.
 */
final class Hardware {

    private Hardware() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sco241(facts);
        sco242(facts);
        sco246(facts);
        sco247(facts);
        sco248(facts);
        sco249(facts);
        sco250(facts);
        sco251(facts);
        sco252(facts);
        sco253(facts);
        sco254(facts);
        sco255(facts);
    }

    /** Draws the lines that a due line brings with it. */
    static void follow(Facts facts, DueLine line) {
        sco243(facts, line);
        sco244(facts, line);
        sco245(facts, line);
    }

    /** A return spring is found weak, broken, missing or wrongly fitted. */
    private static void sco241(Facts facts) {
        for (PartState state : facts.partStates.of(Component.RETURN_SPRING)) {
            if ((state.condition() == Condition.BROKEN
                            || state.condition() == Condition.MISSING
                            || state.condition() == Condition.STRETCHED
                            || state.condition() == Condition.CORRODED
                            || state.condition() == Condition.MISFITTED
                            || state.condition() == Condition.DETACHED
                            || state.condition() == Condition.WORN
                            || state.condition() == Condition.WEAK
                            || state.condition() == Condition.HEAT_MARKED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HARDWARE_KIT,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-241", state)));
            }
        }
    }

    /** A hold-down is found weak, broken, missing or wrongly fitted. */
    private static void sco242(Facts facts) {
        for (PartState state : facts.partStates.of(Component.HOLD_DOWN)) {
            if ((state.condition() == Condition.BROKEN
                            || state.condition() == Condition.MISSING
                            || state.condition() == Condition.STRETCHED
                            || state.condition() == Condition.CORRODED
                            || state.condition() == Condition.MISFITTED
                            || state.condition() == Condition.DETACHED
                            || state.condition() == Condition.WORN
                            || state.condition() == Condition.WEAK
                            || state.condition() == Condition.HEAT_MARKED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HARDWARE_KIT,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-242", state)));
            }
        }
    }

    /** Shoes are renewed on a vehicle older than the age for transferring springs. */
    private static void sco243(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW && due.item() == ScopeItem.SHOE_SET) {
            for (PolicyClause clause : facts.policyClauses.of(ClauseCode.HARDWARE_KIT_WITH_SHOES)) {
                if (clause.necessity() != null) {
                    for (PolicyClause age : facts.policyClauses.of(ClauseCode.HARDWARE_KIT_AGE)) {
                        if (any(
                                facts.vehicleLayouts.all(),
                                layout -> layout.ageInYears() != null
                                        && age.value() != null
                                        && layout.ageInYears().compareTo(age.value()) > 0)) {
                            facts.scopeProposals.draw(new ScopeProposal(
                                    ScopeAction.RENEW,
                                    ScopeItem.HARDWARE_KIT,
                                    due.place(),
                                    ScopeExtent.AXLE,
                                    clause.necessity(),
                                    clause.code(),
                                    because("SCO-243", due, clause)));
                        }
                    }
                }
            }
        }
    }

    /** Shoes are renewed on a vehicle that has run beyond the distance for transferring springs. */
    private static void sco244(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW && due.item() == ScopeItem.SHOE_SET) {
            for (PolicyClause clause : facts.policyClauses.of(ClauseCode.HARDWARE_KIT_WITH_SHOES)) {
                if (clause.necessity() != null) {
                    for (PolicyClause distance : facts.policyClauses.of(ClauseCode.HARDWARE_KIT_DISTANCE)) {
                        if (any(
                                facts.vehicleLayouts.all(),
                                layout -> layout.vehicle().odometer() != null
                                        && distance.value() != null
                                        && layout.vehicle().odometer().compareTo(distance.value()) > 0)) {
                            facts.scopeProposals.draw(new ScopeProposal(
                                    ScopeAction.RENEW,
                                    ScopeItem.HARDWARE_KIT,
                                    due.place(),
                                    ScopeExtent.AXLE,
                                    clause.necessity(),
                                    clause.code(),
                                    because("SCO-244", due, clause)));
                        }
                    }
                }
            }
        }
    }

    /** Shoes are renewed on a vehicle of unknown age and distance. */
    private static void sco245(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW
                && due.item() == ScopeItem.SHOE_SET
                && any(
                        facts.vehicleLayouts.all(),
                        layout ->
                                layout.ageInYears() == null && layout.vehicle().odometer() == null)) {
            for (PolicyClause clause : facts.policyClauses.of(ClauseCode.HARDWARE_KIT_WITH_SHOES)) {
                if (clause.necessity() != null) {
                    facts.scopeProposals.draw(new ScopeProposal(
                            ScopeAction.RENEW,
                            ScopeItem.HARDWARE_KIT,
                            due.place(),
                            ScopeExtent.AXLE,
                            clause.necessity(),
                            clause.code(),
                            because("SCO-245", due, clause)));
                }
            }
        }
    }

    /** A return spring or hold-down is confirmed to be broken. */
    private static void sco246(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.RETURN_SPRING_BROKEN || cause.code() == CauseCode.HOLD_DOWN_BROKEN)
                    && cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HARDWARE_KIT,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-246", cause)));
            }
        }
    }

    /** The ledges of a back plate are confirmed to be worn, or shoes to be in the wrong place. */
    private static void sco247(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.BACK_PLATE_LEDGES_WORN || cause.code() == CauseCode.SHOES_MISPLACED)
                    && cause.standing() == CauseStanding.CONFIRMED
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDrum() && axle.place().sameAxle(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.CLEAN,
                        ScopeItem.HARDWARE_KIT,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-247", cause)));
            }
        }
    }

    /** Pads are confirmed to be in the wrong place. */
    private static void sco248(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.SHOES_MISPLACED)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDisc() && axle.place().sameAxle(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.CLEAN,
                        ScopeItem.PAD_SET,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-248", cause)));
            }
        }
    }

    /** A back plate is confirmed to be loose. */
    private static void sco249(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.BACK_PLATE_LOOSE)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BACK_PLATE, cause.place().wheel(), because("SCO-249", cause)));
            }
        }
    }

    /** Adjusters are confirmed to be on the wrong sides, left. */
    private static void sco250(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.ADJUSTER_ON_WRONG_SIDE)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.ADJUSTER, cause.place().left(), because("SCO-250", cause)));
            }
        }
    }

    /** Adjusters are confirmed to be on the wrong sides, right. */
    private static void sco251(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.ADJUSTER_ON_WRONG_SIDE)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.ADJUSTER, cause.place().right(), because("SCO-251", cause)));
            }
        }
    }

    /** Shoes are confirmed to be over-adjusted. */
    private static void sco252(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.SHOES_OVER_ADJUSTED)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.ADJUST,
                        ScopeItem.SHOE_SET,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-252", cause)));
            }
        }
    }

    /** A parking cable is over-tight over service shoes. */
    private static void sco253(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.PARKING_CABLE_OVER_TIGHT)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                for (AxleState axle : facts.axleStates.all()) {
                    if (axle.axle().parkingBrake() == ParkingLayout.CABLE_ON_SERVICE_SHOES) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.ADJUST,
                                ScopeItem.SHOE_SET,
                                axle.place(),
                                ScopeExtent.AXLE,
                                Necessity.REQUIRED,
                                null,
                                because("SCO-253", cause)));
                    }
                }
            }
        }
    }

    /** The ledges of a back plate are confirmed to be worn. */
    private static void sco254(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.BACK_PLATE_LEDGES_WORN)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HARDWARE_KIT,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-254", cause)));
            }
        }
    }

    /** A back plate is confirmed to be loose and its shoes come off. */
    private static void sco255(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.BACK_PLATE_LOOSE)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HARDWARE_KIT,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-255", cause)));
            }
        }
    }
}
