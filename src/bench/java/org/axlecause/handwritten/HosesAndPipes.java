package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Extent;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Refutation;

/**
 * What proves and refutes faults of hoses, pipes, unions and nipples. The drag split tells a hose from what lies
 * above it: the nipple frees the wheel, the union above the hose does not.
 */
final class HosesAndPipes {

    private HosesAndPipes() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        cau130(facts);
        cau132(facts);
        cau133(facts);
        cau134(facts);
        cau140(facts);
        cau142(facts);
        cau150(facts);
        cau152(facts);
        cau160(facts);
        cau161(facts);
        cau162(facts);
        cau170(facts);
        cau172(facts);
        cau173(facts);
        cau180(facts);
        cau182(facts);
        cau190(facts);
        cau192(facts);
    }

    /** A flexible hose holds pressure or lets nothing through. */
    private static void cau130(Facts facts) {
        for (Finding finding : facts.findings.of(Component.FLEXIBLE_HOSE)) {
            if ((finding.condition() == Condition.RESTRICTED || finding.condition() == Condition.BLOCKED)
                    && (finding.check() == null
                            || finding.check() == CheckCode.OPEN_UNION_ABOVE_HOSE
                            || finding.check() == CheckCode.FLOW_PER_WHEEL
                            || finding.check() == CheckCode.HOSE_LOOK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HOSE_RESTRICTED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-130", finding)));
                    }
                }
            }
        }
    }

    /** A dragging wheel stays braked with its nipple open. */
    private static void cau132(Facts facts) {
        for (Finding finding : facts.findings.of(Component.FLEXIBLE_HOSE)) {
            if (finding.sound() && finding.check() == CheckCode.OPEN_NIPPLE_ON_DRAGGING_WHEEL) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HOSE_RESTRICTED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-132", finding)));
                    }
                }
            }
        }
    }

    /** A dragging wheel frees when the union above its hose is opened. */
    private static void cau133(Facts facts) {
        for (Finding finding : facts.findings.of(Component.FLEXIBLE_HOSE)) {
            if (finding.sound() && finding.check() == CheckCode.OPEN_UNION_ABOVE_HOSE) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HOSE_RESTRICTED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-133", finding)));
                    }
                }
            }
        }
    }

    /** The nipple of a wheel gives full flow. */
    private static void cau134(Facts facts) {
        for (Finding finding : facts.findings.of(Component.FLEXIBLE_HOSE)) {
            if (finding.sound() && finding.check() == CheckCode.FLOW_PER_WHEEL) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HOSE_RESTRICTED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-134", finding)));
                    }
                }
            }
        }
    }

    /** A flexible hose is wet or split. */
    private static void cau140(Facts facts) {
        for (Finding finding : facts.findings.of(Component.FLEXIBLE_HOSE)) {
            if (finding.condition() == Condition.LEAKING || finding.condition() == Condition.SPLIT) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HOSE_LEAKING)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-140", finding)));
                    }
                }
            }
        }
    }

    /** A flexible hose is dry and whole. */
    private static void cau142(Facts facts) {
        for (Finding finding : facts.findings.of(Component.FLEXIBLE_HOSE)) {
            if (finding.sound() && finding.check() == CheckCode.HOSE_LOOK) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HOSE_LEAKING)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-142", finding)));
                    }
                }
            }
        }
    }

    /** A flexible hose bulges with the pedal held. */
    private static void cau150(Facts facts) {
        for (Finding finding : facts.findings.of(Component.FLEXIBLE_HOSE)) {
            if (finding.condition() == Condition.BULGING) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HOSE_BULGING)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-150", finding)));
                    }
                }
            }
        }
    }

    /** A flexible hose stays firm with the pedal held. */
    private static void cau152(Facts facts) {
        for (Finding finding : facts.findings.of(Component.FLEXIBLE_HOSE)) {
            if (finding.sound() && finding.check() == CheckCode.HOSE_LOOK) {
                for (Candidate candidate : facts.candidates.of(CauseCode.HOSE_BULGING)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-152", finding)));
                    }
                }
            }
        }
    }

    /** A brake pipe leaks. */
    private static void cau160(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_PIPE)) {
            if (finding.condition() == Condition.LEAKING) {
                for (Candidate candidate : facts.candidates.of(CauseCode.BRAKE_PIPE_CORRODED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-160", finding)));
                    }
                }
            }
        }
    }

    /** A brake pipe is eaten by more than a light rust. */
    private static void cau161(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_PIPE)) {
            if ((finding.condition() == Condition.CORRODED || finding.condition() == Condition.PITTED)
                    && (finding.extent() == null
                            || finding.extent() == Extent.MODERATE
                            || finding.extent() == Extent.SEVERE)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.BRAKE_PIPE_CORRODED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-161", finding)));
                    }
                }
            }
        }
    }

    /** A brake pipe is dry and smooth over its length. */
    private static void cau162(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_PIPE)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.PIPE_LOOK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.BRAKE_PIPE_CORRODED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-162", finding)));
                    }
                }
            }
        }
    }

    /** A brake pipe is crushed or kinked. */
    private static void cau170(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_PIPE)) {
            if (finding.condition() == Condition.RESTRICTED
                    || finding.condition() == Condition.BLOCKED
                    || finding.condition() == Condition.MISFITTED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.BRAKE_PIPE_CRUSHED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-170", finding)));
                    }
                }
            }
        }
    }

    /** A brake pipe shows neither dent nor kink. */
    private static void cau172(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BRAKE_PIPE)) {
            if (finding.sound() && (finding.check() == null || finding.check() == CheckCode.PIPE_LOOK)) {
                for (Candidate candidate : facts.candidates.of(CauseCode.BRAKE_PIPE_CRUSHED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-172", finding)));
                    }
                }
            }
        }
    }

    /** The nipple of a wheel gives full flow, so its pipe is open. */
    private static void cau173(Facts facts) {
        for (Finding finding : facts.findings.of(Component.FLEXIBLE_HOSE)) {
            if (finding.sound() && finding.check() == CheckCode.FLOW_PER_WHEEL) {
                for (Candidate candidate : facts.candidates.of(CauseCode.BRAKE_PIPE_CRUSHED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-173", finding)));
                    }
                }
            }
        }
    }

    /** A pipe union is wet, crossed or of the wrong flare. */
    private static void cau180(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PIPE_UNION)) {
            if (finding.condition() == Condition.LEAKING
                    || finding.condition() == Condition.STRIPPED
                    || finding.condition() == Condition.MISFITTED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PIPE_UNION_LEAKING)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-180", finding)));
                    }
                }
            }
        }
    }

    /** A pipe union is dry. */
    private static void cau182(Facts facts) {
        for (Finding finding : facts.findings.of(Component.PIPE_UNION)) {
            if (finding.sound()) {
                for (Candidate candidate : facts.candidates.of(CauseCode.PIPE_UNION_LEAKING)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-182", finding)));
                    }
                }
            }
        }
    }

    /** A nipple gives no flow. */
    private static void cau190(Facts facts) {
        for (Finding finding : facts.findings.of(Component.BLEED_NIPPLE)) {
            if (finding.condition() == Condition.BLOCKED) {
                for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_PORT_BLOCKED)) {
                    if (candidate.place().covers(finding.place())) {
                        facts.proofs.draw(new Proof(candidate.code(), candidate.place(), because("CAU-190", finding)));
                    }
                }
            }
        }
    }

    /** The nipple of a wheel gives full flow, so its port is open. */
    private static void cau192(Facts facts) {
        for (Finding finding : facts.findings.of(Component.FLEXIBLE_HOSE)) {
            if (finding.sound() && finding.check() == CheckCode.FLOW_PER_WHEEL) {
                for (Candidate candidate : facts.candidates.of(CauseCode.WHEEL_PORT_BLOCKED)) {
                    if (finding.place().speaksForAllOf(candidate.place())) {
                        facts.refutations.draw(
                                new Refutation(candidate.code(), candidate.place(), because("CAU-192", finding)));
                    }
                }
            }
        }
    }
}
