package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.LimitRisk;
import org.axlecause.facts.LimitStanding;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/**
 * A verdict stands by the plain rule of the regime; where the figure lies so close to its limit that the verdict may
 * well be wrong, that is said and a repeat is asked for.
 */
final class CloseCalls {

    private CloseCalls() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        def110(facts);
    }

    /** A figure lies so close to its limit that the verdict may be wrong. */
    private static void def110(Facts facts) {
        for (LimitRisk risk : facts.limitRisks.all()) {
            if (risk.limit().standing() == LimitStanding.REGIME) {
                for (Threshold most : facts.thresholds.of(ThresholdCode.TOO_CLOSE_RISK)) {
                    if (risk.isTooClose(most.value())) {
                        facts.openQuestions.draw(new OpenQuestion(
                                QuestionCode.TOO_CLOSE_TO_CALL,
                                risk.figure().place(),
                                risk.says(),
                                "Repeat the test in the same stage: runs that agree are combined and the scatter between them lessens. What the accuracy of the tester leaves open only another or a better tester settles.",
                                because("DEF-110", risk.figure(), risk.limit(), most)));
                    }
                }
            }
        }
    }
}
