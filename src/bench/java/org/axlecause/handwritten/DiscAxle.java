package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.DueLine;
import org.axlecause.facts.Place;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.StepProposal;
import org.axlecause.facts.WorkedWheel;

/** Steps on a disc axle. */
final class DiscAxle {

    private DiscAxle() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        wrk303(facts);
        wrk311(facts);
        wrk312(facts);
        wrk313(facts);
        wrk314(facts);
        wrk315(facts);
        wrk316(facts);
        wrk320(facts);
        wrk317(facts);
        wrk318(facts);
        wrk319(facts);
        wrk301(facts);
        wrk302(facts);
        wrk304(facts);
    }

    /** A disc brake is taken apart. */
    private static void wrk301(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            if (!wheel.drum()) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.REMOVE_CALLIPER, wheel.place(), wheel.line(), because("WRK-301", wheel)));
            }
        }
    }

    /** The calliper of an opened disc brake goes on again. */
    private static void wrk302(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            if (!wheel.drum()) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.FIT_CALLIPER, wheel.place(), wheel.line(), because("WRK-302", wheel)));
            }
        }
    }

    /** Pads are renewed and pistons go back. */
    private static void wrk303(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.PAD_SET)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.LOWER_FLUID, Place.VEHICLE, due.line(), because("WRK-303", due)));
            }
        }
    }

    /** A piston makes room for new pads. */
    private static void wrk304(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            if (!wheel.drum() && wheel.line().item() == ScopeItem.PAD_SET) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.PUSH_PISTONS_BACK, wheel.place(), wheel.line(), because("WRK-304", wheel)));
            }
        }
    }

    /** Pads are renewed. */
    private static void wrk311(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.PAD_SET)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.FIT_PADS, due.place(), due.line(), because("WRK-311", due)));
            }
        }
    }

    /** Discs are renewed. */
    private static void wrk312(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.DISC)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.RENEW_DISC, due.place(), due.line(), because("WRK-312", due)));
            }
        }
    }

    /** Discs are measured. */
    private static void wrk313(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.DISC)) {
            if (due.action() == ScopeAction.MEASURE) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.MEASURE_DISC, due.place(), due.line(), because("WRK-313", due)));
            }
        }
    }

    /** Discs are cleaned. */
    private static void wrk314(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.DISC)) {
            if (due.action() == ScopeAction.CLEAN) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.DEGREASE_DISC, due.place(), due.line(), because("WRK-314", due)));
            }
        }
    }

    /** A hub face is cleaned. */
    private static void wrk315(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.HUB_FACE)) {
            if (due.action() == ScopeAction.CLEAN) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.CLEAN_HUB_FACE, due.place(), due.line(), because("WRK-315", due)));
            }
        }
    }

    /** A calliper is renewed. */
    private static void wrk316(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.CALLIPER)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.RENEW_CALLIPER, due.place(), due.line(), because("WRK-316", due)));
            }
        }
    }

    /** A calliper carrier is renewed. */
    private static void wrk320(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.CALLIPER_CARRIER)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.RENEW_CALLIPER_CARRIER, due.place(), due.line(), because("WRK-320", due)));
            }
        }
    }

    /** Slide pins are renewed. */
    private static void wrk317(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.SLIDE_PIN_KIT)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.FREE_SLIDE_PINS, due.place(), due.line(), because("WRK-317", due)));
            }
        }
    }

    /** Carriers are cleaned. */
    private static void wrk318(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.SLIDE_PIN_KIT)) {
            if (due.action() == ScopeAction.CLEAN) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.FREE_SLIDE_PINS, due.place(), due.line(), because("WRK-318", due)));
            }
        }
    }

    /** Pads are put where they belong. */
    private static void wrk319(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.PAD_SET)) {
            if (due.action() == ScopeAction.CLEAN) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.FIT_PADS, due.place(), due.line(), because("WRK-319", due)));
            }
        }
    }
}
