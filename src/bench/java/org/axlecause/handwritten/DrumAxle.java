package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.DueLine;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.StepProposal;
import org.axlecause.facts.WorkedWheel;

/**
 * Steps on a drum axle. One side is stripped and built again before the other, so that one side stays as the pattern.
 * Their order and what proves each of them stand in the catalogue of steps.
 */
final class DrumAxle {

    private DrumAxle() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        wrk203(facts);
        wrk211(facts);
        wrk212(facts);
        wrk213(facts);
        wrk214(facts);
        wrk215(facts);
        wrk216(facts);
        wrk217(facts);
        wrk219(facts);
        wrk220(facts);
        wrk221(facts);
        wrk222(facts);
        wrk223(facts);
        wrk224(facts);
        wrk201(facts);
        wrk202(facts);
        wrk204(facts);
        wrk205(facts);
        wrk206(facts);
        wrk207(facts);
        wrk208(facts);
        wrk209(facts);
        wrk218(facts);
    }

    /** A drum brake is taken apart. */
    private static void wrk201(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            if (wheel.drum()) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.REMOVE_DRUM, wheel.place().axlePlace(), wheel.line(), because("WRK-201", wheel)));
            }
        }
    }

    /** A wheel brake is open. */
    private static void wrk202(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            facts.stepProposals.draw(new StepProposal(
                    StepCode.LOOK_OVER_AXLE, wheel.place().axlePlace(), wheel.line(), because("WRK-202", wheel)));
        }
    }

    /** Parts are exchanged on an axle. */
    private static void wrk203(Facts facts) {
        for (DueLine due : facts.dueLines.all()) {
            if (due.isExchange() && due.item() != ScopeItem.BRAKE_FLUID) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.MATCH_PARTS, due.place().axlePlace(), due.line(), because("WRK-203", due)));
            }
        }
    }

    /** The shoes of a wheel come off. */
    private static void wrk204(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            if (wheel.drum() && wheel.line().isTakingShoesOff()) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.STRIP_SHOES, wheel.place(), wheel.line(), because("WRK-204", wheel)));
            }
        }
    }

    /** The back plate of a wheel is bare. */
    private static void wrk205(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            if (wheel.drum() && wheel.line().isTakingShoesOff()) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.CLEAN_BACK_PLATE, wheel.place(), wheel.line(), because("WRK-205", wheel)));
            }
        }
    }

    /** New shoes go on a wheel. */
    private static void wrk206(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            if (wheel.drum()
                    && wheel.line().action() == ScopeAction.RENEW
                    && wheel.line().item() == ScopeItem.SHOE_SET) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.FIT_SHOES, wheel.place(), wheel.line(), because("WRK-206", wheel)));
            }
        }
    }

    /** The left drum of an opened axle goes on again. */
    private static void wrk207(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            if (wheel.drum()) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.FIT_DRUM, wheel.place().left(), wheel.line(), because("WRK-207", wheel)));
            }
        }
    }

    /** The right drum of an opened axle goes on again. */
    private static void wrk208(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            if (wheel.drum()) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.FIT_DRUM, wheel.place().right(), wheel.line(), because("WRK-208", wheel)));
            }
        }
    }

    /** A wheel cylinder is renewed. */
    private static void wrk211(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.WHEEL_CYLINDER)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.RENEW_WHEEL_CYLINDER, due.place(), due.line(), because("WRK-211", due)));
            }
        }
    }

    /** A hub seal is renewed. */
    private static void wrk212(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.HUB_SEAL)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.RENEW_HUB_SEAL, due.place(), due.line(), because("WRK-212", due)));
            }
        }
    }

    /** A hub bearing is measured. */
    private static void wrk213(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.HUB_BEARING)) {
            if (due.action() == ScopeAction.MEASURE) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.CHECK_HUB_BEARING, due.place(), due.line(), because("WRK-213", due)));
            }
        }
    }

    /** A hub bearing is renewed. */
    private static void wrk214(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.HUB_BEARING)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.RENEW_HUB_BEARING, due.place(), due.line(), because("WRK-214", due)));
            }
        }
    }

    /** An adjuster is renewed. */
    private static void wrk215(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.ADJUSTER)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.RENEW_ADJUSTER, due.place(), due.line(), because("WRK-215", due)));
            }
        }
    }

    /** An adjuster is freed. */
    private static void wrk216(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.ADJUSTER)) {
            if (due.action() == ScopeAction.FREE) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.FREE_ADJUSTER, due.place(), due.line(), because("WRK-216", due)));
            }
        }
    }

    /** A back plate is renewed. */
    private static void wrk217(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.BACK_PLATE)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.RENEW_BACK_PLATE, due.place(), due.line(), because("WRK-217", due)));
            }
        }
    }

    /** Linings are dressed. */
    private static void wrk219(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.SHOE_SET)) {
            if (due.action() == ScopeAction.CLEAN) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.DRESS_LININGS, due.place(), due.line(), because("WRK-219", due)));
            }
        }
    }

    /** Drums are cleaned. */
    private static void wrk220(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.DRUM)) {
            if (due.action() == ScopeAction.CLEAN) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.DEGREASE_DRUM, due.place(), due.line(), because("WRK-220", due)));
            }
        }
    }

    /** Drums are measured. */
    private static void wrk221(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.DRUM)) {
            if (due.action() == ScopeAction.MEASURE) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.MEASURE_DRUM, due.place(), due.line(), because("WRK-221", due)));
            }
        }
    }

    /** Drums are machined. */
    private static void wrk222(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.DRUM)) {
            if (due.action() == ScopeAction.MACHINE) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.MACHINE_DRUM, due.place(), due.line(), because("WRK-222", due)));
            }
        }
    }

    /** Drums are renewed. */
    private static void wrk223(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.DRUM)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.RENEW_DRUM, due.place(), due.line(), because("WRK-223", due)));
            }
        }
    }

    /** Shoes are set. */
    private static void wrk224(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.SHOE_SET)) {
            if (due.action() == ScopeAction.ADJUST) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.SET_SHOES, due.place(), due.line(), because("WRK-224", due)));
            }
        }
    }

    /** The old shoes of a wheel go on again. */
    private static void wrk209(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            if (wheel.drum()
                    && wheel.line().isTakingShoesOff()
                    && none(
                            facts.dueLines.of(ScopeItem.SHOE_SET),
                            line -> line.action() == ScopeAction.RENEW
                                    && line.necessity() == Necessity.REQUIRED
                                    && line.place().sameAxle(wheel.place()))) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.REFIT_SHOES, wheel.place(), wheel.line(), because("WRK-209", wheel)));
            }
        }
    }

    /** Springs, pins and clips of a wheel are renewed. */
    private static void wrk218(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            if (wheel.line().action() == ScopeAction.RENEW && wheel.line().item() == ScopeItem.HARDWARE_KIT) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.FIT_HARDWARE_KIT, wheel.place(), wheel.line(), because("WRK-218", wheel)));
            }
        }
    }
}
