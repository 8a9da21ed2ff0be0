package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import java.util.Objects;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.Likelier;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.Proof;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.RecentWork;
import org.axlecause.facts.ReportedCondition;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.Vehicle;

/**
 * What makes a cause likelier than age and layout do: recent work on the axle, and tests under doubtful conditions.
 */
final class Circumstances {

    private Circumstances() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau850(facts);
        cau851(facts);
        cau852(facts);
        cau853(facts);
        cau854(facts);
        cau855(facts);
        cau856(facts);
        cau857(facts);
        cau858(facts);
        cau859(facts);
        cau870(facts);
        cau871(facts);
        cau872(facts);
        cau873(facts);
        cau874(facts);
        cau875(facts);
        cau876(facts);
        cau877(facts);
        cau878(facts);
        cau860(facts);
        cau861(facts);
        cau880(facts);
    }

    /** Shoes or adjusters of an axle were worked on lately, which makes swapped adjusters likelier. */
    private static void cau850(Facts facts) {
        for (RecentWork work : facts.recentWork.all()) {
            if (work.item() == ScopeItem.SHOE_SET
                    || work.item() == ScopeItem.ADJUSTER
                    || work.item() == ScopeItem.HARDWARE_KIT) {
                for (Candidate candidate : facts.candidates.of(CauseCode.ADJUSTER_ON_WRONG_SIDE)) {
                    if (candidate.place().meets(work.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.RECENT_WORK_DISTANCE)) {
                            if (work.within(limit.value())) {
                                facts.likelier.draw(new Likelier(
                                        candidate.code(), candidate.place(), because("CAU-850", work, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** The hydraulics were opened lately, which makes air likelier. */
    private static void cau851(Facts facts) {
        for (RecentWork work : facts.recentWork.all()) {
            if (work.item() == ScopeItem.BRAKE_FLUID
                    || work.item() == ScopeItem.WHEEL_CYLINDER
                    || work.item() == ScopeItem.CALLIPER
                    || work.item() == ScopeItem.FLEXIBLE_HOSE
                    || work.item() == ScopeItem.BRAKE_PIPE) {
                for (Candidate candidate : facts.candidates.of(CauseCode.AIR_IN_CIRCUIT)) {
                    for (Threshold limit : facts.thresholds.of(ThresholdCode.RECENT_WORK_DISTANCE)) {
                        if (work.within(limit.value())) {
                            facts.likelier.draw(
                                    new Likelier(candidate.code(), candidate.place(), because("CAU-851", work, limit)));
                        }
                    }
                }
            }
        }
    }

    /** Shoes were fitted lately, which makes a soiled drum likelier. */
    private static void cau852(Facts facts) {
        for (RecentWork work : facts.recentWork.of(ScopeItem.SHOE_SET)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_SOILED)) {
                if (candidate.place().meets(work.place())) {
                    for (Threshold limit : facts.thresholds.of(ThresholdCode.RECENT_WORK_DISTANCE)) {
                        if (work.within(limit.value())) {
                            facts.likelier.draw(
                                    new Likelier(candidate.code(), candidate.place(), because("CAU-852", work, limit)));
                        }
                    }
                }
            }
        }
    }

    /** Friction parts of an axle are new, which makes linings likelier that are not bedded in. */
    private static void cau853(Facts facts) {
        for (RecentWork work : facts.recentWork.all()) {
            if (work.item() == ScopeItem.SHOE_SET
                    || work.item() == ScopeItem.PAD_SET
                    || work.item() == ScopeItem.DRUM
                    || work.item() == ScopeItem.DISC) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_NOT_BEDDED)) {
                    if (candidate.place().meets(work.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.RECENT_WORK_DISTANCE)) {
                            if (work.within(limit.value())) {
                                facts.likelier.draw(new Likelier(
                                        candidate.code(), candidate.place(), because("CAU-853", work, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** Friction parts of an axle were worked on lately, which makes soiling by hand likelier. */
    private static void cau854(Facts facts) {
        for (RecentWork work : facts.recentWork.all()) {
            if (work.item() == ScopeItem.SHOE_SET
                    || work.item() == ScopeItem.PAD_SET
                    || work.item() == ScopeItem.DRUM
                    || work.item() == ScopeItem.DISC) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_SOILED_IN_WORK)) {
                    if (candidate.place().meets(work.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.RECENT_WORK_DISTANCE)) {
                            if (work.within(limit.value())) {
                                facts.likelier.draw(new Likelier(
                                        candidate.code(), candidate.place(), because("CAU-854", work, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** Linings of an axle were fitted lately, which makes unlike ones likelier. */
    private static void cau855(Facts facts) {
        for (RecentWork work : facts.recentWork.all()) {
            if (work.item() == ScopeItem.SHOE_SET || work.item() == ScopeItem.PAD_SET) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LININGS_UNLIKE)) {
                    if (candidate.place().meets(work.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.RECENT_WORK_DISTANCE)) {
                            if (work.within(limit.value())) {
                                facts.likelier.draw(new Likelier(
                                        candidate.code(), candidate.place(), because("CAU-855", work, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A union was opened lately, which makes a leak there likelier. */
    private static void cau856(Facts facts) {
        for (RecentWork work : facts.recentWork.all()) {
            if (work.item() == ScopeItem.BRAKE_PIPE
                    || work.item() == ScopeItem.FLEXIBLE_HOSE
                    || work.item() == ScopeItem.WHEEL_CYLINDER
                    || work.item() == ScopeItem.CALLIPER) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PIPE_UNION_LEAKING)) {
                    if (candidate.place().meets(work.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.RECENT_WORK_DISTANCE)) {
                            if (work.within(limit.value())) {
                                facts.likelier.draw(new Likelier(
                                        candidate.code(), candidate.place(), because("CAU-856", work, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** Linings of an axle were fitted lately, which makes misplaced ones likelier. */
    private static void cau857(Facts facts) {
        for (RecentWork work : facts.recentWork.all()) {
            if (work.item() == ScopeItem.SHOE_SET || work.item() == ScopeItem.PAD_SET) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SHOES_MISPLACED)) {
                    if (candidate.place().meets(work.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.RECENT_WORK_DISTANCE)) {
                            if (work.within(limit.value())) {
                                facts.likelier.draw(new Likelier(
                                        candidate.code(), candidate.place(), because("CAU-857", work, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** The shoes of an axle were set lately, which makes tight ones likelier. */
    private static void cau858(Facts facts) {
        for (RecentWork work : facts.recentWork.all()) {
            if (work.item() == ScopeItem.SHOE_SET
                    || work.item() == ScopeItem.ADJUSTER
                    || work.item() == ScopeItem.DRUM) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SHOES_OVER_ADJUSTED)) {
                    if (candidate.place().meets(work.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.RECENT_WORK_DISTANCE)) {
                            if (work.within(limit.value())) {
                                facts.likelier.draw(new Likelier(
                                        candidate.code(), candidate.place(), because("CAU-858", work, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel cylinder was fitted lately, which makes a wrong bore likelier. */
    private static void cau859(Facts facts) {
        for (RecentWork work : facts.recentWork.of(ScopeItem.WHEEL_CYLINDER)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_CYLINDER_WRONG_BORE)) {
                if (candidate.place().meets(work.place())) {
                    for (Threshold limit : facts.thresholds.of(ThresholdCode.RECENT_WORK_DISTANCE)) {
                        if (work.within(limit.value())) {
                            facts.likelier.draw(
                                    new Likelier(candidate.code(), candidate.place(), because("CAU-859", work, limit)));
                        }
                    }
                }
            }
        }
    }

    /** A test was run wet, which makes a misleading reading likelier. */
    private static void cau870(Facts facts) {
        for (TestDoubt doubt : facts.testDoubts.of(DoubtCode.WET_SURFACE)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.TEST_NOT_VALID)) {
                if (candidate.place().meets(doubt.place())) {
                    facts.likelier.draw(new Likelier(candidate.code(), candidate.place(), because("CAU-870", doubt)));
                }
            }
        }
    }

    /** A test was run under a condition that makes it doubtful. */
    private static void cau871(Facts facts) {
        for (TestDoubt doubt : facts.testDoubts.of(DoubtCode.REPORTED_CONDITION)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.TEST_NOT_VALID)) {
                if (candidate.place().meets(doubt.place())) {
                    facts.likelier.draw(new Likelier(candidate.code(), candidate.place(), because("CAU-871", doubt)));
                }
            }
        }
    }

    /** A figure of a test disagrees with its own trace. */
    private static void cau872(Facts facts) {
        for (TestDoubt doubt : facts.testDoubts.of(DoubtCode.FIGURE_AGAINST_TRACE)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.TEST_NOT_VALID)) {
                if (candidate.place().meets(doubt.place())) {
                    facts.likelier.draw(new Likelier(candidate.code(), candidate.place(), because("CAU-872", doubt)));
                }
            }
        }
    }

    /** Both sides of a test bear the same samples. */
    private static void cau873(Facts facts) {
        for (TestDoubt doubt : facts.testDoubts.of(DoubtCode.IDENTICAL_CHANNELS)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.TEST_NOT_VALID)) {
                if (candidate.place().meets(doubt.place())) {
                    facts.likelier.draw(new Likelier(candidate.code(), candidate.place(), because("CAU-873", doubt)));
                }
            }
        }
    }

    /**
     * A vehicle had stood for long or its brakes were cold in a test, which makes a film of rust or damp likelier.
     */
    private static void cau874(Facts facts) {
        for (ReportedCondition reported : facts.reportedConditions.all()) {
            if (reported.condition() == TestCondition.STOOD_FOR_LONG
                    || reported.condition() == TestCondition.BRAKES_COLD) {
                for (Candidate candidate : facts.candidates.of(CauseCode.RUST_FILM)) {
                    if (candidate.place().equals(reported.place())) {
                        facts.likelier.draw(
                                new Likelier(candidate.code(), candidate.place(), because("CAU-874", reported)));
                    }
                }
            }
        }
    }

    /**
     * Tyres or rollers were wet or worn or the load stood to one side in a test, which makes the limit of grip
     * likelier.
     */
    private static void cau875(Facts facts) {
        for (ReportedCondition reported : facts.reportedConditions.all()) {
            if (reported.condition() == TestCondition.TYRE_WET
                    || reported.condition() == TestCondition.ROLLERS_WET
                    || reported.condition() == TestCondition.ROLLERS_WORN
                    || reported.condition() == TestCondition.LOAD_SHIFTED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.GRIP_LIMIT)) {
                    if (candidate.place().equals(reported.place())) {
                        facts.likelier.draw(
                                new Likelier(candidate.code(), candidate.place(), because("CAU-875", reported)));
                    }
                }
            }
        }
    }

    /** The drive braked along in a test, which makes blending likelier. */
    private static void cau876(Facts facts) {
        for (ReportedCondition reported : facts.reportedConditions.of(TestCondition.REGENERATIVE_BRAKING_ACTIVE)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.REGENERATIVE_BLENDING)) {
                if (candidate.place().equals(reported.place())) {
                    facts.likelier.draw(
                            new Likelier(candidate.code(), candidate.place(), because("CAU-876", reported)));
                }
            }
        }
    }

    /** Tyres were reported unequal, damaged or low in a test, which makes unequal tyres likelier. */
    private static void cau877(Facts facts) {
        for (ReportedCondition reported : facts.reportedConditions.all()) {
            if (reported.condition() == TestCondition.TYRES_UNEQUAL
                    || reported.condition() == TestCondition.TYRE_UNDER_INFLATED
                    || reported.condition() == TestCondition.TYRE_DAMAGED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.TYRES_UNEQUAL)) {
                    if (candidate.place().equals(reported.place())) {
                        facts.likelier.draw(
                                new Likelier(candidate.code(), candidate.place(), because("CAU-877", reported)));
                    }
                }
            }
        }
    }

    /** A vehicle had stood for long before a test, which makes rust from disuse likelier. */
    private static void cau878(Facts facts) {
        for (ReportedCondition reported : facts.reportedConditions.of(TestCondition.STOOD_FOR_LONG)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.LONG_DISUSE)) {
                if (candidate.place().equals(reported.place())) {
                    facts.likelier.draw(
                            new Likelier(candidate.code(), candidate.place(), because("CAU-878", reported)));
                }
            }
        }
    }

    /**
     * An axle with a circuit of its own reads low and the pedal is long, which makes the loss of its circuit
     * likelier.
     */
    private static void cau860(Facts facts) {
        for (Symptom low : facts.symptoms.all()) {
            if (low.code() == SymptomCode.FRONT_AXLE_LOW || low.code() == SymptomCode.REAR_AXLE_LOW) {
                for (Symptom pedal : facts.symptoms.of(SymptomCode.PEDAL_LONG)) {
                    for (Candidate candidate : facts.candidates.of(CauseCode.CIRCUIT_LOST)) {
                        for (Vehicle vehicle : facts.vehicles.all()) {
                            if (Objects.equals(candidate.place().circuit(), vehicle.circuitOf(low.place()))) {
                                facts.likelier.draw(new Likelier(
                                        candidate.code(), candidate.place(), because("CAU-860", low, pedal)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A diagonal pair reads low and the pedal is long, which makes the loss of its circuit likelier. */
    private static void cau861(Facts facts) {
        for (Symptom low : facts.symptoms.of(SymptomCode.DIAGONAL_LOW)) {
            for (Symptom pedal : facts.symptoms.of(SymptomCode.PEDAL_LONG)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.CIRCUIT_LOST)) {
                    if (candidate.place().equals(low.place())) {
                        facts.likelier.draw(
                                new Likelier(candidate.code(), candidate.place(), because("CAU-861", low, pedal)));
                    }
                }
            }
        }
    }

    /** Linings that must go sit on wheel cylinders that nobody renewed lately. */
    private static void cau880(Facts facts) {
        for (Proof proof : facts.proofs.all()) {
            if ((proof.code() == CauseCode.LINING_WORN_OUT
                            || proof.code() == CauseCode.LINING_GLAZED
                            || proof.code() == CauseCode.LINING_DETACHED
                            || proof.code() == CauseCode.LININGS_UNLIKE)
                    && any(
                            facts.axles.all(),
                            axle -> Objects.equals(axle.number(), proof.place().axle()) && axle.isDrum())
                    && none(
                            facts.recentWork.of(ScopeItem.WHEEL_CYLINDER),
                            work -> work.place().sameAxle(proof.place()))
                    && none(
                            facts.proofs.of(CauseCode.WHEEL_CYLINDER_LEAKING),
                            otherProof -> otherProof.place().sameAxle(proof.place()))) {
                facts.openQuestions.draw(new OpenQuestion(
                        QuestionCode.SCOPE_PROVISIONAL,
                        proof.place().axlePlace(),
                        "New linings push old pistons back, and a dry wheel cylinder may leak within days.",
                        "Offer the wheel cylinders with the linings, or look at them again after some days.",
                        because("CAU-880", proof)));
            }
        }
    }
}
