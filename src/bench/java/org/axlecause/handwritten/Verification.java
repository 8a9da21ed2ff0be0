package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.BeddingAllowed;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.OpenLine;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Place;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.RetestComparison;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.StandingLeak;
import org.axlecause.facts.StandingSymptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.VerificationGround;
import org.axlecause.facts.VerificationSign;

/**
 * What the final test and the looks after the work say about the repair: each figure against the limit of the regime,
 * the target of the workshop and the test at arrival; open lines, leaks and faults keep a repair from being verified.
 */
final class Verification {

    private Verification() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        out101(facts);
        out105(facts);
        out106(facts);
        out107(facts);
        out108(facts);
        out113(facts);
        out114(facts);
        out115(facts);
        out102(facts);
        out103(facts);
        out104(facts);
        out109(facts);
        out112(facts);
        out111(facts);
    }

    /** A figure of the final test keeps limit and target. */
    private static void out101(Facts facts) {
        for (RetestComparison figure : facts.retestComparisons.all()) {
            if (figure.isGood()) {
                facts.verificationGrounds.draw(
                        new VerificationGround(VerificationSign.CURED, figure.place(), because("OUT-101", figure)));
            }
        }
    }

    /** A figure keeps the limit but misses the target. */
    private static void out102(Facts facts) {
        for (RetestComparison figure : facts.retestComparisons.all()) {
            if (figure.isTested()
                    && figure.isShortOfTarget()
                    && none(
                            facts.beddingAllowed.all(),
                            allowed -> allowed.place().equals(figure.place()))) {
                facts.verificationGrounds.draw(
                        new VerificationGround(VerificationSign.IMPROVED, figure.place(), because("OUT-102", figure)));
            }
        }
    }

    /** A figure misses the target by what new linings are allowed. */
    private static void out103(Facts facts) {
        for (RetestComparison figure : facts.retestComparisons.all()) {
            if (figure.isServiceImbalance() && figure.isShortOfTarget()) {
                for (BeddingAllowed allowed : facts.beddingAllowed.all()) {
                    if (allowed.place().equals(figure.place())) {
                        facts.verificationGrounds.draw(new VerificationGround(
                                VerificationSign.CURED, figure.place(), because("OUT-103", figure, allowed)));
                    }
                }
            }
        }
    }

    /** Another figure of an axle with new linings misses its target. */
    private static void out104(Facts facts) {
        for (RetestComparison figure : facts.retestComparisons.all()) {
            if (figure.isTested()
                    && figure.isShortOfTarget()
                    && !figure.isServiceImbalance()
                    && any(
                            facts.beddingAllowed.all(),
                            allowed -> allowed.place().equals(figure.place()))) {
                facts.verificationGrounds.draw(
                        new VerificationGround(VerificationSign.IMPROVED, figure.place(), because("OUT-104", figure)));
            }
        }
    }

    /** A figure is beyond the limit but better than at arrival. */
    private static void out105(Facts facts) {
        for (RetestComparison figure : facts.retestComparisons.all()) {
            if (figure.isTested() && !figure.withinLimit()) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.RETEST_NOISE)) {
                    if (clause.value() != null && figure.improvement().compareTo(clause.value()) > 0) {
                        facts.verificationGrounds.draw(new VerificationGround(
                                VerificationSign.IMPROVED, figure.place(), because("OUT-105", figure)));
                    }
                }
            }
        }
    }

    /** A figure is beyond the limit and no better than at arrival. */
    private static void out106(Facts facts) {
        for (RetestComparison figure : facts.retestComparisons.all()) {
            if (figure.isTested() && !figure.withinLimit()) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.RETEST_NOISE)) {
                    if (clause.value() != null && figure.improvement().compareTo(clause.value()) <= 0) {
                        facts.verificationGrounds.draw(new VerificationGround(
                                VerificationSign.NOT_CURED, figure.place(), because("OUT-106", figure)));
                    }
                }
            }
        }
    }

    /** A figure is beyond the limit and nothing says what counts as better. */
    private static void out107(Facts facts) {
        for (RetestComparison figure : facts.retestComparisons.all()) {
            if (figure.isTested()
                    && !figure.withinLimit()
                    && facts.policyClauses.of(ClauseCode.RETEST_NOISE).isEmpty()) {
                facts.verificationGrounds.draw(
                        new VerificationGround(VerificationSign.NOT_CURED, figure.place(), because("OUT-107", figure)));
            }
        }
    }

    /** A figure that stood out at arrival misses the target and is no better. */
    private static void out109(Facts facts) {
        for (RetestComparison figure : facts.retestComparisons.all()) {
            if (figure.isShortOfTarget()
                    && figure.conspicuous()
                    && !(figure.isServiceImbalance()
                            && any(
                                    facts.beddingAllowed.all(),
                                    allowed -> allowed.place().equals(figure.place())))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.RETEST_NOISE)) {
                    if (clause.value() != null && figure.improvement().compareTo(clause.value()) <= 0) {
                        facts.verificationGrounds.draw(new VerificationGround(
                                VerificationSign.NOT_CURED, figure.place(), because("OUT-109", figure)));
                    }
                }
            }
        }
    }

    /** A figure of the arrival test was not tested again. */
    private static void out108(Facts facts) {
        for (RetestComparison figure : facts.retestComparisons.all()) {
            if (!figure.isTested()) {
                facts.verificationGrounds.draw(new VerificationGround(
                        VerificationSign.NOT_TESTED, figure.place(), because("OUT-108", figure)));
            }
        }
    }

    /** A required line is open. */
    private static void out111(Facts facts) {
        for (OpenLine line : facts.openLines.all()) {
            facts.verificationGrounds.draw(
                    new VerificationGround(VerificationSign.STILL_OPEN, line.place(), because("OUT-111", line)));
        }
    }

    /** A leak has no sound look after the work. */
    private static void out112(Facts facts) {
        for (StandingLeak leak : facts.standingLeaks.all()) {
            facts.verificationGrounds.draw(
                    new VerificationGround(VerificationSign.STILL_OPEN, leak.place(), because("OUT-112", leak)));
        }
    }

    /** A look after the work found a fault. */
    private static void out113(Facts facts) {
        for (PartState state : facts.partStates.all()) {
            if (state.isFault() && state.stage() == FindingStage.AFTER_WORK) {
                facts.verificationGrounds.draw(
                        new VerificationGround(VerificationSign.STILL_OPEN, state.place(), because("OUT-113", state)));
            }
        }
    }

    /** The pedal showed a fault and was not found sound after the work. */
    private static void out114(Facts facts) {
        for (StandingSymptom symptom : facts.standingSymptoms.all()) {
            if ((symptom.code() == SymptomCode.PEDAL_SINKING
                            || symptom.code() == SymptomCode.PEDAL_SPONGY
                            || symptom.code() == SymptomCode.PEDAL_LONG
                            || symptom.code() == SymptomCode.PEDAL_HARD)
                    && none(
                            facts.partStates.of(Component.PEDAL),
                            state ->
                                    state.condition() == Condition.SOUND && state.stage() == FindingStage.AFTER_WORK)) {
                facts.verificationGrounds.draw(new VerificationGround(
                        VerificationSign.STILL_OPEN, Place.VEHICLE, because("OUT-114", symptom)));
            }
        }
    }

    /** The hydraulics were opened and nobody looked for leaks after the work. */
    private static void out115(Facts facts) {
        for (LineDone done : facts.linesDone.all()) {
            if (done.line().action() == ScopeAction.BLEED
                    && none(
                            facts.partStates.all(),
                            state -> state.stage() == FindingStage.AFTER_WORK
                                    && (state.component() == Component.WHEEL_CYLINDER
                                            || state.component() == Component.CALLIPER
                                            || state.component() == Component.FLEXIBLE_HOSE
                                            || state.component() == Component.BRAKE_PIPE
                                            || state.component() == Component.PIPE_UNION
                                            || state.component() == Component.BLEED_NIPPLE
                                            || state.component() == Component.MASTER_CYLINDER))) {
                facts.openQuestions.draw(new OpenQuestion(
                        QuestionCode.PLACE_NOT_LOOKED_AT,
                        done.line().place(),
                        "The hydraulics were opened and no look for leaks after the work is on record.",
                        "Press the pedal hard three times, look at every joint that was opened and record what you find.",
                        because("OUT-115", done)));
            }
        }
    }
}
