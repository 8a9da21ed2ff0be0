package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.PartState;
import org.axlecause.facts.SettledCause;
import org.axlecause.facts.StandingLeak;

/** Leaks that stand on record: found or confirmed, and not shown to be sound by a look after the work. */
final class StandingLeaks {

    private StandingLeaks() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sco901(facts);
        sco902(facts);
        sco903(facts);
        sco904(facts);
        sco905(facts);
        sco906(facts);
        sco907(facts);
        sco908(facts);
    }

    /** A part was found leaking and not found sound after the work. */
    private static void sco901(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if ((state.component() == Component.WHEEL_CYLINDER
                            || state.component() == Component.CALLIPER
                            || state.component() == Component.FLEXIBLE_HOSE
                            || state.component() == Component.BRAKE_PIPE
                            || state.component() == Component.PIPE_UNION
                            || state.component() == Component.BLEED_NIPPLE
                            || state.component() == Component.MASTER_CYLINDER
                            || state.component() == Component.LOAD_SENSING_VALVE
                            || state.component() == Component.HUB_SEAL)
                    && state.condition() == Condition.LEAKING
                    && none(
                            facts.partStates.all(),
                            partState -> partState.component() == state.component()
                                    && partState.condition() == Condition.SOUND
                                    && partState.stage() == FindingStage.AFTER_WORK
                                    && partState.place().covers(state.place().wheel()))) {
                facts.standingLeaks.draw(
                        new StandingLeak(state.component(), state.place().wheel(), because("SCO-901", state)));
            }
        }
    }

    /** A wheel cylinder is confirmed to leak and was not found sound after the work. */
    private static void sco902(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.WHEEL_CYLINDER_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.partStates.of(Component.WHEEL_CYLINDER),
                            state -> state.condition() == Condition.SOUND
                                    && state.stage() == FindingStage.AFTER_WORK
                                    && state.place().covers(cause.place().wheel()))) {
                facts.standingLeaks.draw(
                        new StandingLeak(Component.WHEEL_CYLINDER, cause.place().wheel(), because("SCO-902", cause)));
            }
        }
    }

    /** A hub seal is confirmed to leak and was not found sound after the work. */
    private static void sco903(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.HUB_SEAL_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.partStates.of(Component.HUB_SEAL),
                            state -> state.condition() == Condition.SOUND
                                    && state.stage() == FindingStage.AFTER_WORK
                                    && state.place().covers(cause.place().wheel()))) {
                facts.standingLeaks.draw(
                        new StandingLeak(Component.HUB_SEAL, cause.place().wheel(), because("SCO-903", cause)));
            }
        }
    }

    /** A calliper is confirmed to leak and was not found sound after the work. */
    private static void sco904(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.CALLIPER_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.partStates.of(Component.CALLIPER),
                            state -> state.condition() == Condition.SOUND
                                    && state.stage() == FindingStage.AFTER_WORK
                                    && state.place().covers(cause.place().wheel()))) {
                facts.standingLeaks.draw(
                        new StandingLeak(Component.CALLIPER, cause.place().wheel(), because("SCO-904", cause)));
            }
        }
    }

    /** A flexible hose is confirmed to leak and was not found sound after the work. */
    private static void sco905(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.HOSE_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.partStates.of(Component.FLEXIBLE_HOSE),
                            state -> state.condition() == Condition.SOUND
                                    && state.stage() == FindingStage.AFTER_WORK
                                    && state.place().covers(cause.place().wheel()))) {
                facts.standingLeaks.draw(
                        new StandingLeak(Component.FLEXIBLE_HOSE, cause.place().wheel(), because("SCO-905", cause)));
            }
        }
    }

    /** A pipe union is confirmed to leak and was not found sound after the work. */
    private static void sco906(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.PIPE_UNION_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.partStates.of(Component.PIPE_UNION),
                            state -> state.condition() == Condition.SOUND
                                    && state.stage() == FindingStage.AFTER_WORK
                                    && state.place().covers(cause.place().wheel()))) {
                facts.standingLeaks.draw(
                        new StandingLeak(Component.PIPE_UNION, cause.place().wheel(), because("SCO-906", cause)));
            }
        }
    }

    /** A master cylinder is confirmed to leak and was not found sound after the work. */
    private static void sco907(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.MASTER_CYLINDER_LEAKING)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.partStates.of(Component.MASTER_CYLINDER),
                            state -> state.condition() == Condition.SOUND
                                    && state.stage() == FindingStage.AFTER_WORK
                                    && state.place().covers(cause.place().wheel()))) {
                facts.standingLeaks.draw(new StandingLeak(
                        Component.MASTER_CYLINDER, cause.place().wheel(), because("SCO-907", cause)));
            }
        }
    }

    /** A bleed nipple is confirmed to weep and was not found sound after the work. */
    private static void sco908(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.BLEED_NIPPLE_WEEPING)) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && none(
                            facts.partStates.of(Component.BLEED_NIPPLE),
                            state -> state.condition() == Condition.SOUND
                                    && state.stage() == FindingStage.AFTER_WORK
                                    && state.place().covers(cause.place().wheel()))) {
                facts.standingLeaks.draw(
                        new StandingLeak(Component.BLEED_NIPPLE, cause.place().wheel(), because("SCO-908", cause)));
            }
        }
    }
}
