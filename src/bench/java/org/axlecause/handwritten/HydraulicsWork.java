package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.DueLine;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.StepProposal;

/** Steps on pipes, hoses and fluid. */
final class HydraulicsWork {

    private HydraulicsWork() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        wrk401(facts);
        wrk402(facts);
        wrk403(facts);
        wrk404(facts);
        wrk405(facts);
        wrk406(facts);
        wrk407(facts);
        wrk408(facts);
        wrk409(facts);
        wrk410(facts);
        wrk411(facts);
        wrk412(facts);
        wrk413(facts);
        wrk414(facts);
        wrk415(facts);
        wrk416(facts);
        wrk417(facts);
    }

    /** A brake pipe is made. */
    private static void wrk401(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.BRAKE_PIPE)) {
            if (due.action() == ScopeAction.FABRICATE) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.FABRICATE_BRAKE_PIPE, due.place(), due.line(), because("WRK-401", due)));
            }
        }
    }

    /** A pipe nut is renewed. */
    private static void wrk402(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.PIPE_NUT)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.RENEW_PIPE_NUT, due.place(), due.line(), because("WRK-402", due)));
            }
        }
    }

    /** A flexible hose is renewed. */
    private static void wrk403(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.FLEXIBLE_HOSE)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.RENEW_FLEXIBLE_HOSE, due.place(), due.line(), because("WRK-403", due)));
            }
        }
    }

    /** A bleed nipple is renewed. */
    private static void wrk404(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.BLEED_NIPPLE)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.RENEW_BLEED_NIPPLE, due.place(), due.line(), because("WRK-404", due)));
            }
        }
    }

    /** A circuit is bled. */
    private static void wrk405(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.BRAKE_FLUID)) {
            if (due.action() == ScopeAction.BLEED) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.BLEED_CIRCUIT, due.place(), due.line(), because("WRK-405", due)));
            }
        }
    }

    /** All brake fluid is renewed. */
    private static void wrk406(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.BRAKE_FLUID)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.FLUSH_FLUID, due.place(), due.line(), because("WRK-406", due)));
            }
        }
    }

    /** A modulator is bled. */
    private static void wrk407(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.ANTILOCK_MODULATOR)) {
            if (due.action() == ScopeAction.BLEED) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.CYCLE_MODULATOR, due.place(), due.line(), because("WRK-407", due)));
            }
        }
    }

    /** A master cylinder is renewed. */
    private static void wrk408(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.MASTER_CYLINDER)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.RENEW_MASTER_CYLINDER, due.place(), due.line(), because("WRK-408", due)));
            }
        }
    }

    /** A servo is renewed. */
    private static void wrk409(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.SERVO)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.RENEW_SERVO, due.place(), due.line(), because("WRK-409", due)));
            }
        }
    }

    /** A load-sensing valve is set. */
    private static void wrk410(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.LOAD_SENSING_VALVE)) {
            if (due.action() == ScopeAction.ADJUST) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.SET_LOAD_SENSING_VALVE, due.place(), due.line(), because("WRK-410", due)));
            }
        }
    }

    /** A load-sensing valve is renewed. */
    private static void wrk411(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.LOAD_SENSING_VALVE)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.RENEW_LOAD_SENSING_VALVE, due.place(), due.line(), because("WRK-411", due)));
            }
        }
    }

    /** A modulator is renewed. */
    private static void wrk412(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.ANTILOCK_MODULATOR)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.RENEW_MODULATOR, due.place(), due.line(), because("WRK-412", due)));
            }
        }
    }

    /** Every rubber part is renewed. */
    private static void wrk413(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.HYDRAULIC_SYSTEM)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.RENEW_RUBBER_PARTS, due.place(), due.line(), because("WRK-413", due)));
            }
        }
    }

    /** A port and its nipple are cleaned. */
    private static void wrk414(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.BLEED_NIPPLE)) {
            if (due.action() == ScopeAction.CLEAN) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.RENEW_BLEED_NIPPLE, due.place(), due.line(), because("WRK-414", due)));
            }
        }
    }

    /** The free play of a master cylinder is set. */
    private static void wrk415(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.MASTER_CYLINDER)) {
            if (due.action() == ScopeAction.ADJUST) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.SET_MASTER_CYLINDER, due.place(), due.line(), because("WRK-415", due)));
            }
        }
    }

    /** A pedal linkage is freed. */
    private static void wrk416(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.PEDAL_LINKAGE)) {
            if (due.action() == ScopeAction.FREE) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.FREE_PEDAL_LINKAGE, due.place(), due.line(), because("WRK-416", due)));
            }
        }
    }

    /** An anti-lock sensor is renewed. */
    private static void wrk417(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.ANTILOCK_SENSOR)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.RENEW_ANTILOCK_SENSOR, due.place(), due.line(), because("WRK-417", due)));
            }
        }
    }
}
