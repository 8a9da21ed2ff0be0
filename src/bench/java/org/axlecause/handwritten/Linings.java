package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import java.util.Objects;
import org.axlecause.facts.Agent;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Proof;
import org.axlecause.facts.RecentWork;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.ReportedCondition;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/**
 * What proves and refutes faults of linings and pads. Wet inside a drum is not always brake fluid: the liquid
 * decides.
 */
final class Linings {

    private Linings() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau330(facts);
        cau332(facts);
        cau340(facts);
        cau342(facts);
        cau350(facts);
        cau351(facts);
        cau352(facts);
        cau353(facts);
        cau360(facts);
        cau361(facts);
        cau362(facts);
        cau363(facts);
        cau370(facts);
        cau371(facts);
        cau372(facts);
        cau373(facts);
        cau374(facts);
        cau375(facts);
        cau376(facts);
        cau377(facts);
        cau380(facts);
        cau381(facts);
        cau382(facts);
        cau383(facts);
        cau390(facts);
        cau391(facts);
        cau410(facts);
        cau411(facts);
        cau412(facts);
        cau413(facts);
        cau395(facts);
        cau396(facts);
        cau400(facts);
        cau402(facts);
        cau403(facts);
        cau404(facts);
    }

    /** A lining is soaked with brake fluid and its wheel cylinder is dry. */
    private static void cau330(Facts facts) {
        for (Finding first : facts.findings.of(Component.SHOE_LINING)) {
            if ((first.condition() == Condition.SOAKED || first.condition() == Condition.CONTAMINATED)
                    && first.agent() == Agent.BRAKE_FLUID) {
                for (Finding second : facts.findings.of(Component.WHEEL_CYLINDER)) {
                    if (second.condition() == Condition.SOUND || second.condition() == Condition.DAMP) {
                        for (Candidate candidate : facts.candidates.of(CauseCode.LINING_SOAKED_EARLIER)) {
                            if (candidate.place().covers(first.place())
                                    && second.place().speaksForAllOf(candidate.place())) {
                                facts.proofs.draw(new Proof(
                                        candidate.code(), candidate.place(), because("CAU-330", first, second)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A lining is sound, so it is not soaked. */
    private static void cau332(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_SOAKED_EARLIER)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-332", finding)));
                    }
                }
            }
        }
    }

    /** A hub or axle seal leaks. */
    private static void cau340(Facts facts) {
        for (Finding finding : facts.findings.of(Component.HUB_SEAL)) {
            if (finding.condition() == Condition.LEAKING) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HUB_SEAL_LEAKING)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-340", finding)));
                    }
                }
            }
        }
    }

    /** A hub seal is dry. */
    private static void cau342(Facts facts) {
        for (Finding finding : facts.findings.of(Component.HUB_SEAL)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HUB_SEAL_LEAKING)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-342", finding)));
                    }
                }
            }
        }
    }

    /** A lining is greasy, its hub seal is dry and the linings were worked on lately. */
    private static void cau350(Facts facts) {
        for (Finding first : facts.findings.of(Component.SHOE_LINING)) {
            if ((first.condition() == Condition.SOAKED || first.condition() == Condition.CONTAMINATED)
                    && (first.agent() == Agent.GREASE || first.agent() == Agent.GEAR_OIL)) {
                for (Finding second : facts.findings.of(Component.HUB_SEAL)) {
                    if (second.sound()) {
                        for (RecentWork work : facts.recentWork.all()) {
                            if (work.item() == ScopeItem.SHOE_SET || work.item() == ScopeItem.PAD_SET) {
                                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_SOILED_IN_WORK)) {
                                    if (candidate.place().covers(first.place())
                                            && second.place().speaksForAllOf(candidate.place())
                                            && candidate.place().meets(work.place())) {
                                        facts.proofs.draw(new Proof(
                                                candidate.code(),
                                                candidate.place(),
                                                because("CAU-350", first, second, work)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** A pad is greasy and the pads were worked on lately. */
    private static void cau351(Facts facts) {
        for (Finding first : facts.findings.of(Component.PAD)) {
            if ((first.condition() == Condition.SOAKED || first.condition() == Condition.CONTAMINATED)
                    && (first.agent() == Agent.GREASE || first.agent() == Agent.GEAR_OIL)) {
                for (RecentWork work : facts.recentWork.all()) {
                    if (work.item() == ScopeItem.SHOE_SET || work.item() == ScopeItem.PAD_SET) {
                        for (Candidate candidate : facts.candidates.of(CauseCode.LINING_SOILED_IN_WORK)) {
                            if (candidate.place().covers(first.place())
                                    && candidate.place().meets(work.place())) {
                                facts.proofs.draw(new Proof(
                                        candidate.code(), candidate.place(), because("CAU-351", first, work)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A lining is clean. */
    private static void cau352(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_SOILED_IN_WORK)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-352", finding)));
                    }
                }
            }
        }
    }

    /** A pad is clean. */
    private static void cau353(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_SOILED_IN_WORK)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-353", finding)));
                    }
                }
            }
        }
    }

    /** A lining has a hard shiny skin. */
    private static void cau360(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.condition() == Condition.GLAZED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_GLAZED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-360", finding)));
                    }
                }
            }
        }
    }

    /** A pad has a hard shiny skin. */
    private static void cau361(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.condition() == Condition.GLAZED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_GLAZED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-361", finding)));
                    }
                }
            }
        }
    }

    /** A lining is sound, so it is not glazed. */
    private static void cau362(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.LINING_LOOK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_GLAZED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-362", finding)));
                    }
                }
            }
        }
    }

    /** A pad is sound, so it is not glazed. */
    private static void cau363(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_GLAZED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-363", finding)));
                    }
                }
            }
        }
    }

    /** A lining is worn to its limit. */
    private static void cau370(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.condition() == Condition.WORN
                    && any(
                            facts.axles.all(),
                            axle -> Objects.equals(
                                            axle.number(), finding.place().axle())
                                    && axle.isDrum())) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_WORN_OUT)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-370", finding)));
                    }
                }
            }
        }
    }

    /** A pad is worn to its limit. */
    private static void cau371(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.condition() == Condition.WORN) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_WORN_OUT)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-371", finding)));
                    }
                }
            }
        }
    }

    /** A lining is measured too thin by its own limit. */
    private static void cau372(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.belowOwnLimit(MeasuredQuantity.LINING_THICKNESS)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_WORN_OUT)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-372", finding)));
                    }
                }
            }
        }
    }

    /** A lining is measured too thin by the limit of the workshop. */
    private static void cau373(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.LINING_WORN_OUT)) {
                if (candidate.place().covers(finding.place())) {
                    for (Threshold limit : facts.thresholds.of(ThresholdCode.LINING_THICKNESS_LEAST)) {
                        if (finding.below(MeasuredQuantity.LINING_THICKNESS, limit.value())) {
                            facts.proofs.draw(
                                    new Proof(candidate.code(), candidate.place(), because("CAU-373", finding, limit)));
                        }
                    }
                }
            }
        }
    }

    /** A pad is measured too thin by its own limit. */
    private static void cau374(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.belowOwnLimit(MeasuredQuantity.PAD_THICKNESS)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_WORN_OUT)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-374", finding)));
                    }
                }
            }
        }
    }

    /** A pad is measured too thin by the limit of the workshop. */
    private static void cau375(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.LINING_WORN_OUT)) {
                if (candidate.place().covers(finding.place())) {
                    for (Threshold limit : facts.thresholds.of(ThresholdCode.PAD_THICKNESS_LEAST)) {
                        if (finding.below(MeasuredQuantity.PAD_THICKNESS, limit.value())) {
                            facts.proofs.draw(
                                    new Proof(candidate.code(), candidate.place(), because("CAU-375", finding, limit)));
                        }
                    }
                }
            }
        }
    }

    /** A lining is sound, so it is not worn out. */
    private static void cau376(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.LINING_LOOK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_WORN_OUT)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-376", finding)));
                    }
                }
            }
        }
    }

    /** A pad is sound, so it is not worn out. */
    private static void cau377(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_WORN_OUT)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-377", finding)));
                    }
                }
            }
        }
    }

    /** A lining is loose, lifted or cracked. */
    private static void cau380(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if ((finding.condition() == Condition.DETACHED || finding.condition() == Condition.CRACKED)
                    && any(
                            facts.axles.all(),
                            axle -> Objects.equals(
                                            axle.number(), finding.place().axle())
                                    && axle.isDrum())) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_DETACHED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-380", finding)));
                    }
                }
            }
        }
    }

    /** The lining of a pad is loose, lifted or cracked. */
    private static void cau381(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.condition() == Condition.DETACHED || finding.condition() == Condition.CRACKED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_DETACHED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-381", finding)));
                    }
                }
            }
        }
    }

    /** A lining is sound, so it has not come loose. */
    private static void cau382(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.sound()
                    && (finding.check() == null
                            || (finding.check() == CheckCode.LOOK_BEFORE_TOUCHING
                                    || finding.check() == CheckCode.LINING_LOOK))) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_DETACHED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-382", finding)));
                    }
                }
            }
        }
    }

    /** A pad is sound, so its lining has not come loose. */
    private static void cau383(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LINING_DETACHED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-383", finding)));
                    }
                }
            }
        }
    }

    /** The linings of an axle bear different codes. */
    private static void cau390(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.condition() == Condition.WRONG_PART) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LININGS_UNLIKE)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-390", finding)));
                    }
                }
            }
        }
    }

    /** The pads of an axle bear different codes. */
    private static void cau391(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.condition() == Condition.WRONG_PART) {
                for (Candidate candidate : facts.candidates.of(CauseCode.LININGS_UNLIKE)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-391", finding)));
                    }
                }
            }
        }
    }

    /** A second run says the same, so no film of rust was behind it. */
    private static void cau400(Facts facts) {
        for (SymptomObservable repeated : facts.symptomObservables.of(SymptomCode.TEST_NOT_REPEATABLE)) {
            if (none(
                            facts.symptoms.of(SymptomCode.TEST_NOT_REPEATABLE),
                            symptom -> symptom.place().equals(repeated.place()))
                    && none(
                            facts.symptoms.all(),
                            symptom -> (symptom.code() == SymptomCode.SWING_CLEARS
                                            || symptom.code() == SymptomCode.FORCE_RECOVERS_WARM)
                                    && symptom.place().sameAxle(repeated.place()))) {
                for (Candidate candidate : facts.candidates.of(CauseCode.RUST_FILM)) {
                    if (candidate.place().equals(repeated.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-400", repeated)));
                    }
                }
            }
        }
    }

    /** A shoe sits in the wrong place. */
    private static void cau410(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.condition() == Condition.MISFITTED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SHOES_MISPLACED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-410", finding)));
                    }
                }
            }
        }
    }

    /** A pad sits in the wrong place. */
    private static void cau411(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.condition() == Condition.MISFITTED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SHOES_MISPLACED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-411", finding)));
                    }
                }
            }
        }
    }

    /** The linings of a wheel are sound and in their places. */
    private static void cau412(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.sound()
                    && (finding.check() == null
                            || (finding.check() == CheckCode.LOOK_BEFORE_TOUCHING
                                    || finding.check() == CheckCode.LINING_LOOK))) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SHOES_MISPLACED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-412", finding)));
                    }
                }
            }
        }
    }

    /** The pads of a wheel are sound and in their places. */
    private static void cau413(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SHOES_MISPLACED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-413", finding)));
                    }
                }
            }
        }
    }

    /** New linings touch their drum at the centre or the ends only. */
    private static void cau395(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SHOE_LINING)) {
            if (finding.condition() == Condition.PART_CONTACT
                    && any(
                            facts.axles.all(),
                            axle -> Objects.equals(
                                            axle.number(), finding.place().axle())
                                    && axle.isDrum())) {
                for (RecentWork work : facts.recentWork.all()) {
                    if (work.item() == ScopeItem.SHOE_SET || work.item() == ScopeItem.PAD_SET) {
                        for (Candidate candidate : facts.candidates.of(CauseCode.LINING_NOT_BEDDED)) {
                            if (candidate.place().covers(finding.place())
                                    && candidate.place().meets(work.place())) {
                                facts.proofs.draw(new Proof(
                                        candidate.code(), candidate.place(), because("CAU-395", finding, work)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** New pads touch their disc in spots only. */
    private static void cau396(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PAD)) {
            if (finding.condition() == Condition.PART_CONTACT) {
                for (RecentWork work : facts.recentWork.all()) {
                    if (work.item() == ScopeItem.SHOE_SET || work.item() == ScopeItem.PAD_SET) {
                        for (Candidate candidate : facts.candidates.of(CauseCode.LINING_NOT_BEDDED)) {
                            if (candidate.place().covers(finding.place())
                                    && candidate.place().meets(work.place())) {
                                facts.proofs.draw(new Proof(
                                        candidate.code(), candidate.place(), because("CAU-396", finding, work)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A vehicle that had stood for long brakes better once its brakes are warm. */
    private static void cau402(Facts facts) {
        for (Symptom recovered : facts.symptoms.of(SymptomCode.FORCE_RECOVERS_WARM)) {
            for (ReportedCondition reported : facts.reportedConditions.of(TestCondition.STOOD_FOR_LONG)) {
                if (reported.brake() == BrakeSystem.SERVICE) {
                    for (Candidate candidate : facts.candidates.of(CauseCode.RUST_FILM)) {
                        if (candidate.place().equals(reported.place())
                                && candidate.place().covers(recovered.place())) {
                            facts.proofs.draw(new Proof(
                                    candidate.code(), candidate.place(), because("CAU-402", recovered, reported)));
                        }
                    }
                }
            }
        }
    }

    /** An axle reads differently in a second run and its swing or scatter is gone. */
    private static void cau403(Facts facts) {
        for (Symptom cleared : facts.symptoms.of(SymptomCode.SWING_CLEARS)) {
            if (none(
                            facts.symptoms.all(),
                            symptom -> (symptom.code() == SymptomCode.FORCE_SWING_ONE_WHEEL
                                            || symptom.code() == SymptomCode.FORCE_SWING_AXLE
                                            || symptom.code() == SymptomCode.IRREGULAR_FORCE)
                                    && symptom.place().sameAxle(cleared.place()))
                    && none(
                            facts.unsteadyAxles.all(),
                            unsteady -> unsteady.place().equals(cleared.place().axlePlace()))) {
                for (Symptom differs : facts.symptoms.of(SymptomCode.TEST_NOT_REPEATABLE)) {
                    if (differs.place().equals(cleared.place().axlePlace())) {
                        for (Candidate candidate : facts.candidates.of(CauseCode.RUST_FILM)) {
                            if (candidate.place().equals(differs.place())) {
                                facts.proofs.draw(new Proof(
                                        candidate.code(), candidate.place(), because("CAU-403", cleared, differs)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** The swing or scatter of a wheel is gone in a second run and its force has come up. */
    private static void cau404(Facts facts) {
        for (Symptom cleared : facts.symptoms.of(SymptomCode.SWING_CLEARS)) {
            if (none(
                            facts.symptoms.all(),
                            symptom -> (symptom.code() == SymptomCode.FORCE_SWING_ONE_WHEEL
                                            || symptom.code() == SymptomCode.FORCE_SWING_AXLE
                                            || symptom.code() == SymptomCode.IRREGULAR_FORCE)
                                    && symptom.place().sameAxle(cleared.place()))
                    && none(
                            facts.unsteadyAxles.all(),
                            unsteady -> unsteady.place().equals(cleared.place().axlePlace()))) {
                for (Symptom recovered : facts.symptoms.of(SymptomCode.FORCE_RECOVERS_WARM)) {
                    if (recovered.place().equals(cleared.place())) {
                        for (Candidate candidate : facts.candidates.of(CauseCode.RUST_FILM)) {
                            if (candidate.place().equals(cleared.place().axlePlace())) {
                                facts.proofs.draw(new Proof(
                                        candidate.code(), candidate.place(), because("CAU-404", cleared, recovered)));
                            }
                        }
                    }
                }
            }
        }
    }
}
