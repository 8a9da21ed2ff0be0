package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;

import org.axlecause.facts.AxleState;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.GaugeUncertainty;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.PartState;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.SettledCause;
import org.axlecause.facts.UnlookedPart;

/**
 * Both wheels of an opened axle are looked at before its scope is final. What was not accessible ends the asking;
 * what was simply not looked at is a question.
 */
final class PlacesLookedAt {

    private PlacesLookedAt() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sco811(facts);
        sco831(facts);
        sco832(facts);
    }

    /** Draws what depends on all lines. */
    static void close(Facts facts) {
        sco821(facts);
        sco822(facts);
    }

    /** A part of an opened wheel was not looked at. */
    private static void sco811(Facts facts) {
        for (UnlookedPart part : facts.unlookedParts.all()) {
            facts.openQuestions.draw(new OpenQuestion(
                    QuestionCode.PLACE_NOT_LOOKED_AT,
                    part.place(),
                    "The " + part.part() + " was not looked at well enough to tell.",
                    "Make this check and record what you find, sound or not, or that it cannot be got at: "
                            + part.check() + ".",
                    because("SCO-811", part)));
        }
    }

    /** An opened axle was not looked at on both sides. */
    private static void sco821(Facts facts) {
        for (AxleState axle : facts.axleStates.all()) {
            if (axle.opened()
                    && !axle.bothLookedAt()
                    && any(
                            facts.scopeProposals.all(),
                            proposal -> proposal.place().sameAxle(axle.place()))) {
                facts.openQuestions.draw(new OpenQuestion(
                        QuestionCode.SCOPE_PROVISIONAL,
                        axle.place(),
                        "Not everything on both wheels of this axle has been looked at.",
                        "Look at linings, cylinders, hub seals and adjusters of both its wheels.",
                        because("SCO-821", axle)));
            }
        }
    }

    /** A root cause is only suspected. */
    private static void sco822(Facts facts) {
        for (SettledCause cause : facts.settledCauses.all()) {
            if (cause.standing() == CauseStanding.SUSPECTED
                    && cause.root()
                    && any(
                            facts.scopeProposals.all(),
                            proposal -> proposal.place().sameAxle(cause.place()))) {
                facts.openQuestions.draw(new OpenQuestion(
                        QuestionCode.SCOPE_PROVISIONAL,
                        cause.place(),
                        "A cause is only suspected.",
                        "Make the look that is asked for next.",
                        because("SCO-822", cause)));
            }
        }
    }

    /** A measured value lies so near to the figure stamped on the part that the gauge cannot tell. */
    private static void sco831(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null
                    && state.measurement().limit() != null
                    && state.stage() != FindingStage.AFTER_WORK) {
                for (GaugeUncertainty gauge : facts.gaugeUncertainties.all()) {
                    if (gauge.quantity() == state.measurement().quantity()
                            && gauge.blurs(
                                    state.measurement().value(),
                                    state.measurement().limit())) {
                        facts.openQuestions.draw(new OpenQuestion(
                                QuestionCode.TOO_CLOSE_TO_CALL,
                                state.place(),
                                "A measured value lies within what the gauge may be off of its limit.",
                                "Measure again at several points with a checked gauge and record the worst value.",
                                because("SCO-831", state, gauge)));
                    }
                }
            }
        }
    }

    /** A measured value lies so near to a bound of the policy that the gauge cannot tell. */
    private static void sco832(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.measurement() != null && state.stage() != FindingStage.AFTER_WORK) {
                for (GaugeUncertainty gauge : facts.gaugeUncertainties.all()) {
                    if (gauge.quantity() == state.measurement().quantity()) {
                        for (PolicyClause clause : facts.policyClauses.all()) {
                            if (clause.value() != null
                                    && clause.code().quantity() != null
                                    && state.measurement().quantity()
                                            == clause.code().quantity()
                                    && gauge.blurs(state.measurement().value(), clause.value())) {
                                facts.openQuestions.draw(new OpenQuestion(
                                        QuestionCode.TOO_CLOSE_TO_CALL,
                                        state.place(),
                                        "A measured value lies within what the gauge may be off of the bound of the workshop.",
                                        "Measure again at several points with a checked gauge and record the worst value.",
                                        because("SCO-832", state, clause, gauge)));
                            }
                        }
                    }
                }
            }
        }
    }
}
