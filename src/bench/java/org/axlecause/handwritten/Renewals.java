package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import java.util.List;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
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
import org.axlecause.facts.VehicleLayout;

/**
 * What a failed part makes the scope: the part itself, and its twin on the other side of the axle as far as the
 * policy wants it. The failed part is required; a sound twin stays the owner's decision unless its own state condemns
 * it.
 */
final class Renewals {

    private Renewals() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sco223(facts);
        sco224(facts);
        sco225(facts);
        sco228(facts);
        sco229(facts);
        sco230(facts);
        sco233(facts);
        sco226(facts);
        sco227(facts);
        sco201(facts);
        sco202(facts);
        sco203(facts);
        sco204(facts);
        sco205(facts);
        sco206(facts);
        sco207(facts);
        sco208(facts);
        sco209(facts);
        sco210(facts);
        sco211(facts);
        sco212(facts);
        sco213(facts);
        sco214(facts);
        sco215(facts);
        sco216(facts);
        sco217(facts);
        sco218(facts);
        sco219(facts);
        sco220(facts);
        sco221(facts);
        sco222(facts);
        sco231(facts);
        sco232(facts);
    }

    /** A wheel cylinder has failed. */
    private static void sco201(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.WHEEL_CYLINDER)) {
            if (!failed.isOnBothWheels()) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.WHEEL_CYLINDER,
                        failed.place(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-201", failed)));
            }
        }
    }

    /** The wheel cylinder opposite a failed one has the same age and fluid. */
    private static void sco202(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.WHEEL_CYLINDER)) {
            if (failed.isAtWheel()
                    && none(
                            facts.latelyRenewed.of(ScopeItem.WHEEL_CYLINDER),
                            renewed -> renewed.place().covers(failed.place().opposite()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.TWIN_HYDRAULIC_PART)) {
                    if (clause.necessity() != null) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.WHEEL_CYLINDER,
                                failed.place().opposite(),
                                ScopeExtent.WHEEL,
                                clause.necessity(),
                                clause.code(),
                                because("SCO-202", failed, clause)));
                    }
                }
            }
        }
    }

    /** A calliper has failed. */
    private static void sco203(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.CALLIPER)) {
            if (!failed.isOnBothWheels()) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.CALLIPER,
                        failed.place(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-203", failed)));
            }
        }
    }

    /** The calliper opposite a failed one has reached the age at which its twin failed. */
    private static void sco204(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.CALLIPER)) {
            if (failed.isAtWheel()
                    && none(
                            facts.latelyRenewed.of(ScopeItem.CALLIPER),
                            renewed -> renewed.place().covers(failed.place().opposite()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.TWIN_CALLIPER)) {
                    if (clause.necessity() != null) {
                        for (PolicyClause age : facts.policyClauses.of(ClauseCode.TWIN_CALLIPER_AGE)) {
                            for (VehicleLayout vehicle : facts.vehicleLayouts.all()) {
                                if (vehicle.ageInYears() != null
                                        && age.value() != null
                                        && vehicle.ageInYears().compareTo(age.value()) > 0) {
                                    facts.scopeProposals.draw(new ScopeProposal(
                                            ScopeAction.RENEW,
                                            ScopeItem.CALLIPER,
                                            failed.place().opposite(),
                                            ScopeExtent.WHEEL,
                                            clause.necessity(),
                                            clause.code(),
                                            because("SCO-204", failed, clause, vehicle)));
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** Slide pins have failed. */
    private static void sco205(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.SLIDE_PIN_KIT)) {
            if (!failed.isOnBothWheels()) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.SLIDE_PIN_KIT,
                        failed.place(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-205", failed)));
            }
        }
    }

    /** A flexible hose has failed. */
    private static void sco206(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.FLEXIBLE_HOSE)) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.RENEW,
                    ScopeItem.FLEXIBLE_HOSE,
                    failed.place(),
                    failed.extent(),
                    Necessity.REQUIRED,
                    null,
                    because("SCO-206", failed)));
        }
    }

    /** The flexible hose opposite a failed one has the same age. */
    private static void sco207(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.FLEXIBLE_HOSE)) {
            if (failed.isAtWheel()
                    && none(
                            facts.latelyRenewed.of(ScopeItem.FLEXIBLE_HOSE),
                            renewed -> renewed.place().covers(failed.place().opposite()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.TWIN_FLEXIBLE_HOSE)) {
                    if (clause.necessity() != null) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.FLEXIBLE_HOSE,
                                failed.place().opposite(),
                                ScopeExtent.WHEEL,
                                clause.necessity(),
                                clause.code(),
                                because("SCO-207", failed, clause)));
                    }
                }
            }
        }
    }

    /** A brake pipe has to go. */
    private static void sco208(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.BRAKE_PIPE)) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.FABRICATE,
                    ScopeItem.BRAKE_PIPE,
                    failed.place(),
                    failed.extent(),
                    Necessity.REQUIRED,
                    null,
                    because("SCO-208", failed)));
        }
    }

    /** The brake pipe opposite a failed one has seen the same salt. */
    private static void sco209(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.BRAKE_PIPE)) {
            if (failed.isAtWheel()
                    && none(
                            facts.latelyRenewed.of(ScopeItem.BRAKE_PIPE),
                            renewed -> renewed.place().covers(failed.place().opposite()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.TWIN_BRAKE_PIPE)) {
                    if (clause.necessity() != null) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.FABRICATE,
                                ScopeItem.BRAKE_PIPE,
                                failed.place().opposite(),
                                ScopeExtent.WHEEL,
                                clause.necessity(),
                                clause.code(),
                                because("SCO-209", failed, clause)));
                    }
                }
            }
        }
    }

    /** A parking cable has failed. */
    private static void sco210(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.PARKING_CABLE)) {
            if (!failed.isOnBothWheels()) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.PARKING_CABLE,
                        failed.place(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-210", failed)));
            }
        }
    }

    /** The parking cable opposite a failed one has the same age. */
    private static void sco211(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.PARKING_CABLE)) {
            if (failed.isAtWheel()
                    && none(
                            facts.latelyRenewed.of(ScopeItem.PARKING_CABLE),
                            renewed -> renewed.place().covers(failed.place().opposite()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.TWIN_PARKING_CABLE)) {
                    if (clause.necessity() != null) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.PARKING_CABLE,
                                failed.place().opposite(),
                                ScopeExtent.WHEEL,
                                clause.necessity(),
                                clause.code(),
                                because("SCO-211", failed, clause)));
                    }
                }
            }
        }
    }

    /** An adjuster has failed. */
    private static void sco212(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.ADJUSTER)) {
            if (!failed.isOnBothWheels()) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.ADJUSTER,
                        failed.place(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-212", failed)));
            }
        }
    }

    /** The adjuster opposite a failed one has the same age. */
    private static void sco213(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.ADJUSTER)) {
            if (failed.isAtWheel()
                    && none(
                            facts.latelyRenewed.of(ScopeItem.ADJUSTER),
                            renewed -> renewed.place().covers(failed.place().opposite()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.TWIN_ADJUSTER)) {
                    if (clause.necessity() != null) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.ADJUSTER,
                                failed.place().opposite(),
                                ScopeExtent.WHEEL,
                                clause.necessity(),
                                clause.code(),
                                because("SCO-213", failed, clause)));
                    }
                }
            }
        }
    }

    /** A hub seal has failed. */
    private static void sco214(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.HUB_SEAL)) {
            if (!failed.isOnBothWheels()) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HUB_SEAL,
                        failed.place(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-214", failed)));
            }
        }
    }

    /** A hub bearing has failed. */
    private static void sco215(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.HUB_BEARING)) {
            if (!failed.isOnBothWheels()) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HUB_BEARING,
                        failed.place(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-215", failed)));
            }
        }
    }

    /** A bleed nipple has failed. */
    private static void sco216(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.BLEED_NIPPLE)) {
            if (!failed.isOnBothWheels()) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.BLEED_NIPPLE,
                        failed.place(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-216", failed)));
            }
        }
    }

    /** A back plate has failed. */
    private static void sco217(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.BACK_PLATE)) {
            if (!failed.isOnBothWheels()) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.BACK_PLATE,
                        failed.place(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-217", failed)));
            }
        }
    }

    /** A pipe nut has failed. */
    private static void sco218(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.PIPE_NUT)) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.RENEW,
                    ScopeItem.PIPE_NUT,
                    failed.place(),
                    ScopeExtent.WHEEL,
                    Necessity.REQUIRED,
                    null,
                    because("SCO-218", failed)));
        }
    }

    /** A wheel bolt or drum screw has failed. */
    private static void sco219(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.WHEEL_BOLT)) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.RENEW,
                    ScopeItem.WHEEL_BOLT,
                    failed.place(),
                    ScopeExtent.WHEEL,
                    Necessity.REQUIRED,
                    null,
                    because("SCO-219", failed)));
        }
    }

    /** The actuator of an electric parking brake has failed. */
    private static void sco220(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.PARKING_ACTUATOR)) {
            if (!failed.isOnBothWheels()) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.PARKING_ACTUATOR,
                        failed.place(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-220", failed)));
            }
        }
    }

    /** A parking equaliser has failed. */
    private static void sco221(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.PARKING_EQUALISER)) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.FREE,
                    ScopeItem.PARKING_EQUALISER,
                    Place.VEHICLE,
                    ScopeExtent.VEHICLE,
                    Necessity.REQUIRED,
                    null,
                    because("SCO-221", failed)));
        }
    }

    /** An adjuster has not taken up and its parts are sound. */
    private static void sco222(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.ADJUSTER_NOT_TAKEN_UP)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.failedParts.of(ScopeItem.ADJUSTER),
                            failed -> failed.place().sameWheel(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.FREE,
                        ScopeItem.ADJUSTER,
                        cause.place().wheel(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-222", cause)));
            }
        }
    }

    /** An adjuster has not taken up. */
    private static void sco223(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.ADJUSTER_NOT_TAKEN_UP)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HARDWARE_KIT,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-223", cause)));
            }
        }
    }

    /** Air is confirmed in a circuit. */
    private static void sco224(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.AIR_IN_CIRCUIT)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                for (VehicleLayout vehicle : facts.vehicleLayouts.all()) {
                    facts.scopeProposals.draw(new ScopeProposal(
                            ScopeAction.BLEED,
                            ScopeItem.BRAKE_FLUID,
                            vehicle.circuitOf(cause.place()),
                            vehicle.circuitExtentOf(cause.place()),
                            Necessity.REQUIRED,
                            null,
                            because("SCO-224", cause)));
                }
            }
        }
    }

    /** The test itself is in doubt. */
    private static void sco225(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.TEST_NOT_VALID)) {
            if (cause.standing() != CauseStanding.RULED_OUT) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.MEASURE,
                        ScopeItem.ROLLER_TEST,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-225", cause)));
            }
        }
    }

    /** A part that each wheel has is named for the whole axle, left. */
    private static void sco226(Facts facts) {
        for (FailedPart failed : List.copyOf(facts.failedParts.all())) {
            if (failed.isOnBothWheels()) {
                facts.failedParts.draw(
                        new FailedPart(failed.item(), failed.place().left(), because("SCO-226", failed)));
            }
        }
    }

    /** A part that each wheel has is named for the whole axle, right. */
    private static void sco227(Facts facts) {
        for (FailedPart failed : List.copyOf(facts.failedParts.all())) {
            if (failed.isOnBothWheels()) {
                facts.failedParts.draw(
                        new FailedPart(failed.item(), failed.place().right(), because("SCO-227", failed)));
            }
        }
    }

    /** Linings were soaked by an earlier leak at the left wheel cylinder or its twin. */
    private static void sco228(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.LINING_SOAKED_EARLIER)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDrum() && axle.place().sameAxle(cause.place()))
                    && none(
                            facts.latelyRenewed.of(ScopeItem.WHEEL_CYLINDER),
                            renewed -> renewed.place().covers(cause.place().left()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.WHEEL_CYLINDER,
                        cause.place().left(),
                        ScopeExtent.WHEEL,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-228", cause)));
            }
        }
    }

    /** Linings were soaked by an earlier leak at the right wheel cylinder or its twin. */
    private static void sco229(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.LINING_SOAKED_EARLIER)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDrum() && axle.place().sameAxle(cause.place()))
                    && none(
                            facts.latelyRenewed.of(ScopeItem.WHEEL_CYLINDER),
                            renewed -> renewed.place().covers(cause.place().right()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.WHEEL_CYLINDER,
                        cause.place().right(),
                        ScopeExtent.WHEEL,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-229", cause)));
            }
        }
    }

    /** A hub seal is confirmed to leak and its bearing was not found sound. */
    private static void sco230(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.HUB_SEAL_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.partStates.of(Component.HUB_BEARING),
                            state -> state.condition() == Condition.SOUND
                                    && state.place().covers(cause.place().wheel()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HUB_BEARING,
                        cause.place().wheel(),
                        ScopeExtent.WHEEL,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-230", cause)));
            }
        }
    }

    /** A wheel cylinder has failed on an axle whose linings are half gone. */
    private static void sco231(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.WHEEL_CYLINDER)) {
            for (PartState state : facts.partStates.of(Component.SHOE_LINING)) {
                if (state.place().sameAxle(failed.place())
                        && state.measurement() != null
                        && state.measurement().quantity() == MeasuredQuantity.LINING_THICKNESS
                        && state.stage() != FindingStage.AFTER_WORK) {
                    for (PolicyClause clause : facts.policyClauses.of(ClauseCode.LINING_HALF_LIFE_THICKNESS)) {
                        if (clause.necessity() != null
                                && clause.value() != null
                                && state.measurement().value().compareTo(clause.value()) < 0) {
                            facts.scopeProposals.draw(new ScopeProposal(
                                    ScopeAction.RENEW,
                                    ScopeItem.SHOE_SET,
                                    failed.place().axlePlace(),
                                    ScopeExtent.AXLE,
                                    clause.necessity(),
                                    clause.code(),
                                    because("SCO-231", failed, state, clause)));
                        }
                    }
                }
            }
        }
    }

    /** A floating calliper has failed and its slide pins were not found sound. */
    private static void sco232(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.CALLIPER)) {
            if (failed.isAtWheel()
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().brake() == BrakeLayout.DISC_FLOATING
                                    && axle.place().sameAxle(failed.place()))
                    && none(
                            facts.partStates.of(Component.SLIDE_PIN),
                            state -> state.condition() == Condition.SOUND
                                    && state.place().covers(failed.place().wheel()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.SLIDE_PIN_KIT,
                        failed.place(),
                        ScopeExtent.WHEEL,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-232", failed)));
            }
        }
    }

    /** Air is confirmed in a circuit and the rest of the fluid is as old. */
    private static void sco233(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.AIR_IN_CIRCUIT)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.BRAKE_FLUID,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-233", cause)));
            }
        }
    }
}
