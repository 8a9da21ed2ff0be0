package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DueLine;
import org.axlecause.facts.Extent;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.MeasuredQuantity;
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
 * Linings, pads, drums and discs that go for their own state. Always by axle: force must match across it. The legal
 * limits of thickness stand in the regimes; here stand the maker's stamp and the workshop's habit.
 */
final class FrictionSurfaces {

    private FrictionSurfaces() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sco171(facts);
        sco172(facts);
        sco173(facts);
        sco174(facts);
        sco175(facts);
        sco176(facts);
        sco177(facts);
        sco178(facts);
        sco179(facts);
        sco181(facts);
        sco182(facts);
        sco183(facts);
        sco184(facts);
        sco185(facts);
        sco186(facts);
        sco187(facts);
        sco188(facts);
        sco191(facts);
        sco192(facts);
        sco193(facts);
        sco194(facts);
        sco195(facts);
        sco196(facts);
        sco190(facts);
        sco197(facts);
        sco198(facts);
        sco199(facts);
        sco158(facts);
        sco159(facts);
        sco166(facts);
        sco167(facts);
        sco168(facts);
        sco169(facts);
        sco170(facts);
        sco160(facts);
        sco180(facts);
    }

    /** Draws the lines that a due line brings with it. */
    static void follow(Facts facts, DueLine line) {
        sco189(facts, line);
    }

    /** The linings of a drum axle are confirmed to be worn out, loose or unlike. */
    private static void sco171(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.LINING_WORN_OUT
                            || cause.code() == CauseCode.LINING_DETACHED
                            || cause.code() == CauseCode.LININGS_UNLIKE)
                    && cause.standing() == CauseStanding.CONFIRMED
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDrum() && axle.place().sameAxle(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.SHOE_SET,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-171", cause)));
            }
        }
    }

    /** The pads of a disc axle are confirmed to be worn out, loose or unlike. */
    private static void sco172(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.LINING_WORN_OUT
                            || cause.code() == CauseCode.LINING_DETACHED
                            || cause.code() == CauseCode.LININGS_UNLIKE)
                    && cause.standing() == CauseStanding.CONFIRMED
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDisc() && axle.place().sameAxle(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.PAD_SET,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-172", cause)));
            }
        }
    }

    /** A shoe lining is found worn, cracked, loose, wrong or wrongly fitted. */
    private static void sco173(Facts facts) {
        for (PartState state : facts.partStates.of(Component.SHOE_LINING)) {
            if ((state.condition() == Condition.WORN
                            || state.condition() == Condition.CRACKED
                            || state.condition() == Condition.DETACHED
                            || state.condition() == Condition.WRONG_PART
                            || state.condition() == Condition.MISFITTED
                            || state.condition() == Condition.MISSING)
                    && state.stage() != FindingStage.AFTER_WORK
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.SHOE_SET,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-173", state)));
            }
        }
    }

    /** A pad is found worn, cracked, loose, wrong or wrongly fitted. */
    private static void sco174(Facts facts) {
        for (PartState state : facts.partStates.of(Component.PAD)) {
            if ((state.condition() == Condition.WORN
                            || state.condition() == Condition.CRACKED
                            || state.condition() == Condition.DETACHED
                            || state.condition() == Condition.WRONG_PART
                            || state.condition() == Condition.MISFITTED
                            || state.condition() == Condition.MISSING)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.PAD_SET,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-174", state)));
            }
        }
    }

    /** A shoe lining is as thin as the policy lets it become. */
    private static void sco175(Facts facts) {
        for (PartState state : facts.partStates.of(Component.SHOE_LINING)) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.LINING_THICKNESS
                    && state.stage() != FindingStage.AFTER_WORK
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.LINING_RENEWAL_THICKNESS)) {
                    if (clause.necessity() != null
                            && clause.value() != null
                            && state.measurement().value().compareTo(clause.value()) <= 0) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.SHOE_SET,
                                state.place().axlePlace(),
                                ScopeExtent.AXLE,
                                clause.necessity(),
                                clause.code(),
                                because("SCO-175", state, clause)));
                    }
                }
            }
        }
    }

    /** A pad is as thin as the policy lets it become. */
    private static void sco176(Facts facts) {
        for (PartState state : facts.partStates.of(Component.PAD)) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.PAD_THICKNESS
                    && state.stage() != FindingStage.AFTER_WORK) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.PAD_RENEWAL_THICKNESS)) {
                    if (clause.necessity() != null
                            && clause.value() != null
                            && state.measurement().value().compareTo(clause.value()) <= 0) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.PAD_SET,
                                state.place().axlePlace(),
                                ScopeExtent.AXLE,
                                clause.necessity(),
                                clause.code(),
                                because("SCO-176", state, clause)));
                    }
                }
            }
        }
    }

    /** Glazed linings of a drum axle are confirmed. */
    private static void sco177(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.LINING_GLAZED)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDrum() && axle.place().sameAxle(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.CLEAN,
                        ScopeItem.SHOE_SET,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-177", cause)));
            }
        }
    }

    /** Glazed linings of a drum axle may have to go. */
    private static void sco178(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.LINING_GLAZED)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDrum() && axle.place().sameAxle(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.SHOE_SET,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-178", cause)));
            }
        }
    }

    /** Glazed pads of a disc axle are confirmed. */
    private static void sco179(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.LINING_GLAZED)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDisc() && axle.place().sameAxle(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.PAD_SET,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-179", cause)));
            }
        }
    }

    /** A drum is confirmed to be oval. */
    private static void sco181(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.DRUM_OVAL)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DRUM,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-181", cause)));
            }
        }
    }

    /** A drum is confirmed to be eccentric. */
    private static void sco182(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.DRUM_ECCENTRIC)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DRUM,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-182", cause)));
            }
        }
    }

    /** A drum is found oval, eccentric, oversize, cracked or broken. */
    private static void sco183(Facts facts) {
        for (PartState state : facts.partStates.of(Component.DRUM)) {
            if ((state.condition() == Condition.OVAL
                            || state.condition() == Condition.ECCENTRIC
                            || state.condition() == Condition.OVERSIZE
                            || state.condition() == Condition.CRACKED
                            || state.condition() == Condition.BROKEN
                            || state.condition() == Condition.LOOSE)
                    && state.stage() != FindingStage.AFTER_WORK
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DRUM,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-183", state)));
            }
        }
    }

    /** A drum measures more than the figure stamped on it. */
    private static void sco184(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.DRUM_DIAMETER
                    && state.measurement().limit() != null
                    && state.measurement().value().compareTo(state.measurement().limit()) > 0
                    && state.stage() != FindingStage.AFTER_WORK
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DRUM,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-184", state)));
            }
        }
    }

    /** The diameters of a drum differ by more than the workshop allows. */
    private static void sco185(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.DRUM_OVALITY
                    && state.stage() != FindingStage.AFTER_WORK
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.DRUM_OVALITY)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) > 0) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.DRUM,
                                state.place().axlePlace(),
                                ScopeExtent.AXLE,
                                Necessity.REQUIRED,
                                clause.code(),
                                because("SCO-185", state, clause)));
                    }
                }
            }
        }
    }

    /** A drum runs further out of centre than the workshop allows. */
    private static void sco186(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.DRUM_ECCENTRICITY
                    && state.stage() != FindingStage.AFTER_WORK
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.DRUM_ECCENTRICITY)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) > 0) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.DRUM,
                                state.place().axlePlace(),
                                ScopeExtent.AXLE,
                                Necessity.REQUIRED,
                                clause.code(),
                                because("SCO-186", state, clause)));
                    }
                }
            }
        }
    }

    /** A drum is found deeply scored. */
    private static void sco187(Facts facts) {
        for (PartState state : facts.partStates.of(Component.DRUM)) {
            if ((state.condition() == Condition.SCORED
                            || state.condition() == Condition.PITTED
                            || state.condition() == Condition.CORRODED)
                    && state.stage() != FindingStage.AFTER_WORK
                    && state.extent() == Extent.SEVERE
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DRUM,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-187", state)));
            }
        }
    }

    /** A drum is found scored but not deeply. */
    private static void sco188(Facts facts) {
        for (PartState state : facts.partStates.of(Component.DRUM)) {
            if (state.condition() == Condition.SCORED
                    && state.stage() != FindingStage.AFTER_WORK
                    && state.extent() != Extent.SEVERE
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.MACHINE,
                        ScopeItem.DRUM,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-188", state)));
            }
        }
    }

    /** Drums are renewed while the shoes stay. */
    private static void sco189(Facts facts, DueLine drum) {
        if (drum.action() == ScopeAction.RENEW
                && drum.item() == ScopeItem.DRUM
                && drum.necessity() == Necessity.REQUIRED) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.RENEW,
                    ScopeItem.SHOE_SET,
                    drum.place(),
                    ScopeExtent.AXLE,
                    Necessity.RECOMMENDED,
                    null,
                    because("SCO-189", drum)));
        }
    }

    /** A disc is found cracked, undersize, out of true, broken or loose. */
    private static void sco191(Facts facts) {
        for (PartState state : facts.partStates.of(Component.DISC)) {
            if ((state.condition() == Condition.CRACKED
                            || state.condition() == Condition.UNDERSIZE
                            || state.condition() == Condition.ECCENTRIC
                            || state.condition() == Condition.OVAL
                            || state.condition() == Condition.BROKEN
                            || state.condition() == Condition.LOOSE)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DISC,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-191", state)));
            }
        }
    }

    /** A disc measures less than the figure stamped on it. */
    private static void sco192(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.DISC_THICKNESS
                    && state.measurement().limit() != null
                    && state.measurement().value().compareTo(state.measurement().limit()) < 0
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DISC,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-192", state)));
            }
        }
    }

    /** The thickness of a disc varies by more than the workshop allows. */
    private static void sco193(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.DISC_THICKNESS_VARIATION
                    && state.stage() != FindingStage.AFTER_WORK) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.DISC_THICKNESS_VARIATION)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) > 0) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.DISC,
                                state.place().axlePlace(),
                                ScopeExtent.AXLE,
                                Necessity.REQUIRED,
                                clause.code(),
                                because("SCO-193", state, clause)));
                    }
                }
            }
        }
    }

    /** A disc runs out by more than the workshop allows. */
    private static void sco194(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.DISC_RUN_OUT
                    && state.stage() != FindingStage.AFTER_WORK) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.DISC_RUN_OUT)) {
                    if (clause.value() != null && state.measurement().value().compareTo(clause.value()) > 0) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.CLEAN,
                                ScopeItem.HUB_FACE,
                                state.place().wheel(),
                                ScopeExtent.WHEEL,
                                Necessity.REQUIRED,
                                clause.code(),
                                because("SCO-194", state, clause)));
                    }
                }
            }
        }
    }

    /** A disc is found deeply scored or corroded. */
    private static void sco195(Facts facts) {
        for (PartState state : facts.partStates.of(Component.DISC)) {
            if ((state.condition() == Condition.SCORED
                            || state.condition() == Condition.PITTED
                            || state.condition() == Condition.CORRODED)
                    && state.stage() != FindingStage.AFTER_WORK
                    && state.extent() == Extent.SEVERE) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DISC,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-195", state)));
            }
        }
    }

    /** A disc is found scored or corroded but not deeply. */
    private static void sco196(Facts facts) {
        for (PartState state : facts.partStates.of(Component.DISC)) {
            if ((state.condition() == Condition.SCORED
                            || state.condition() == Condition.PITTED
                            || state.condition() == Condition.CORRODED)
                    && state.stage() != FindingStage.AFTER_WORK
                    && state.extent() != Extent.SEVERE) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DISC,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-196", state)));
            }
        }
    }

    /** A drum is confirmed to be oversize or cracked. */
    private static void sco190(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.DRUM_OVERSIZE || cause.code() == CauseCode.DRUM_CRACKED)
                    && cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DRUM,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-190", cause)));
            }
        }
    }

    /** A disc is confirmed to be cracked, corroded, of uneven thickness or out of true. */
    private static void sco197(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.DISC_CRACKED
                            || cause.code() == CauseCode.DISC_CORRODED
                            || cause.code() == CauseCode.DISC_THICKNESS_VARYING
                            || cause.code() == CauseCode.DISC_RUN_OUT)
                    && cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DISC,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-197", cause)));
            }
        }
    }

    /** A drum or disc is confirmed to sit on rust or dirt. */
    private static void sco198(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.SEAT_NOT_CLEAN)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.CLEAN,
                        ScopeItem.HUB_FACE,
                        cause.place().wheel(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-198", cause)));
            }
        }
    }

    /** Debris is confirmed in a drum. */
    private static void sco199(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.DEBRIS_IN_DRUM)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.CLEAN,
                        ScopeItem.DRUM,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-199", cause)));
            }
        }
    }

    /** A parking shoe inside a disc is found worn, cracked, loose, wrong or wrongly fitted. */
    private static void sco158(Facts facts) {
        for (PartState state : facts.partStates.of(Component.SHOE_LINING)) {
            if ((state.condition() == Condition.WORN
                            || state.condition() == Condition.CRACKED
                            || state.condition() == Condition.DETACHED
                            || state.condition() == Condition.WRONG_PART
                            || state.condition() == Condition.MISFITTED
                            || state.condition() == Condition.MISSING
                            || state.condition() == Condition.SOAKED
                            || state.condition() == Condition.CONTAMINATED)
                    && state.stage() != FindingStage.AFTER_WORK
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.PARKING_SHOE_SET,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-158", state)));
            }
        }
    }

    /** A parking shoe inside a disc is as thin as the policy lets it become. */
    private static void sco159(Facts facts) {
        for (PartState state : facts.partStates.of(Component.SHOE_LINING)) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.LINING_THICKNESS
                    && state.stage() != FindingStage.AFTER_WORK
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.LINING_RENEWAL_THICKNESS)) {
                    if (clause.necessity() != null
                            && clause.value() != null
                            && state.measurement().value().compareTo(clause.value()) <= 0) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.PARKING_SHOE_SET,
                                state.place().axlePlace(),
                                ScopeExtent.AXLE,
                                clause.necessity(),
                                clause.code(),
                                because("SCO-159", state, clause)));
                    }
                }
            }
        }
    }

    /** The small drum inside a disc is confirmed to be out of true, too large, scored or cracked. */
    private static void sco166(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.DRUM_OVAL
                            || cause.code() == CauseCode.DRUM_ECCENTRIC
                            || cause.code() == CauseCode.DRUM_OVERSIZE
                            || cause.code() == CauseCode.DRUM_SCORED
                            || cause.code() == CauseCode.DRUM_CRACKED)
                    && cause.standing() == CauseStanding.CONFIRMED
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DISC,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-166", cause)));
            }
        }
    }

    /** The small drum inside a disc is found out of true, too large, cracked or broken. */
    private static void sco167(Facts facts) {
        for (PartState state : facts.partStates.of(Component.DRUM)) {
            if ((state.condition() == Condition.OVAL
                            || state.condition() == Condition.ECCENTRIC
                            || state.condition() == Condition.OVERSIZE
                            || state.condition() == Condition.CRACKED
                            || state.condition() == Condition.BROKEN
                            || state.condition() == Condition.LOOSE)
                    && state.stage() != FindingStage.AFTER_WORK
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DISC,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-167", state)));
            }
        }
    }

    /** A drum is found soiled but not soaked through. */
    private static void sco168(Facts facts) {
        for (PartState state : facts.partStates.of(Component.DRUM)) {
            if (state.condition() == Condition.CONTAMINATED
                    && state.extent() != Extent.SEVERE
                    && state.stage() != FindingStage.AFTER_WORK
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDrum() && axle.place().sameAxle(state.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.CLEAN,
                        ScopeItem.DRUM,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-168", state)));
            }
        }
    }

    /** A drum still bleeds oil or is porous. */
    private static void sco169(Facts facts) {
        for (PartState state : facts.partStates.of(Component.DRUM)) {
            if (state.condition() == Condition.CONTAMINATED
                    && state.extent() == Extent.SEVERE
                    && state.stage() != FindingStage.AFTER_WORK
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDrum() && axle.place().sameAxle(state.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DRUM,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-169", state)));
            }
        }
    }

    /** Glazed linings ran in a drum that has room below its stamped figure. */
    private static void sco170(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.LINING_GLAZED)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                for (PartState state : facts.partStates.all()) {
                    if (state.measurement() != null
                            && state.measurement().quantity() == MeasuredQuantity.DRUM_DIAMETER
                            && state.measurement().limit() != null
                            && state.measurement()
                                            .value()
                                            .compareTo(state.measurement().limit())
                                    < 0
                            && state.place().sameAxle(cause.place())
                            && state.stage() != FindingStage.AFTER_WORK) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.MACHINE,
                                ScopeItem.DRUM,
                                cause.place().axlePlace(),
                                ScopeExtent.AXLE,
                                Necessity.OPTIONAL,
                                null,
                                because("SCO-170", cause, state)));
                    }
                }
            }
        }
    }

    /** The small drum inside a disc measures more than the figure stamped on it. */
    private static void sco160(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().quantity() == MeasuredQuantity.DRUM_DIAMETER
                    && state.measurement().limit() != null
                    && state.measurement().value().compareTo(state.measurement().limit()) > 0
                    && state.stage() != FindingStage.AFTER_WORK
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(state.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DISC,
                        state.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-160", state)));
            }
        }
    }

    /** A drum is confirmed to be scored and was not found to be so only a little. */
    private static void sco180(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.DRUM_SCORED)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.partStates.of(Component.DRUM),
                            state -> state.condition() == Condition.SCORED
                                    && state.extent() == Extent.LIGHT
                                    && state.place().sameAxle(cause.place()))
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.SHOES_IN_DISC
                                    && axle.place().sameAxle(cause.place()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DRUM,
                        cause.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-180", cause)));
            }
        }
    }
}
