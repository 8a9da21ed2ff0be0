package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.ReportedCondition;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/** What proves and refutes faults of hub, tyre, drive and electronics, and tests that mislead. */
final class HubTyreTest {

    private HubTyreTest() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau690(facts);
        cau691(facts);
        cau692(facts);
        cau693(facts);
        cau700(facts);
        cau702(facts);
        cau730(facts);
        cau732(facts);
        cau740(facts);
        cau742(facts);
        cau755(facts);
        cau710(facts);
        cau720(facts);
        cau722(facts);
        cau711(facts);
        cau750(facts);
        cau712(facts);
    }

    /** A hub bearing has play, noise or roughness. */
    private static void cau690(Facts facts) {
        for (Finding finding : facts.findings.of(Component.HUB_BEARING)) {
            if (finding.condition() == Condition.WORN
                    || finding.condition() == Condition.LOOSE
                    || finding.condition() == Condition.TIGHT
                    || finding.condition() == Condition.SEIZED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HUB_BEARING_WORN)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-690", finding)));
                    }
                }
            }
        }
    }

    /** A hub bearing has too much play by its own limit. */
    private static void cau691(Facts facts) {
        for (Finding finding : facts.findings.of(Component.HUB_BEARING)) {
            if (finding.aboveOwnLimit(MeasuredQuantity.HUB_PLAY)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HUB_BEARING_WORN)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-691", finding)));
                    }
                }
            }
        }
    }

    /** A hub bearing has too much play by the limit of the workshop. */
    private static void cau692(Facts facts) {
        for (Finding finding : facts.findings.of(Component.HUB_BEARING)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.HUB_BEARING_WORN)) {
                if (candidate.place().covers(finding.place())) {
                    for (Threshold limit : facts.thresholds.of(ThresholdCode.HUB_PLAY_MOST)) {
                        if (finding.above(MeasuredQuantity.HUB_PLAY, limit.value())) {
                            facts.proofs.draw(
                                    new Proof(candidate.code(), candidate.place(), because("CAU-692", finding, limit)));
                        }
                    }
                }
            }
        }
    }

    /** A hub bearing is without play or noise. */
    private static void cau693(Facts facts) {
        for (Finding finding : facts.findings.of(Component.HUB_BEARING)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HUB_BEARING_WORN)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-693", finding)));
                    }
                }
            }
        }
    }

    /** The tyres of an axle differ. */
    private static void cau700(Facts facts) {
        for (Finding finding : facts.findings.of(Component.TYRE)) {
            if (finding.condition() == Condition.LOW
                    || finding.condition() == Condition.WORN
                    || finding.condition() == Condition.MISFITTED
                    || finding.condition() == Condition.WRONG_PART) {
                for (Candidate candidate : facts.candidates.of(CauseCode.TYRES_UNEQUAL)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-700", finding)));
                    }
                }
            }
        }
    }

    /** The tyres of an axle are alike. */
    private static void cau702(Facts facts) {
        for (Finding finding : facts.findings.of(Component.TYRE)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.TYRE_CHECK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.TYRES_UNEQUAL)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-702", finding)));
                    }
                }
            }
        }
    }

    /** A second run says the same, so grip was not the limit. */
    private static void cau710(Facts facts) {
        for (SymptomObservable repeated : facts.symptomObservables.of(SymptomCode.TEST_NOT_REPEATABLE)) {
            if (none(
                            facts.symptoms.of(SymptomCode.TEST_NOT_REPEATABLE),
                            symptom -> symptom.place().equals(repeated.place()))
                    && none(
                            facts.symptoms.all(),
                            symptom -> (symptom.code() == SymptomCode.GRIP_RETURNS
                                            || symptom.code() == SymptomCode.FORCE_RECOVERS_WARM)
                                    && symptom.place().sameAxle(repeated.place()))) {
                for (Candidate candidate : facts.candidates.of(CauseCode.GRIP_LIMIT)) {
                    if (candidate.place().equals(repeated.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-710", repeated)));
                    }
                }
            }
        }
    }

    /** A second run reads differently, and neither a film of rust nor grip was the reason. */
    private static void cau720(Facts facts) {
        for (Symptom symptom : facts.symptoms.of(SymptomCode.TEST_NOT_REPEATABLE)) {
            if (none(
                            facts.reportedConditions.all(),
                            reported -> (reported.condition() == TestCondition.TYRE_WET
                                            || reported.condition() == TestCondition.ROLLERS_WET
                                            || reported.condition() == TestCondition.ROLLERS_WORN
                                            || reported.condition() == TestCondition.LOAD_SHIFTED
                                            || reported.condition() == TestCondition.REGENERATIVE_BRAKING_ACTIVE
                                            || reported.condition() == TestCondition.STOOD_FOR_LONG
                                            || reported.condition() == TestCondition.BRAKES_COLD)
                                    && reported.place().equals(symptom.place()))
                    && none(
                            facts.symptoms.all(),
                            otherSymptom -> (otherSymptom.code() == SymptomCode.SWING_CLEARS
                                            || otherSymptom.code() == SymptomCode.GRIP_RETURNS)
                                    && otherSymptom.place().sameAxle(symptom.place()))) {
                for (Candidate candidate : facts.candidates.of(CauseCode.TEST_NOT_VALID)) {
                    if (candidate.place().equals(symptom.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-720", symptom)));
                    }
                }
            }
        }
    }

    /** A second run says the same, so the first one did not mislead. */
    private static void cau722(Facts facts) {
        for (SymptomObservable repeated : facts.symptomObservables.of(SymptomCode.TEST_NOT_REPEATABLE)) {
            if (none(
                    facts.symptoms.of(SymptomCode.TEST_NOT_REPEATABLE),
                    symptom -> symptom.place().equals(repeated.place()))) {
                for (Candidate candidate : facts.candidates.of(CauseCode.TEST_NOT_VALID)) {
                    if (candidate.place().equals(repeated.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-722", repeated)));
                    }
                }
            }
        }
    }

    /** Drag is gone with the drive disconnected. */
    private static void cau730(Facts facts) {
        for (Finding finding : facts.findings.of(Component.TRANSMISSION)) {
            if (finding.condition() == Condition.TIGHT || finding.condition() == Condition.SEIZED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.TRANSMISSION_DRAG)) {
                    facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-730", finding)));
                }
            }
        }
    }

    /** Drag stays with the drive disconnected. */
    private static void cau732(Facts facts) {
        for (Finding finding : facts.findings.of(Component.TRANSMISSION)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.TRANSMISSION_DRAG)) {
                    facts.refutations.draw(
                            new Refutation(candidate.code(), candidate.place(), because("CAU-732", finding)));
                }
            }
        }
    }

    /** A wheel sensor, its ring or its wiring is at fault. */
    private static void cau740(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ANTILOCK_SENSOR)) {
            if (finding.condition() == Condition.BROKEN
                    || finding.condition() == Condition.LOOSE
                    || finding.condition() == Condition.CRACKED
                    || finding.condition() == Condition.CORRODED
                    || finding.condition() == Condition.WORN) {
                for (Candidate candidate : facts.candidates.of(CauseCode.ANTILOCK_SENSOR_FAULTY)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-740", finding)));
                    }
                }
            }
        }
    }

    /** A wheel sensor is without fault. */
    private static void cau742(Facts facts) {
        for (Finding finding : facts.findings.of(Component.ANTILOCK_SENSOR)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.ANTILOCK_SENSOR_FAULTY)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-742", finding)));
                    }
                }
            }
        }
    }

    /** A run on doubtful grip reads differently from the next one. */
    private static void cau711(Facts facts) {
        for (ReportedCondition reported : facts.reportedConditions.all()) {
            if ((reported.condition() == TestCondition.TYRE_WET
                            || reported.condition() == TestCondition.ROLLERS_WET
                            || reported.condition() == TestCondition.ROLLERS_WORN
                            || reported.condition() == TestCondition.LOAD_SHIFTED)
                    && reported.brake() == BrakeSystem.SERVICE) {
                for (Symptom differs : facts.symptoms.of(SymptomCode.TEST_NOT_REPEATABLE)) {
                    if (differs.place().equals(reported.place())) {
                        for (Candidate candidate : facts.candidates.of(CauseCode.GRIP_LIMIT)) {
                            if (candidate.place().equals(reported.place())) {
                                facts.proofs.draw(new Proof(
                                        candidate.code(), candidate.place(), because("CAU-711", reported, differs)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel that met the limit of grip goes beyond it in a second run, even and in time. */
    private static void cau712(Facts facts) {
        for (Symptom returns : facts.symptoms.of(SymptomCode.GRIP_RETURNS)) {
            if (none(
                            facts.symptomObservables.of(SymptomCode.SWING_CLEARS),
                            observable -> observable.place().equals(returns.place()))
                    && none(
                            facts.symptoms.of(SymptomCode.SWING_CLEARS),
                            symptom -> symptom.place().sameAxle(returns.place()))
                    && none(
                            facts.symptoms.all(),
                            symptom -> (symptom.code() == SymptomCode.FORCE_SWING_ONE_WHEEL
                                            || symptom.code() == SymptomCode.FORCE_SWING_AXLE
                                            || symptom.code() == SymptomCode.IRREGULAR_FORCE)
                                    && symptom.place().covers(returns.place()))
                    && none(
                            facts.symptoms.of(SymptomCode.SLOW_RISE_ONE_WHEEL),
                            symptom -> symptom.place().covers(returns.place()))
                    && none(
                            facts.unsteadyAxles.all(),
                            unsteady -> unsteady.place().equals(returns.place().axlePlace()))) {
                for (Candidate candidate : facts.candidates.of(CauseCode.GRIP_LIMIT)) {
                    if (candidate.place().equals(returns.place().axlePlace())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-712", returns)));
                    }
                }
            }
        }
    }

    /** A run in which the drive braked along reads differently from the next one. */
    private static void cau750(Facts facts) {
        for (ReportedCondition reported : facts.reportedConditions.of(TestCondition.REGENERATIVE_BRAKING_ACTIVE)) {
            if (reported.brake() == BrakeSystem.SERVICE) {
                for (Symptom differs : facts.symptoms.of(SymptomCode.TEST_NOT_REPEATABLE)) {
                    if (differs.place().equals(reported.place())) {
                        for (Candidate candidate : facts.candidates.of(CauseCode.REGENERATIVE_BLENDING)) {
                            if (candidate.place().equals(reported.place())) {
                                facts.proofs.draw(new Proof(
                                        candidate.code(), candidate.place(), because("CAU-750", reported, differs)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A vehicle stood for long and its disc is rusted beside good pads. */
    private static void cau755(Facts facts) {
        for (ReportedCondition reported : facts.reportedConditions.of(TestCondition.STOOD_FOR_LONG)) {
            for (Finding disc : facts.findings.of(Component.DISC)) {
                if (disc.condition() == Condition.CORRODED) {
                    for (Finding pad : facts.findings.of(Component.PAD)) {
                        if (pad.sound() && pad.place().sameAxle(disc.place())) {
                            for (Candidate candidate : facts.candidates.of(CauseCode.LONG_DISUSE)) {
                                if (candidate.place().equals(reported.place())
                                        && candidate.place().covers(disc.place())) {
                                    facts.proofs.draw(new Proof(
                                            candidate.code(),
                                            candidate.place(),
                                            because("CAU-755", reported, disc, pad)));
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}
