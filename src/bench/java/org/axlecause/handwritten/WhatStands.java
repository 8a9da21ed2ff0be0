package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.BeddingAllowed;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.DeficiencyInForce;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.OpenLine;
import org.axlecause.facts.PartState;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.RetestComparison;
import org.axlecause.facts.RetestRound;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.SettledCause;
import org.axlecause.facts.StandingCause;
import org.axlecause.facts.StandingDeficiency;
import org.axlecause.facts.StandingFault;

/**
 * What still stands after the work reported so far: required lines not done, faults and deficiencies not ended,
 * causes with work open. A line that was refused stands open like any other: refusing it mends nothing.
 */
final class WhatStands {

    private WhatStands() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        out002(facts);
        out003(facts);
        out004(facts);
        out005(facts);
        out009(facts);
        out006(facts);
        out010(facts);
        out001(facts);
        out007(facts);
        out008(facts);
    }

    /** A required line was not reported done. */
    private static void out001(Facts facts) {
        for (ScopeProposal line : facts.scopeProposals.all()) {
            LineKey key = line.line();
            if (line.necessity() == Necessity.REQUIRED
                    && key.isChangingForce()
                    && none(facts.linesDone.all(), done -> done.line().equals(key))
                    && none(facts.departures.all(), departure -> departure.frees(line))) {
                facts.openLines.draw(new OpenLine(key, because("OUT-001", line)));
            }
        }
    }

    /** A fault was found and neither work nor a look after the work has ended it. */
    private static void out002(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.isFault()
                    && state.stage() != FindingStage.AFTER_WORK
                    && none(facts.linesDone.all(), done -> done.mends(state.item(), state.place()))
                    && none(
                            facts.partStates.all(),
                            partState -> partState.component() == state.component()
                                    && partState.condition() == Condition.SOUND
                                    && partState.stage() == FindingStage.AFTER_WORK
                                    && partState.place().covers(state.place()))) {
                facts.standingFaults.draw(new StandingFault(
                        state.component(),
                        state.condition(),
                        state.place(),
                        state.extent(),
                        because("OUT-002", state)));
            }
        }
    }

    /** A fault was found after the work. */
    private static void out003(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.isFault() && state.stage() == FindingStage.AFTER_WORK) {
                facts.standingFaults.draw(new StandingFault(
                        state.component(),
                        state.condition(),
                        state.place(),
                        state.extent(),
                        because("OUT-003", state)));
            }
        }
    }

    /** The latest test still shows a deficiency. */
    private static void out004(Facts facts) {
        for (StandingDeficiency deficiency : facts.standingDeficiencies.all()) {
            if (deficiency.code() != DeficiencyCode.LINING_CONTAMINATED
                    && deficiency.code() != DeficiencyCode.LINING_BELOW_LIMIT
                    && deficiency.code() != DeficiencyCode.WHEEL_CYLINDER_LEAKING
                    && deficiency.code() != DeficiencyCode.CALLIPER_LEAKING
                    && deficiency.code() != DeficiencyCode.FLEXIBLE_HOSE_LEAKING
                    && deficiency.code() != DeficiencyCode.BRAKE_PIPE_LEAKING
                    && deficiency.code() != DeficiencyCode.BRAKE_FLUID_LOW) {
                facts.deficienciesInForce.draw(new DeficiencyInForce(
                        deficiency.code(),
                        deficiency.place(),
                        deficiency.severity(),
                        deficiency.ofPolicy(),
                        because("OUT-004", deficiency)));
            }
        }
    }

    /** Linings are deficient and were not renewed. */
    private static void out005(Facts facts) {
        for (StandingDeficiency deficiency : facts.standingDeficiencies.all()) {
            if ((deficiency.code() == DeficiencyCode.LINING_CONTAMINATED
                            || deficiency.code() == DeficiencyCode.LINING_BELOW_LIMIT)
                    && none(
                            facts.linesDone.all(),
                            done -> (done.line().item() == ScopeItem.SHOE_SET
                                            || done.line().item() == ScopeItem.PAD_SET)
                                    && done.line().isExchange()
                                    && done.line().place().covers(deficiency.place()))) {
                facts.deficienciesInForce.draw(new DeficiencyInForce(
                        deficiency.code(),
                        deficiency.place(),
                        deficiency.severity(),
                        deficiency.ofPolicy(),
                        because("OUT-005", deficiency)));
            }
        }
    }

    /** A leaking part is deficient and its leak still stands. */
    private static void out006(Facts facts) {
        for (StandingDeficiency deficiency : facts.standingDeficiencies.all()) {
            if ((deficiency.code() == DeficiencyCode.WHEEL_CYLINDER_LEAKING
                            || deficiency.code() == DeficiencyCode.CALLIPER_LEAKING
                            || deficiency.code() == DeficiencyCode.FLEXIBLE_HOSE_LEAKING
                            || deficiency.code() == DeficiencyCode.BRAKE_PIPE_LEAKING)
                    && any(facts.standingLeaks.all(), leak -> leak.place().meets(deficiency.place()))) {
                facts.deficienciesInForce.draw(new DeficiencyInForce(
                        deficiency.code(),
                        deficiency.place(),
                        deficiency.severity(),
                        deficiency.ofPolicy(),
                        because("OUT-006", deficiency)));
            }
        }
    }

    /** A confirmed cause has required work open on its axle. */
    private static void out007(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && cause.code() != CauseCode.LINING_GLAZED
                    && cause.code() != CauseCode.LINING_NOT_BEDDED
                    && cause.code() != CauseCode.RUST_FILM
                    && cause.code() != CauseCode.TYRES_UNEQUAL
                    && cause.code() != CauseCode.GRIP_LIMIT
                    && cause.code() != CauseCode.TRANSMISSION_DRAG
                    && cause.code() != CauseCode.REGENERATIVE_BLENDING
                    && cause.code() != CauseCode.LONG_DISUSE
                    && cause.code() != CauseCode.TEST_NOT_VALID
                    && cause.place().axle() != null
                    && any(facts.openLines.all(), openLine -> openLine.place().sameAxle(cause.place()))) {
                facts.standingCauses.draw(
                        new StandingCause(cause.code(), cause.place(), cause.root(), because("OUT-007", cause)));
            }
        }
    }

    /** A confirmed cause has required work open on a circuit or the vehicle. */
    private static void out008(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if (cause.standing() == CauseStanding.CONFIRMED
                    && cause.code() != CauseCode.LINING_GLAZED
                    && cause.code() != CauseCode.LINING_NOT_BEDDED
                    && cause.code() != CauseCode.RUST_FILM
                    && cause.code() != CauseCode.TYRES_UNEQUAL
                    && cause.code() != CauseCode.GRIP_LIMIT
                    && cause.code() != CauseCode.TRANSMISSION_DRAG
                    && cause.code() != CauseCode.REGENERATIVE_BLENDING
                    && cause.code() != CauseCode.LONG_DISUSE
                    && cause.code() != CauseCode.TEST_NOT_VALID
                    && cause.place().axle() == null
                    && any(facts.openLines.all(), openLine -> openLine.place().axle() == null)) {
                facts.standingCauses.draw(
                        new StandingCause(cause.code(), cause.place(), cause.root(), because("OUT-008", cause)));
            }
        }
    }

    /** The first final test of new linings misses the target of bedded ones by little. */
    private static void out009(Facts facts) {
        for (RetestComparison figure : facts.retestComparisons.all()) {
            if (figure.isServiceImbalance()
                    && figure.isShortOfTarget()
                    && any(
                            facts.linesDone.all(),
                            done -> (done.line().item() == ScopeItem.SHOE_SET
                                            || done.line().item() == ScopeItem.PAD_SET
                                            || done.line().item() == ScopeItem.DRUM
                                            || done.line().item() == ScopeItem.DISC)
                                    && done.line().isExchange()
                                    && done.line().place().sameAxle(figure.place()))) {
                for (RetestRound round : facts.retestRounds.all()) {
                    if (round.place().equals(figure.place()) && round.number() == 1) {
                        for (PolicyClause clause : facts.policyClauses.of(ClauseCode.IMBALANCE_TARGET_NOT_BEDDED)) {
                            if (clause.value() != null
                                    && figure.after() != null
                                    && clause.value().compareTo(figure.after()) >= 0) {
                                facts.beddingAllowed.draw(
                                        new BeddingAllowed(figure.place(), because("OUT-009", figure, round, clause)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** Brake fluid was deficient and its level still stands as a fault. */
    private static void out010(Facts facts) {
        for (StandingDeficiency deficiency : facts.standingDeficiencies.all()) {
            if (deficiency.code() == DeficiencyCode.BRAKE_FLUID_LOW
                    && !facts.standingFaults.of(Component.BRAKE_FLUID).isEmpty()) {
                facts.deficienciesInForce.draw(new DeficiencyInForce(
                        deficiency.code(),
                        deficiency.place(),
                        deficiency.severity(),
                        deficiency.ofPolicy(),
                        because("OUT-010", deficiency)));
            }
        }
    }
}
