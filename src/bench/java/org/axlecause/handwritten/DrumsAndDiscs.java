package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

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
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/** What proves and refutes faults of drums and discs. A part without fault to the eye is not measured round. */
final class DrumsAndDiscs {

    private DrumsAndDiscs() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau420(facts);
        cau421(facts);
        cau422(facts);
        cau423(facts);
        cau430(facts);
        cau431(facts);
        cau432(facts);
        cau433(facts);
        cau440(facts);
        cau441(facts);
        cau443(facts);
        cau450(facts);
        cau452(facts);
        cau460(facts);
        cau462(facts);
        cau470(facts);
        cau472(facts);
        cau482(facts);
        cau490(facts);
        cau491(facts);
        cau492(facts);
        cau493(facts);
        cau500(facts);
        cau501(facts);
        cau502(facts);
        cau503(facts);
        cau510(facts);
        cau512(facts);
        cau520(facts);
        cau522(facts);
        cau480(facts);
    }

    /** A drum was found oval. */
    private static void cau420(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.condition() == Condition.OVAL) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_OVAL)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-420", finding)));
                    }
                }
            }
        }
    }

    /** The diameters of a drum differ too much by its own limit. */
    private static void cau421(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.aboveOwnLimit(MeasuredQuantity.DRUM_OVALITY)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_OVAL)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-421", finding)));
                    }
                }
            }
        }
    }

    /** The diameters of a drum differ too much by the limit of the workshop. */
    private static void cau422(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_OVAL)) {
                if (candidate.place().covers(finding.place())) {
                    for (Threshold limit : facts.thresholds.of(ThresholdCode.DRUM_OVALITY_MOST)) {
                        if (finding.above(MeasuredQuantity.DRUM_OVALITY, limit.value())) {
                            facts.proofs.draw(
                                    new Proof(candidate.code(), candidate.place(), because("CAU-422", finding, limit)));
                        }
                    }
                }
            }
        }
    }

    /** A drum was measured and is not oval. */
    private static void cau423(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.sound() && finding.check() == CheckCode.DRUM_MEASUREMENT) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_OVAL)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-423", finding)));
                    }
                }
            }
        }
    }

    /** A drum was found eccentric. */
    private static void cau430(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.condition() == Condition.ECCENTRIC) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_ECCENTRIC)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-430", finding)));
                    }
                }
            }
        }
    }

    /** A drum runs too far off its centre by its own limit. */
    private static void cau431(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.aboveOwnLimit(MeasuredQuantity.DRUM_ECCENTRICITY)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_ECCENTRIC)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-431", finding)));
                    }
                }
            }
        }
    }

    /** A drum runs too far off its centre by the limit of the workshop. */
    private static void cau432(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_ECCENTRIC)) {
                if (candidate.place().covers(finding.place())) {
                    for (Threshold limit : facts.thresholds.of(ThresholdCode.DRUM_ECCENTRICITY_MOST)) {
                        if (finding.above(MeasuredQuantity.DRUM_ECCENTRICITY, limit.value())) {
                            facts.proofs.draw(
                                    new Proof(candidate.code(), candidate.place(), because("CAU-432", finding, limit)));
                        }
                    }
                }
            }
        }
    }

    /** A drum was measured and is not eccentric. */
    private static void cau433(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.sound() && finding.check() == CheckCode.DRUM_MEASUREMENT) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_ECCENTRIC)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-433", finding)));
                    }
                }
            }
        }
    }

    /** A drum was found over its stamped diameter. */
    private static void cau440(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.condition() == Condition.OVERSIZE) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_OVERSIZE)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-440", finding)));
                    }
                }
            }
        }
    }

    /** A drum measures more than its stamp by its own limit. */
    private static void cau441(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.aboveOwnLimit(MeasuredQuantity.DRUM_DIAMETER)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_OVERSIZE)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-441", finding)));
                    }
                }
            }
        }
    }

    /** A drum was measured and is within its stamp. */
    private static void cau443(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.sound() && finding.check() == CheckCode.DRUM_MEASUREMENT) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_OVERSIZE)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-443", finding)));
                    }
                }
            }
        }
    }

    /** A drum is scored, bell-mouthed or has hard spots. */
    private static void cau450(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.condition() == Condition.SCORED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_SCORED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-450", finding)));
                    }
                }
            }
        }
    }

    /** A drum is smooth to the eye. */
    private static void cau452(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_SCORED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-452", finding)));
                    }
                }
            }
        }
    }

    /** A drum is cracked. */
    private static void cau460(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.condition() == Condition.CRACKED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_CRACKED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-460", finding)));
                    }
                }
            }
        }
    }

    /** A drum is whole to the eye. */
    private static void cau462(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.DRUM_MEASUREMENT)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_CRACKED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-462", finding)));
                    }
                }
            }
        }
    }

    /** A disc is cracked. */
    private static void cau470(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DISC)) {
            if (finding.condition() == Condition.CRACKED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DISC_CRACKED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-470", finding)));
                    }
                }
            }
        }
    }

    /** A disc is whole to the eye, so it is not cracked. */
    private static void cau472(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DISC)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.DISC_CHECK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DISC_CRACKED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-472", finding)));
                    }
                }
            }
        }
    }

    /** A drum is soiled by no leak past or present, and the linings were worked on lately. */
    private static void cau480(Facts facts) {
        for (Finding first : facts.findings.of(Component.DRUM)) {
            if (first.condition() == Condition.CONTAMINATED || first.condition() == Condition.SOAKED) {
                for (Finding second : facts.findings.of(Component.WHEEL_CYLINDER)) {
                    if (second.condition() == Condition.SOUND || second.condition() == Condition.DAMP) {
                        for (Finding third : facts.findings.of(Component.HUB_SEAL)) {
                            if (third.sound()) {
                                for (RecentWork work : facts.recentWork.all()) {
                                    if (work.item() == ScopeItem.SHOE_SET || work.item() == ScopeItem.PAD_SET) {
                                        for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_SOILED)) {
                                            if (candidate.place().covers(first.place())
                                                    && second.place().speaksForAllOf(candidate.place())
                                                    && third.place().speaksForAllOf(candidate.place())
                                                    && candidate.place().meets(work.place())
                                                    && none(
                                                            facts.proofs.of(CauseCode.LINING_SOAKED_EARLIER),
                                                            proof -> proof.place()
                                                                    .equals(candidate.place()))) {
                                                facts.proofs.draw(new Proof(
                                                        candidate.code(),
                                                        candidate.place(),
                                                        because("CAU-480", first, second, third, work)));
                                            }
                                        }
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** A drum is clean to the eye. */
    private static void cau482(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DRUM)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DRUM_SOILED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-482", finding)));
                    }
                }
            }
        }
    }

    /** The thickness of a disc varies too much by its own limit. */
    private static void cau490(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DISC)) {
            if (finding.aboveOwnLimit(MeasuredQuantity.DISC_THICKNESS_VARIATION)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DISC_THICKNESS_VARYING)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-490", finding)));
                    }
                }
            }
        }
    }

    /** The thickness of a disc varies too much by the limit of the workshop. */
    private static void cau491(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DISC)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.DISC_THICKNESS_VARYING)) {
                if (candidate.place().covers(finding.place())) {
                    for (Threshold limit : facts.thresholds.of(ThresholdCode.DISC_THICKNESS_VARIATION_MOST)) {
                        if (finding.above(MeasuredQuantity.DISC_THICKNESS_VARIATION, limit.value())) {
                            facts.proofs.draw(
                                    new Proof(candidate.code(), candidate.place(), because("CAU-491", finding, limit)));
                        }
                    }
                }
            }
        }
    }

    /** A disc was found of uneven thickness. */
    private static void cau492(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DISC)) {
            if (finding.condition() == Condition.OVAL) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DISC_THICKNESS_VARYING)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-492", finding)));
                    }
                }
            }
        }
    }

    /** A disc was measured and is even. */
    private static void cau493(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DISC)) {
            if (finding.sound() && finding.check() == CheckCode.DISC_CHECK) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DISC_THICKNESS_VARYING)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-493", finding)));
                    }
                }
            }
        }
    }

    /** A disc runs out too much by its own limit. */
    private static void cau500(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DISC)) {
            if (finding.aboveOwnLimit(MeasuredQuantity.DISC_RUN_OUT)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DISC_RUN_OUT)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-500", finding)));
                    }
                }
            }
        }
    }

    /** A disc runs out too much by the limit of the workshop. */
    private static void cau501(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DISC)) {
            for (Candidate candidate : facts.candidates.of(CauseCode.DISC_RUN_OUT)) {
                if (candidate.place().covers(finding.place())) {
                    for (Threshold limit : facts.thresholds.of(ThresholdCode.DISC_RUN_OUT_MOST)) {
                        if (finding.above(MeasuredQuantity.DISC_RUN_OUT, limit.value())) {
                            facts.proofs.draw(
                                    new Proof(candidate.code(), candidate.place(), because("CAU-501", finding, limit)));
                        }
                    }
                }
            }
        }
    }

    /** A disc was found running out. */
    private static void cau502(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DISC)) {
            if (finding.condition() == Condition.ECCENTRIC) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DISC_RUN_OUT)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-502", finding)));
                    }
                }
            }
        }
    }

    /** A disc was measured and runs true. */
    private static void cau503(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DISC)) {
            if (finding.sound() && finding.check() == CheckCode.DISC_CHECK) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DISC_RUN_OUT)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-503", finding)));
                    }
                }
            }
        }
    }

    /** A face of a disc is eaten by rust. */
    private static void cau510(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DISC)) {
            if (finding.condition() == Condition.CORRODED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DISC_CORRODED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-510", finding)));
                    }
                }
            }
        }
    }

    /** Both faces of a disc are bright. */
    private static void cau512(Facts facts) {
        for (Finding finding : facts.findings.of(Component.DISC)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.DISC_CORRODED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-512", finding)));
                    }
                }
            }
        }
    }

    /** A drum or disc sits on rust or dirt. */
    private static void cau520(Facts facts) {
        for (Finding finding : facts.findings.of(Component.HUB_FLANGE)) {
            if (finding.condition() == Condition.DIRTY || finding.condition() == Condition.CORRODED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SEAT_NOT_CLEAN)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-520", finding)));
                    }
                }
            }
        }
    }

    /** The hub face under a drum or disc is clean and true. */
    private static void cau522(Facts facts) {
        for (Finding finding : facts.findings.of(Component.HUB_FLANGE)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.SEAT_NOT_CLEAN)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-522", finding)));
                    }
                }
            }
        }
    }
}
