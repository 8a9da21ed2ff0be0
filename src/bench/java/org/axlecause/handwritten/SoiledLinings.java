package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
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
import org.axlecause.facts.SoiledLining;

/**
 * Linings that liquid has reached: the whole axle gets new shoes or pads, drums and discs are cleaned or renewed.
 * Contaminated linings can't be trusted again, and friction surfaces of one axle must match.
 */
final class SoiledLinings {

    private SoiledLinings() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sco151(facts);
        sco152(facts);
        sco153(facts);
        sco154(facts);
        sco155(facts);
        sco156(facts);
        sco157(facts);
        sco161(facts);
        sco162(facts);
        sco163(facts);
        sco164(facts);
        sco165(facts);
    }

    /** A leaking wheel cylinder has reached the linings of its wheel. */
    private static void sco151(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.WHEEL_CYLINDER_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.soiledLinings.draw(new SoiledLining(cause.place().axlePlace(), because("SCO-151", cause)));
            }
        }
    }

    /** A leaking hub seal has reached the linings of its wheel. */
    private static void sco152(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.HUB_SEAL_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.soiledLinings.draw(new SoiledLining(cause.place().axlePlace(), because("SCO-152", cause)));
            }
        }
    }

    /** A lining is confirmed to have been soaked by an earlier leak. */
    private static void sco153(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.LINING_SOAKED_EARLIER)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.soiledLinings.draw(new SoiledLining(cause.place().axlePlace(), because("SCO-153", cause)));
            }
        }
    }

    /** A shoe lining is found soaked or contaminated. */
    private static void sco154(Facts facts) {
        for (PartState state : facts.partStates.of(Component.SHOE_LINING)) {
            if ((state.condition() == Condition.SOAKED || state.condition() == Condition.CONTAMINATED)
                    && state.stage() != FindingStage.AFTER_WORK
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                facts.soiledLinings.draw(new SoiledLining(state.place().axlePlace(), because("SCO-154", state)));
            }
        }
    }

    /** A pad is found soaked or contaminated. */
    private static void sco155(Facts facts) {
        for (PartState state : facts.partStates.of(Component.PAD)) {
            if ((state.condition() == Condition.SOAKED || state.condition() == Condition.CONTAMINATED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.soiledLinings.draw(new SoiledLining(state.place().axlePlace(), because("SCO-155", state)));
            }
        }
    }

    /** Linings of a drum axle are soiled. */
    private static void sco161(Facts facts) {
        for (SoiledLining soiled : facts.soiledLinings.all()) {
            if (any(
                    facts.axleStates.all(),
                    axle -> axle.axle().isDrum() && axle.place().equals(soiled.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.SHOE_SET,
                        soiled.place(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-161", soiled)));
            }
        }
    }

    /** Drums ran with soiled linings. */
    private static void sco162(Facts facts) {
        for (SoiledLining soiled : facts.soiledLinings.all()) {
            if (any(
                    facts.axleStates.all(),
                    axle -> axle.axle().isDrum() && axle.place().equals(soiled.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.CLEAN,
                        ScopeItem.DRUM,
                        soiled.place(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-162", soiled)));
            }
        }
    }

    /** The policy wants drums renewed that ran with soiled linings. */
    private static void sco163(Facts facts) {
        for (SoiledLining soiled : facts.soiledLinings.all()) {
            if (any(
                    facts.axleStates.all(),
                    axle -> axle.axle().isDrum() && axle.place().equals(soiled.place()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.CONTAMINATED_DRUM)) {
                    if (clause.necessity() != null) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.DRUM,
                                soiled.place(),
                                ScopeExtent.AXLE,
                                clause.necessity(),
                                clause.code(),
                                because("SCO-163", soiled, clause)));
                    }
                }
            }
        }
    }

    /** Pads of a disc axle are soiled. */
    private static void sco164(Facts facts) {
        for (SoiledLining soiled : facts.soiledLinings.all()) {
            if (any(
                    facts.axleStates.all(),
                    axle -> axle.axle().isDisc() && axle.place().equals(soiled.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.PAD_SET,
                        soiled.place(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-164", soiled)));
            }
        }
    }

    /** Discs ran with soiled pads. */
    private static void sco165(Facts facts) {
        for (SoiledLining soiled : facts.soiledLinings.all()) {
            if (any(
                    facts.axleStates.all(),
                    axle -> axle.axle().isDisc() && axle.place().equals(soiled.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.CLEAN,
                        ScopeItem.DISC,
                        soiled.place(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-165", soiled)));
            }
        }
    }

    /** A leaking calliper has reached the pads of its wheel. */
    private static void sco156(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.CALLIPER_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.soiledLinings.draw(new SoiledLining(cause.place().axlePlace(), because("SCO-156", cause)));
            }
        }
    }

    /** Linings are confirmed to have been soiled in work or by a soiled drum. */
    private static void sco157(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.LINING_SOILED_IN_WORK || cause.code() == CauseCode.DRUM_SOILED)
                    && cause.standing() == CauseStanding.CONFIRMED) {
                facts.soiledLinings.draw(new SoiledLining(cause.place().axlePlace(), because("SCO-157", cause)));
            }
        }
    }
}
