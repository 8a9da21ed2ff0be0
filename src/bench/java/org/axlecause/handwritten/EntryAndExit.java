package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.DueLine;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.SettledCause;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.StepProposal;
import org.axlecause.facts.WorkedWheel;

/**
 * What every job on the brakes begins and ends with: data, a secured vehicle, dust under control; wheels on, a firm
 * pedal, a dry look, a slow check, the rollers. No step that runs or loads the brake while a leak stands that nothing
 * mends.
 */
final class EntryAndExit {

    private EntryAndExit() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        wrk101(facts);
        wrk102(facts);
        wrk105(facts);
        wrk106(facts);
        wrk107(facts);
        wrk108(facts);
        wrk114(facts);
        wrk103(facts);
        wrk104(facts);
        wrk109(facts);
        wrk110(facts);
        wrk111(facts);
        wrk112(facts);
        wrk113(facts);
    }

    /** There is work on the brakes. */
    private static void wrk101(Facts facts) {
        for (DueLine due : facts.dueLines.all()) {
            if (due.item() != ScopeItem.ROLLER_TEST) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.READ_VEHICLE_DATA, Place.VEHICLE, due.line(), because("WRK-101", due)));
            }
        }
    }

    /** There is work on the brakes under the vehicle. */
    private static void wrk102(Facts facts) {
        for (DueLine due : facts.dueLines.all()) {
            if (due.item() != ScopeItem.ROLLER_TEST) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.SECURE_AND_LIFT, Place.VEHICLE, due.line(), because("WRK-102", due)));
            }
        }
    }

    /** A wheel brake is taken apart. */
    private static void wrk103(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            facts.stepProposals.draw(
                    new StepProposal(StepCode.CONTROL_DUST, Place.VEHICLE, wheel.line(), because("WRK-103", wheel)));
        }
    }

    /** An axle with an electric parking brake is taken apart. */
    private static void wrk104(Facts facts) {
        for (WorkedWheel wheel : facts.workedWheels.all()) {
            if (any(
                    facts.axleStates.all(),
                    axle -> axle.place().sameAxle(wheel.place())
                            && axle.axle().parkingBrake() == ParkingLayout.ELECTRIC_ON_CALLIPER)) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.SERVICE_MODE, wheel.place().axlePlace(), wheel.line(), because("WRK-104", wheel)));
            }
        }
    }

    /** There is work on the brakes to finish. */
    private static void wrk105(Facts facts) {
        for (DueLine due : facts.dueLines.all()) {
            if (due.item() != ScopeItem.ROLLER_TEST) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.REFIT_WHEELS, Place.VEHICLE, due.line(), because("WRK-105", due)));
            }
        }
    }

    /** There is work on the brakes to finish before the vehicle moves. */
    private static void wrk106(Facts facts) {
        for (DueLine due : facts.dueLines.all()) {
            if (due.item() != ScopeItem.ROLLER_TEST) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.PUMP_PEDAL, Place.VEHICLE, due.line(), because("WRK-106", due)));
            }
        }
    }

    /** A circuit was opened or bled. */
    private static void wrk107(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.BRAKE_FLUID)) {
            if (due.action() == ScopeAction.BLEED) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.LEAK_CHECK, Place.VEHICLE, due.line(), because("WRK-107", due)));
            }
        }
    }

    /** A hub seal was renewed. */
    private static void wrk108(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.HUB_SEAL)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.LEAK_CHECK, Place.VEHICLE, due.line(), because("WRK-108", due)));
            }
        }
    }

    /** Work on the brakes may have changed their force. */
    private static void wrk109(Facts facts) {
        for (DueLine due : facts.dueLines.all()) {
            if (due.isChangingForce() && due.item() != ScopeItem.ROLLER_TEST && facts.testsBarred.isEmpty()) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.SLOW_CHECK, Place.VEHICLE, due.line(), because("WRK-109", due)));
            }
        }
    }

    /** Friction parts are new. */
    private static void wrk110(Facts facts) {
        for (DueLine due : facts.dueLines.all()) {
            if (due.isExchange()
                    && (due.item() == ScopeItem.SHOE_SET
                            || due.item() == ScopeItem.PAD_SET
                            || due.item() == ScopeItem.DISC
                            || due.item() == ScopeItem.DRUM
                            || due.item() == ScopeItem.PARKING_SHOE_SET)
                    && facts.testsBarred.isEmpty()) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.BED_IN, due.place().axlePlace(), due.line(), because("WRK-110", due)));
            }
        }
    }

    /** The repair is to be proven on the rollers. */
    private static void wrk111(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.ROLLER_TEST)) {
            if (due.action() == ScopeAction.MEASURE
                    && any(
                            facts.dueLines.all(),
                            line -> line.isChangingForce() && line.necessity() == Necessity.REQUIRED)
                    && facts.testsBarred.isEmpty()) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.FINAL_ROLLER_TEST, Place.VEHICLE, due.line(), because("WRK-111", due)));
            }
        }
    }

    /** The test is to be repeated and nothing is to be repaired. */
    private static void wrk112(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.ROLLER_TEST)) {
            if (due.action() == ScopeAction.MEASURE
                    && none(
                            facts.dueLines.all(),
                            line -> line.isChangingForce() && line.necessity() == Necessity.REQUIRED)
                    && facts.testsBarred.isEmpty()) {
                facts.stepProposals.draw(new StepProposal(
                        StepCode.REPEAT_ROLLER_TEST, Place.VEHICLE, due.line(), because("WRK-112", due)));
            }
        }
    }

    /** Linings are confirmed not to be bedded in. */
    private static void wrk113(Facts facts) {
        for (SettledCause cause : facts.settledCauses.of(CauseCode.LINING_NOT_BEDDED)) {
            if (cause.standing() == CauseStanding.CONFIRMED && facts.testsBarred.isEmpty()) {
                for (DueLine due : facts.dueLines.of(ScopeItem.ROLLER_TEST)) {
                    if (due.action() == ScopeAction.MEASURE) {
                        facts.stepProposals.draw(new StepProposal(
                                StepCode.BED_IN, cause.place().axlePlace(), due.line(), because("WRK-113", cause)));
                    }
                }
            }
        }
    }

    /** All brake fluid was renewed. */
    private static void wrk114(Facts facts) {
        for (DueLine due : facts.dueLines.of(ScopeItem.BRAKE_FLUID)) {
            if (due.action() == ScopeAction.RENEW) {
                facts.stepProposals.draw(
                        new StepProposal(StepCode.LEAK_CHECK, Place.VEHICLE, due.line(), because("WRK-114", due)));
            }
        }
    }
}
