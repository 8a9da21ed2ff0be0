package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.DueLine;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.StepProposal;

/** Steps on the parking brake: cables and levers, then the setting, which always follows the shoes. */
final class ParkingBrakeWork {

    private ParkingBrakeWork() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        wrk501(facts);
        wrk502(facts);
        wrk503(facts);
        wrk504(facts);
        wrk505(facts);
        wrk511(facts);
        wrk512(facts);
    }

    /** A parking cable is renewed. */
    private static void wrk501(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.PARKING_CABLE)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.RENEW_PARKING_CABLE, due.place(), due.line(), because("WRK-501", due)));
            }
        }
    }

    /** A parking equaliser is freed. */
    private static void wrk502(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.PARKING_EQUALISER)) {
            if (due.action() == ScopeAction.FREE) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.FREE_PARKING_EQUALISER, due.place(), due.line(), because("WRK-502", due)));
            }
        }
    }

    /** A parking actuator is renewed. */
    private static void wrk503(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.PARKING_ACTUATOR)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.RENEW_PARKING_ACTUATOR, due.place(), due.line(), because("WRK-503", due)));
            }
        }
    }

    /** Parking shoes are renewed. */
    private static void wrk504(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.PARKING_SHOE_SET)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.RENEW_PARKING_SHOES, due.place(), due.line(), because("WRK-504", due)));
            }
        }
    }

    /** A wheel bolt or drum screw is renewed. */
    private static void wrk505(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.WHEEL_BOLT)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.RENEW_WHEEL_BOLT, due.place(), due.line(), because("WRK-505", due)));
            }
        }
    }

    /** A parking brake is set that works by cable. */
    private static void wrk511(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.PARKING_BRAKE)) {
            if (due.action() == ScopeAction.ADJUST
                    && none(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.ELECTRIC_ON_CALLIPER)) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.SET_PARKING_BRAKE, due.place(), due.line(), because("WRK-511", due)));
            }
        }
    }

    /** An electric parking brake is set. */
    private static void wrk512(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.PARKING_BRAKE)) {
            if (due.action() == ScopeAction.ADJUST
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().parkingBrake() == ParkingLayout.ELECTRIC_ON_CALLIPER)) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.CALIBRATE_PARKING_BRAKE, due.place(), due.line(), because("WRK-512", due)));
            }
        }
    }
}
