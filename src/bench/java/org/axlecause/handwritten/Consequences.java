package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.DueLine;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.VehicleLayout;

/**
 * What work brings with it: opened hydraulics are bled, shoes are set and then the parking brake, what was taken
 * apart is measured, and the rollers have the last word.
 */
final class Consequences {

    private Consequences() {}

    /** Draws the lines that a due line brings with it. */
    static void conclude(Facts facts, DueLine line) {
        sco301(facts, line);
        sco302(facts, line);
        sco303(facts, line);
        sco304(facts, line);
        sco305(facts, line);
        sco306(facts, line);
        sco307(facts, line);
        sco308(facts, line);
        sco309(facts, line);
        sco310(facts, line);
        sco311(facts, line);
        sco312(facts, line);
        sco313(facts, line);
        sco314(facts, line);
        sco315(facts, line);
        sco316(facts, line);
        sco317(facts, line);
    }

    /** Work opens the hydraulic system. */
    private static void sco301(Facts facts, DueLine due) {
        if (due.isOpeningHydraulics()) {
            for (VehicleLayout vehicle : facts.vehicleLayouts.all()) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.BLEED,
                        ScopeItem.BRAKE_FLUID,
                        vehicle.circuitOf(due.place()),
                        vehicle.circuitExtentOf(due.place()),
                        due.necessity(),
                        null,
                        because("SCO-301", due)));
            }
        }
    }

    /** Work is done on the shoes of a drum axle. */
    private static void sco302(Facts facts, DueLine due) {
        if (due.isWorkOnShoes()
                && any(
                        facts.axleStates.all(),
                        axle -> axle.axle().isDrum() && axle.place().sameAxle(due.place()))) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.ADJUST,
                    ScopeItem.SHOE_SET,
                    due.place().axlePlace(),
                    ScopeExtent.AXLE,
                    due.necessity(),
                    null,
                    because("SCO-302", due)));
        }
    }

    /** Shoes are set that the parking brake works on as well. */
    private static void sco303(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.ADJUST
                && due.item() == ScopeItem.SHOE_SET
                && any(
                        facts.axleStates.all(),
                        axle -> axle.place().equals(due.place())
                                && axle.axle().parkingBrake() == ParkingLayout.CABLE_ON_SERVICE_SHOES)) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.ADJUST,
                    ScopeItem.PARKING_BRAKE,
                    Place.VEHICLE,
                    ScopeExtent.VEHICLE,
                    due.necessity(),
                    null,
                    because("SCO-303", due)));
        }
    }

    /** A parking cable, its equaliser or its actuator is worked on. */
    private static void sco304(Facts facts, DueLine due) {
        if (due.item() == ScopeItem.PARKING_CABLE
                || due.item() == ScopeItem.PARKING_EQUALISER
                || due.item() == ScopeItem.PARKING_ACTUATOR
                || due.item() == ScopeItem.PARKING_SHOE_SET) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.ADJUST,
                    ScopeItem.PARKING_BRAKE,
                    Place.VEHICLE,
                    ScopeExtent.VEHICLE,
                    due.necessity(),
                    null,
                    because("SCO-304", due)));
        }
    }

    /** Callipers or pads are changed that the parking brake works on as well. */
    private static void sco305(Facts facts, DueLine due) {
        if (due.isExchange()
                && (due.item() == ScopeItem.CALLIPER || due.item() == ScopeItem.PAD_SET || due.item() == ScopeItem.DISC)
                && any(
                        facts.axleStates.all(),
                        axle -> axle.place().sameAxle(due.place())
                                && (axle.axle().parkingBrake() == ParkingLayout.CABLE_ON_CALLIPER
                                        || axle.axle().parkingBrake() == ParkingLayout.ELECTRIC_ON_CALLIPER))) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.ADJUST,
                    ScopeItem.PARKING_BRAKE,
                    Place.VEHICLE,
                    ScopeExtent.VEHICLE,
                    due.necessity(),
                    null,
                    because("SCO-305", due)));
        }
    }

    /** Work may change the brake force. */
    private static void sco306(Facts facts, DueLine due) {
        if (due.isChangingForce()) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.MEASURE,
                    ScopeItem.ROLLER_TEST,
                    Place.VEHICLE,
                    ScopeExtent.VEHICLE,
                    due.necessity(),
                    null,
                    because("SCO-306", due)));
        }
    }

    /** Shoes of a drum axle are renewed. */
    private static void sco307(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW && due.item() == ScopeItem.SHOE_SET) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.MEASURE,
                    ScopeItem.DRUM,
                    due.place(),
                    ScopeExtent.AXLE,
                    due.necessity(),
                    null,
                    because("SCO-307", due)));
        }
    }

    /** Pads of a disc axle are renewed. */
    private static void sco308(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW && due.item() == ScopeItem.PAD_SET) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.MEASURE,
                    ScopeItem.DISC,
                    due.place(),
                    ScopeExtent.AXLE,
                    due.necessity(),
                    null,
                    because("SCO-308", due)));
        }
    }

    /** Discs are renewed. */
    private static void sco309(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW && due.item() == ScopeItem.DISC) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.RENEW,
                    ScopeItem.PAD_SET,
                    due.place(),
                    ScopeExtent.AXLE,
                    due.necessity(),
                    null,
                    because("SCO-309", due)));
        }
    }

    /** Discs are renewed on a hub. */
    private static void sco310(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW && due.item() == ScopeItem.DISC) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.CLEAN,
                    ScopeItem.HUB_FACE,
                    due.place(),
                    ScopeExtent.AXLE,
                    due.necessity(),
                    null,
                    because("SCO-310", due)));
        }
    }

    /** A calliper is renewed that leaked, stuck or cannot be bled. */
    private static void sco311(Facts facts, DueLine due) {
        if (due.isExchange()
                && due.item() == ScopeItem.CALLIPER
                && any(
                        facts.failedParts.of(ScopeItem.CALLIPER),
                        failed -> failed.place().sameAxle(due.place()))) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.RENEW,
                    ScopeItem.PAD_SET,
                    due.place().axlePlace(),
                    ScopeExtent.AXLE,
                    due.necessity(),
                    null,
                    because("SCO-311", due)));
        }
    }

    /** Slide pins are renewed or a carrier is cleaned. */
    private static void sco312(Facts facts, DueLine due) {
        if (due.item() == ScopeItem.SLIDE_PIN_KIT) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.RENEW,
                    ScopeItem.PAD_SET,
                    due.place().axlePlace(),
                    ScopeExtent.AXLE,
                    due.necessity(),
                    null,
                    because("SCO-312", due)));
        }
    }

    /** A hub seal is renewed. */
    private static void sco313(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW && due.item() == ScopeItem.HUB_SEAL) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.MEASURE,
                    ScopeItem.HUB_BEARING,
                    due.place(),
                    ScopeExtent.WHEEL,
                    due.necessity(),
                    null,
                    because("SCO-313", due)));
        }
    }

    /** A hub bearing is renewed. */
    private static void sco314(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW && due.item() == ScopeItem.HUB_BEARING) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.RENEW,
                    ScopeItem.HUB_SEAL,
                    due.place(),
                    ScopeExtent.WHEEL,
                    due.necessity(),
                    null,
                    because("SCO-314", due)));
        }
    }

    /** A calliper is renewed for its parking mechanism alone. */
    private static void sco315(Facts facts, DueLine due) {
        if (due.isExchange()
                && due.item() == ScopeItem.CALLIPER
                && none(
                        facts.failedParts.of(ScopeItem.CALLIPER),
                        failed -> failed.place().sameAxle(due.place()))) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.RENEW,
                    ScopeItem.PAD_SET,
                    due.place().axlePlace(),
                    ScopeExtent.AXLE,
                    Necessity.RECOMMENDED,
                    null,
                    because("SCO-315", due)));
        }
    }

    /** Shoes of a parking brake inside the disc are renewed. */
    private static void sco316(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW && due.item() == ScopeItem.PARKING_SHOE_SET) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.MEASURE,
                    ScopeItem.DRUM,
                    due.place(),
                    ScopeExtent.AXLE,
                    due.necessity(),
                    null,
                    because("SCO-316", due)));
        }
    }

    /** The springs of a parking brake inside the disc go with its shoes. */
    private static void sco317(Facts facts, DueLine due) {
        if (due.action() == ScopeAction.RENEW && due.item() == ScopeItem.PARKING_SHOE_SET) {
            facts.scopeProposals.draw(new ScopeProposal(
                    ScopeAction.RENEW,
                    ScopeItem.HARDWARE_KIT,
                    due.place(),
                    ScopeExtent.AXLE,
                    Necessity.RECOMMENDED,
                    null,
                    because("SCO-317", due)));
        }
    }
}
