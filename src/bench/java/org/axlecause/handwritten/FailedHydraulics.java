package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Extent;
import org.axlecause.facts.FailedPart;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.PartState;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.SettledCause;

/**
 * Which hydraulic parts of a wheel brake and which pipes and hoses have to go: by the cause that is confirmed, or by
 * the state in which the part was found. A hydraulic piston that leaks, sticks or is pitted is never just freed. Not
 * here: what else goes with the part, and its twin on the other side.
 */
final class FailedHydraulics {

    private FailedHydraulics() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sco101(facts);
        sco102(facts);
        sco103(facts);
        sco104(facts);
        sco105(facts);
        sco106(facts);
        sco111(facts);
        sco112(facts);
        sco115(facts);
        sco116(facts);
        sco117(facts);
        sco118(facts);
        sco119(facts);
        sco120(facts);
        sco121(facts);
        sco122(facts);
        sco107(facts);
        sco108(facts);
        sco113(facts);
        sco114(facts);
        sco123(facts);
        sco124(facts);
        sco125(facts);
        sco126(facts);
        sco127(facts);
        sco128(facts);
        sco129(facts);
        sco130(facts);
        sco109(facts);
        sco110(facts);
    }

    /** A wheel cylinder is confirmed to leak. */
    private static void sco101(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.WHEEL_CYLINDER_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.WHEEL_CYLINDER, cause.place().wheel(), because("SCO-101", cause)));
            }
        }
    }

    /** A piston of a wheel cylinder is confirmed to be stuck. */
    private static void sco102(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.WHEEL_CYLINDER_PISTON_STUCK)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.WHEEL_CYLINDER, cause.place().wheel(), because("SCO-102", cause)));
            }
        }
    }

    /** The pistons of a wheel cylinder are confirmed to be tight. */
    private static void sco103(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.WHEEL_CYLINDER_PISTONS_TIGHT)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.WHEEL_CYLINDER, cause.place().wheel(), because("SCO-103", cause)));
            }
        }
    }

    /** A wheel cylinder is found leaking, seized, tight or pitted. */
    private static void sco104(Facts facts) {
        for (PartState state : facts.partStates.of(Component.WHEEL_CYLINDER)) {
            if ((state.condition() == Condition.LEAKING
                            || state.condition() == Condition.SEIZED
                            || state.condition() == Condition.TIGHT
                            || state.condition() == Condition.PITTED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.WHEEL_CYLINDER, state.place().wheel(), because("SCO-104", state)));
            }
        }
    }

    /** The boot of a wheel cylinder is found torn or off. */
    private static void sco105(Facts facts) {
        for (PartState state : facts.partStates.of(Component.WHEEL_CYLINDER)) {
            if ((state.condition() == Condition.SPLIT
                            || state.condition() == Condition.MISSING
                            || state.condition() == Condition.DETACHED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.WHEEL_CYLINDER, state.place().wheel(), because("SCO-105", state)));
            }
        }
    }

    /** A wheel cylinder of the wrong bore or kind is found. */
    private static void sco106(Facts facts) {
        for (PartState state : facts.partStates.of(Component.WHEEL_CYLINDER)) {
            if (state.condition() == Condition.WRONG_PART && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.WHEEL_CYLINDER, state.place().wheel(), because("SCO-106", state)));
            }
        }
    }

    /** A piston of a calliper is confirmed to be seized. */
    private static void sco111(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.CALLIPER_PISTON_SEIZED)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.CALLIPER, cause.place().wheel(), because("SCO-111", cause)));
            }
        }
    }

    /** A calliper is found leaking, seized, tight, pitted or with a torn boot. */
    private static void sco112(Facts facts) {
        for (PartState state : facts.partStates.of(Component.CALLIPER)) {
            if ((state.condition() == Condition.LEAKING
                            || state.condition() == Condition.SEIZED
                            || state.condition() == Condition.TIGHT
                            || state.condition() == Condition.PITTED
                            || state.condition() == Condition.SPLIT)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.CALLIPER, state.place().wheel(), because("SCO-112", state)));
            }
        }
    }

    /** A flexible hose is confirmed to be restricted inside. */
    private static void sco115(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.HOSE_RESTRICTED)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.FLEXIBLE_HOSE, cause.place().wheel(), because("SCO-115", cause)));
            }
        }
    }

    /** A flexible hose is found leaking, bulging, split or restricted. */
    private static void sco116(Facts facts) {
        for (PartState state : facts.partStates.of(Component.FLEXIBLE_HOSE)) {
            if ((state.condition() == Condition.LEAKING
                            || state.condition() == Condition.BULGING
                            || state.condition() == Condition.SPLIT
                            || state.condition() == Condition.RESTRICTED
                            || state.condition() == Condition.BLOCKED)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.FLEXIBLE_HOSE, state.place().wheel(), because("SCO-116", state)));
            }
        }
    }

    /** A brake pipe is confirmed to be corroded. */
    private static void sco117(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.BRAKE_PIPE_CORRODED)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BRAKE_PIPE, cause.place().wheel(), because("SCO-117", cause)));
            }
        }
    }

    /** A brake pipe is found leaking, cracked, kinked or broken. */
    private static void sco118(Facts facts) {
        for (PartState state : facts.partStates.of(Component.BRAKE_PIPE)) {
            if ((state.condition() == Condition.LEAKING
                            || state.condition() == Condition.CRACKED
                            || state.condition() == Condition.RESTRICTED
                            || state.condition() == Condition.BROKEN)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BRAKE_PIPE, state.place().wheel(), because("SCO-118", state)));
            }
        }
    }

    /** A pipe union is found leaking or turning its pipe. */
    private static void sco119(Facts facts) {
        for (PartState state : facts.partStates.of(Component.PIPE_UNION)) {
            if ((state.condition() == Condition.LEAKING || state.condition() == Condition.TURNS_WITH_PIPE)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BRAKE_PIPE, state.place().wheel(), because("SCO-119", state)));
            }
        }
    }

    /** A bleed nipple is found seized, sheared or stripped on a drum brake. */
    private static void sco120(Facts facts) {
        for (PartState state : facts.partStates.of(Component.BLEED_NIPPLE)) {
            if ((state.condition() == Condition.SEIZED
                            || state.condition() == Condition.SHEARED
                            || state.condition() == Condition.STRIPPED)
                    && state.stage() != FindingStage.AFTER_WORK
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDrum() && axle.place().sameAxle(state.place()))) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.WHEEL_CYLINDER, state.place().wheel(), because("SCO-120", state)));
            }
        }
    }

    /** A bleed nipple is found seized, sheared or stripped on a disc brake. */
    private static void sco121(Facts facts) {
        for (PartState state : facts.partStates.of(Component.BLEED_NIPPLE)) {
            if ((state.condition() == Condition.SEIZED
                            || state.condition() == Condition.SHEARED
                            || state.condition() == Condition.STRIPPED)
                    && state.stage() != FindingStage.AFTER_WORK
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDisc() && axle.place().sameAxle(state.place()))) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.CALLIPER, state.place().wheel(), because("SCO-121", state)));
            }
        }
    }

    /** A bleed nipple is found blocked, rounded or leaking. */
    private static void sco122(Facts facts) {
        for (PartState state : facts.partStates.of(Component.BLEED_NIPPLE)) {
            if ((state.condition() == Condition.BLOCKED
                            || state.condition() == Condition.ROUNDED
                            || state.condition() == Condition.LEAKING)
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BLEED_NIPPLE, state.place().wheel(), because("SCO-122", state)));
            }
        }
    }

    /** Wheel cylinders of an axle are confirmed to be unlike, left. */
    private static void sco107(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.WHEEL_CYLINDER_WRONG_BORE)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.WHEEL_CYLINDER, cause.place().left(), because("SCO-107", cause)));
            }
        }
    }

    /** Wheel cylinders of an axle are confirmed to be unlike, right. */
    private static void sco108(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.WHEEL_CYLINDER_WRONG_BORE)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.WHEEL_CYLINDER, cause.place().right(), because("SCO-108", cause)));
            }
        }
    }

    /** A calliper is confirmed to leak or to have a seized bank. */
    private static void sco113(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.CALLIPER_LEAKING || cause.code() == CauseCode.CALLIPER_BANK_SEIZED)
                    && cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.CALLIPER, cause.place().wheel(), because("SCO-113", cause)));
            }
        }
    }

    /** A bleed nipple is confirmed to weep. */
    private static void sco114(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.BLEED_NIPPLE_WEEPING)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BLEED_NIPPLE, cause.place().wheel(), because("SCO-114", cause)));
            }
        }
    }

    /** A flexible hose is confirmed to leak or to bulge. */
    private static void sco123(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.HOSE_LEAKING || cause.code() == CauseCode.HOSE_BULGING)
                    && cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.FLEXIBLE_HOSE, cause.place().wheel(), because("SCO-123", cause)));
            }
        }
    }

    /** A brake pipe is confirmed to be crushed or its union to leak. */
    private static void sco124(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.BRAKE_PIPE_CRUSHED || cause.code() == CauseCode.PIPE_UNION_LEAKING)
                    && cause.standing() == CauseStanding.CONFIRMED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BRAKE_PIPE, cause.place().wheel(), because("SCO-124", cause)));
            }
        }
    }

    /** A port or nipple of one wheel is confirmed to be blocked. */
    private static void sco125(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.WHEEL_PORT_BLOCKED)) {
            if (cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.CLEAN,
                        ScopeItem.BLEED_NIPPLE,
                        cause.place().wheel(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-125", cause)));
            }
        }
    }

    /** A flexible hose is found cracked or with a corroded end, more than a little or by an unknown amount. */
    private static void sco126(Facts facts) {
        for (PartState state : facts.partStates.of(Component.FLEXIBLE_HOSE)) {
            if ((state.condition() == Condition.CRACKED || state.condition() == Condition.CORRODED)
                    && state.extent() != Extent.LIGHT
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.FLEXIBLE_HOSE, state.place().wheel(), because("SCO-126", state)));
            }
        }
    }

    /** A flexible hose is found a little cracked or its end a little corroded. */
    private static void sco127(Facts facts) {
        for (PartState state : facts.partStates.of(Component.FLEXIBLE_HOSE)) {
            if ((state.condition() == Condition.CRACKED || state.condition() == Condition.CORRODED)
                    && state.extent() == Extent.LIGHT
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.FLEXIBLE_HOSE,
                        state.place().wheel(),
                        ScopeExtent.WHEEL,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-127", state)));
            }
        }
    }

    /** A brake pipe is found corroded or pitted, more than a little or by an unknown amount. */
    private static void sco128(Facts facts) {
        for (PartState state : facts.partStates.of(Component.BRAKE_PIPE)) {
            if ((state.condition() == Condition.CORRODED || state.condition() == Condition.PITTED)
                    && state.extent() != Extent.LIGHT
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BRAKE_PIPE, state.place().wheel(), because("SCO-128", state)));
            }
        }
    }

    /** A brake pipe is found with a little rust on its surface. */
    private static void sco129(Facts facts) {
        for (PartState state : facts.partStates.of(Component.BRAKE_PIPE)) {
            if ((state.condition() == Condition.CORRODED || state.condition() == Condition.PITTED)
                    && state.extent() == Extent.LIGHT
                    && state.stage() != FindingStage.AFTER_WORK) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.FABRICATE,
                        ScopeItem.BRAKE_PIPE,
                        state.place().wheel(),
                        ScopeExtent.WHEEL,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-129", state)));
            }
        }
    }

    /** The parking mechanism built into a calliper is confirmed not to return or not to apply. */
    private static void sco130(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.CALLIPER_LEVER_NOT_RETURNING
                            || cause.code() == CauseCode.CALLIPER_LEVER_NOT_APPLYING)
                    && cause.standing() == CauseStanding.CONFIRMED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.CALLIPER,
                        cause.place().wheel(),
                        ScopeExtent.WHEEL,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-130", cause)));
            }
        }
    }

    /** The parking mechanism built into the calliper opposite has failed and has the same age. */
    private static void sco109(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if ((cause.code() == CauseCode.CALLIPER_LEVER_NOT_RETURNING
                            || cause.code() == CauseCode.CALLIPER_LEVER_NOT_APPLYING)
                    && cause.standing() == CauseStanding.CONFIRMED
                    && cause.place().side() != null
                    && none(
                            facts.latelyRenewed.of(ScopeItem.CALLIPER),
                            renewed -> renewed.place().covers(cause.place().opposite()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.TWIN_CALLIPER)) {
                    if (clause.necessity() != null) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.CALLIPER,
                                cause.place().wheel().opposite(),
                                ScopeExtent.WHEEL,
                                clause.necessity(),
                                clause.code(),
                                because("SCO-109", cause, clause)));
                    }
                }
            }
        }
    }

    /** The calliper opposite a leaking one has the same age. */
    private static void sco110(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.CALLIPER_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && cause.place().side() != null
                    && none(
                            facts.latelyRenewed.of(ScopeItem.CALLIPER),
                            renewed -> renewed.place().covers(cause.place().opposite()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.TWIN_CALLIPER)) {
                    if (clause.necessity() != null) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.RENEW,
                                ScopeItem.CALLIPER,
                                cause.place().wheel().opposite(),
                                ScopeExtent.WHEEL,
                                clause.necessity(),
                                clause.code(),
                                because("SCO-110", cause, clause)));
                    }
                }
            }
        }
    }
}
