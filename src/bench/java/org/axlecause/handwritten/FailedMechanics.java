package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Extent;
import org.axlecause.facts.FailedPart;
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

/**
 * Which mechanical parts of a wheel brake and of the parking brake have to go: by the cause that is confirmed, or by
 * the state in which the part was found. Not here: linings, drums and discs.
 */
final class FailedMechanics {

    private FailedMechanics() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sco131(facts);
        sco132(facts);
        sco133(facts);
        sco134(facts);
        sco135(facts);
        sco136(facts);
        sco137(facts);
        sco138(facts);
        sco139(facts);
        sco140(facts);
        sco141(facts);
        sco142(facts);
        sco143(facts);
        sco234(facts);
        sco144(facts);
        sco145(facts);
        sco146(facts);
        sco147(facts);
        sco148(facts);
        sco149(facts);
        sco150(facts);
    }

    /** The slide pins of a calliper are confirmed to be seized. */
    private static void sco131(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.SLIDE_PINS_SEIZED)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.SLIDE_PIN_KIT, cause.place().wheel(), because("SCO-131", cause)));
            }
        }
    }

    /** A slide pin is found seized, tight, corroded, worn or with a torn boot. */
    private static void sco132(Facts facts) {
        for (PartState state : facts.partStates.of(Component.SLIDE_PIN)) {
            if ((state.condition() == Condition.SEIZED
                            || state.condition() == Condition.TIGHT
                            || state.condition() == Condition.CORRODED
                            || state.condition() == Condition.WORN
                            || state.condition() == Condition.SPLIT
                            || state.condition() == Condition.MISSING)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.SLIDE_PIN_KIT, state.place().wheel(), because("SCO-132", state)));
            }
        }
    }

    /** A parking cable is confirmed to be seized. */
    private static void sco133(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.PARKING_CABLE_SEIZED)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.PARKING_CABLE, cause.place().wheel(), because("SCO-133", cause)));
            }
        }
    }

    /** A parking cable is found seized, tight, frayed, broken, stretched or with a split sheath. */
    private static void sco134(Facts facts) {
        for (PartState state : facts.partStates.of(Component.PARKING_CABLE)) {
            if ((state.condition() == Condition.SEIZED
                            || state.condition() == Condition.TIGHT
                            || state.condition() == Condition.FRAYED
                            || state.condition() == Condition.BROKEN
                            || state.condition() == Condition.STRETCHED
                            || state.condition() == Condition.SPLIT)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.PARKING_CABLE, state.place().wheel(), because("SCO-134", state)));
            }
        }
    }

    /** An adjuster is found seized, worn, stripped, broken, missing or wrongly fitted. */
    private static void sco135(Facts facts) {
        for (PartState state : facts.partStates.of(Component.ADJUSTER)) {
            if ((state.condition() == Condition.SEIZED
                            || state.condition() == Condition.WORN
                            || state.condition() == Condition.STRIPPED
                            || state.condition() == Condition.BROKEN
                            || state.condition() == Condition.CORRODED
                            || state.condition() == Condition.MISSING
                            || state.condition() == Condition.MISFITTED
                            || state.condition() == Condition.WRONG_PART)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.ADJUSTER, state.place().wheel(), because("SCO-135", state)));
            }
        }
    }

    /** A hub seal is confirmed to leak. */
    private static void sco136(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.HUB_SEAL_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.HUB_SEAL, cause.place().wheel(), because("SCO-136", cause)));
            }
        }
    }

    /** A hub seal is found leaking, worn, split or misfitted. */
    private static void sco137(Facts facts) {
        for (PartState state : facts.partStates.of(Component.HUB_SEAL)) {
            if ((state.condition() == Condition.LEAKING
                            || state.condition() == Condition.WORN
                            || state.condition() == Condition.SPLIT
                            || state.condition() == Condition.MISFITTED
                            || state.condition() == Condition.BROKEN)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.HUB_SEAL, state.place().wheel(), because("SCO-137", state)));
            }
        }
    }

    /** A hub bearing is found loose, worn, pitted or seized. */
    private static void sco138(Facts facts) {
        for (PartState state : facts.partStates.of(Component.HUB_BEARING)) {
            if ((state.condition() == Condition.LOOSE
                            || state.condition() == Condition.WORN
                            || state.condition() == Condition.PITTED
                            || state.condition() == Condition.SEIZED
                            || state.condition() == Condition.BROKEN)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.HUB_BEARING, state.place().wheel(), because("SCO-138", state)));
            }
        }
    }

    /** The play of a hub bearing is beyond the workshop limit. */
    private static void sco139(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.HUB_PLAY
                    && state.stage() != FindingStage.AFTER_WORK) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.HUB_PLAY)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) > 0) {
                        facts.failedParts.draw(new FailedPart(
                                ScopeItem.HUB_BEARING, state.place().wheel(), because("SCO-139", state, clause)));
                    }
                }
            }
        }
    }

    /** A back plate is found cracked, corroded through, broken or stripped. */
    private static void sco140(Facts facts) {
        for (PartState state : facts.partStates.of(Component.BACK_PLATE)) {
            if ((state.condition() == Condition.CRACKED
                            || state.condition() == Condition.CORRODED
                            || state.condition() == Condition.BROKEN
                            || state.condition() == Condition.STRIPPED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BACK_PLATE, state.place().wheel(), because("SCO-140", state)));
            }
        }
    }

    /** A parking equaliser is found seized, broken or detached. */
    private static void sco141(Facts facts) {
        for (PartState state : facts.partStates.of(Component.PARKING_EQUALISER)) {
            if ((state.condition() == Condition.SEIZED
                            || state.condition() == Condition.TIGHT
                            || state.condition() == Condition.BROKEN
                            || state.condition() == Condition.DETACHED
                            || state.condition() == Condition.CORRODED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(new FailedPart(
                        ScopeItem.PARKING_EQUALISER, state.place().wheel(), because("SCO-141", state)));
            }
        }
    }

    /** The actuator of an electric parking brake is found seized, broken or corroded. */
    private static void sco142(Facts facts) {
        for (PartState state : facts.partStates.of(Component.ELECTRIC_PARKING_ACTUATOR)) {
            if ((state.condition() == Condition.SEIZED
                            || state.condition() == Condition.BROKEN
                            || state.condition() == Condition.CORRODED
                            || state.condition() == Condition.STRIPPED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.PARKING_ACTUATOR, state.place().wheel(), because("SCO-142", state)));
            }
        }
    }

    /** Pads are confirmed to be seized in their carrier. */
    private static void sco143(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.PADS_SEIZED_IN_CARRIER)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.CLEAN,
                        ScopeItem.SLIDE_PIN_KIT,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-143", cause)));
            }
        }
    }

    /** Rust has jammed a pad in its carrier. */
    private static void sco234(Facts facts) {
        for (PartState state : facts.partStates.of(Component.PAD)) {
            if (state.condition() == Condition.SEIZED
                    && state.extent() == Extent.SEVERE
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.CALLIPER_CARRIER,
                        state.place().wheel(),
                        ScopeExtent.WHEEL,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-234", state)));
            }
        }
    }

    /** A parking cable is confirmed to be broken. */
    private static void sco144(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.PARKING_CABLE_BROKEN)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.PARKING_CABLE, cause.place().wheel(), because("SCO-144", cause)));
            }
        }
    }

    /** A parking cable is confirmed to be slack or over-tight. */
    private static void sco145(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.PARKING_CABLE_STRETCHED
                            || cause.code() == CauseCode.PARKING_CABLE_OVER_TIGHT)
                    && cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.ADJUST,
                        ScopeItem.PARKING_BRAKE,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-145", cause)));
            }
        }
    }

    /** A parking equaliser is confirmed to be seized. */
    private static void sco146(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.PARKING_EQUALISER_SEIZED)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(new FailedPart(
                        ScopeItem.PARKING_EQUALISER, cause.place().wheel(), because("SCO-146", cause)));
            }
        }
    }

    /** The lever on a shoe is confirmed to be seized. */
    private static void sco147(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.SHOE_LEVER_SEIZED)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HARDWARE_KIT,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-147", cause)));
            }
        }
    }

    /** Parking shoes in a disc are confirmed to be worn. */
    private static void sco148(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.PARKING_SHOES_WORN)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.PARKING_SHOE_SET,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-148", cause)));
            }
        }
    }

    /** The actuator of an electric parking brake is confirmed to be weak. */
    private static void sco149(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.ELECTRIC_PARKING_ACTUATOR_WEAK)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.PARKING_ACTUATOR, cause.place().wheel(), because("SCO-149", cause)));
            }
        }
    }

    /** A hub bearing is confirmed to be worn. */
    private static void sco150(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.HUB_BEARING_WORN)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.HUB_BEARING, cause.place().wheel(), because("SCO-150", cause)));
            }
        }
    }
}
