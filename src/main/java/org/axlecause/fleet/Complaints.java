package org.axlecause.fleet;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import org.axlecause.facts.Axle;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;

/** What the driver of an invented vehicle notices and says. */
final class Complaints {

    private final VehicleState state;
    private final VehicleTable table;

    Complaints(VehicleState state, VehicleTable table) {
        this.state = state;
        this.table = table;
    }

    List<ComplaintCode> draw(RandomGenerator random) {
        List<ComplaintCode> said = new ArrayList<>();
        WheelReach reach = new WheelReach(state, table);
        Axle front = state.vehicle().axles().get(0);
        say("pulls", ComplaintCode.PULLS, reach.imbalance(front), said, random);
        say("hot-wheel", ComplaintCode.HOT_WHEEL, reach.most(PhysicalQuantity.DRAG), said, random);
        say("noise", ComplaintCode.NOISE, reach.most(PhysicalQuantity.ROUGHNESS), said, random);
        say(
                "pulsating-pedal",
                ComplaintCode.PULSATING_PEDAL,
                Math.max(reach.most(PhysicalQuantity.SWING_FIRST), reach.most(PhysicalQuantity.SWING_SECOND)),
                said,
                random);
        boolean late = reach.most(PhysicalQuantity.CLEARANCE_TIME) >= table.complaintFrom("long-pedal-late");
        told(late || shows(Component.PEDAL, Condition.LONG_TRAVEL), ComplaintCode.LONG_PEDAL, said, random);
        told(shows(Component.PEDAL, Condition.SPONGY), ComplaintCode.SPONGY_PEDAL, said, random);
        told(shows(Component.PEDAL, Condition.SINKING), ComplaintCode.SINKING_PEDAL, said, random);
        told(shows(Component.PEDAL, Condition.HARD), ComplaintCode.HARD_PEDAL, said, random);
        told(shows(Component.WARNING_LAMP, Condition.LIT), ComplaintCode.WARNING_LAMP, said, random);
        told(shows(Component.BRAKE_FLUID, Condition.LOW), ComplaintCode.FLUID_LOSS, said, random);
        if (reach.parkingShare() < table.complaintFrom("parking-brake-weak")
                && random.nextDouble() < table.complaintChance("parking-brake-weak")) {
            said.add(ComplaintCode.PARKING_BRAKE_WEAK);
        }
        return said;
    }

    private boolean shows(Component component, Condition condition) {
        return state.shows(component, condition);
    }

    private void told(boolean there, ComplaintCode code, List<ComplaintCode> said, RandomGenerator random) {
        if (there && random.nextDouble() < table.value("complaints.told")) {
            said.add(code);
        }
    }

    private void say(
            String complaint, ComplaintCode code, double value, List<ComplaintCode> said, RandomGenerator random) {
        if (value >= table.complaintFrom(complaint) && random.nextDouble() < table.complaintChance(complaint)) {
            said.add(code);
        }
    }
}
