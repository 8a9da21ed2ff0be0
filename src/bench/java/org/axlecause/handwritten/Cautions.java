package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;

import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CautionProposal;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.StepProposal;
import org.axlecause.facts.VehicleLayout;

/**
 * Which cautions the work and the vehicle call for. Their words, their sources and the steps that they precede stand
 * in the catalogue of cautions.
 */
final class Cautions {

    private Cautions() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        wrk905(facts);
        wrk906(facts);
        wrk910(facts);
        wrk913(facts);
        wrk917(facts);
        wrk918(facts);
        wrk919(facts);
        wrk921(facts);
        wrk922(facts);
        wrk901(facts);
        wrk902(facts);
        wrk903(facts);
        wrk904(facts);
        wrk907(facts);
        wrk908(facts);
        wrk909(facts);
        wrk911(facts);
        wrk912(facts);
        wrk914(facts);
        wrk915(facts);
        wrk916(facts);
        wrk920(facts);
    }

    /** A wheel brake is opened. */
    private static void wrk901(Facts facts) {
        for (StepProposal step : facts.stepProposals.of(StepCode.CONTROL_DUST)) {
            facts.cautionProposals.draw(new CautionProposal(CautionCode.DUST, because("WRK-901", step)));
        }
    }

    /** A wheel brake of an old vehicle is opened. */
    private static void wrk902(Facts facts) {
        for (StepProposal step : facts.stepProposals.of(StepCode.CONTROL_DUST)) {
            for (PolicyClause clause : facts.policyClauses.of(ClauseCode.OLD_FRICTION_MATERIAL_YEAR)) {
                for (VehicleLayout vehicle : facts.vehicleLayouts.all()) {
                    if (vehicle.firstYear() != null
                            && clause.value() != null
                            && vehicle.firstYear().compareTo(clause.value()) <= 0) {
                        facts.cautionProposals.draw(new CautionProposal(
                                CautionCode.OLD_FRICTION_MATERIAL, because("WRK-902", step, vehicle, clause)));
                    }
                }
            }
        }
    }

    /** A wheel brake of a vehicle of unknown age is opened. */
    private static void wrk903(Facts facts) {
        for (StepProposal step : facts.stepProposals.of(StepCode.CONTROL_DUST)) {
            for (VehicleLayout vehicle : facts.vehicleLayouts.all()) {
                if (vehicle.firstYear() == null) {
                    facts.cautionProposals.draw(
                            new CautionProposal(CautionCode.OLD_FRICTION_MATERIAL, because("WRK-903", step, vehicle)));
                }
            }
        }
    }

    /** Brake fluid is handled. */
    private static void wrk904(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.BLEED_CIRCUIT
                    || step.step() == StepCode.FLUSH_FLUID
                    || step.step() == StepCode.LOWER_FLUID
                    || step.step() == StepCode.RENEW_WHEEL_CYLINDER
                    || step.step() == StepCode.RENEW_CALLIPER
                    || step.step() == StepCode.RENEW_FLEXIBLE_HOSE
                    || step.step() == StepCode.FABRICATE_BRAKE_PIPE
                    || step.step() == StepCode.RENEW_PIPE_NUT
                    || step.step() == StepCode.RENEW_BLEED_NIPPLE
                    || step.step() == StepCode.PUSH_PISTONS_BACK
                    || step.step() == StepCode.RENEW_MASTER_CYLINDER
                    || step.step() == StepCode.CYCLE_MODULATOR
                    || step.step() == StepCode.RENEW_MODULATOR
                    || step.step() == StepCode.RENEW_RUBBER_PARTS) {
                facts.cautionProposals.draw(new CautionProposal(CautionCode.FLUID_HANDLING, because("WRK-904", step)));
            }
        }
    }

    /** Brake fluid is filled in. */
    private static void wrk905(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.BLEED_CIRCUIT || step.step() == StepCode.FLUSH_FLUID) {
                facts.cautionProposals.draw(new CautionProposal(CautionCode.FLUID_CLASS, because("WRK-905", step)));
            }
        }
    }

    /** The vehicle is lifted. */
    private static void wrk906(Facts facts) {
        for (StepProposal step : facts.stepProposals.of(StepCode.SECURE_AND_LIFT)) {
            facts.cautionProposals.draw(new CautionProposal(CautionCode.LIFTING, because("WRK-906", step)));
        }
    }

    /** The vehicle is driven after the work. */
    private static void wrk907(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.SLOW_CHECK || step.step() == StepCode.BED_IN) {
                facts.cautionProposals.draw(new CautionProposal(CautionCode.ROAD_TEST, because("WRK-907", step)));
            }
        }
    }

    /** The vehicle goes on the rollers. */
    private static void wrk908(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.FINAL_ROLLER_TEST || step.step() == StepCode.REPEAT_ROLLER_TEST) {
                facts.cautionProposals.draw(new CautionProposal(CautionCode.ROLLER_BED, because("WRK-908", step)));
            }
        }
    }

    /** Springs under load come off or go on. */
    private static void wrk909(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.STRIP_SHOES
                    || step.step() == StepCode.FIT_SHOES
                    || step.step() == StepCode.REFIT_SHOES
                    || step.step() == StepCode.FIT_HARDWARE_KIT
                    || step.step() == StepCode.RENEW_PARKING_SHOES) {
                facts.cautionProposals.draw(new CautionProposal(CautionCode.SPRING_TENSION, because("WRK-909", step)));
            }
        }
    }

    /** A circuit is bled. */
    private static void wrk910(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.BLEED_CIRCUIT || step.step() == StepCode.FLUSH_FLUID) {
                facts.cautionProposals.draw(
                        new CautionProposal(CautionCode.PRESSURE_BLEEDING, because("WRK-910", step)));
            }
        }
    }

    /** Two people work at pedal and wheel. */
    private static void wrk911(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.BLEED_CIRCUIT
                    || step.step() == StepCode.FLUSH_FLUID
                    || step.step() == StepCode.LOOK_OVER_AXLE) {
                facts.cautionProposals.draw(
                        new CautionProposal(CautionCode.TWO_PERSON_CHECK, because("WRK-911", step)));
            }
        }
    }

    /** An electric parking brake is near the work. */
    private static void wrk912(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.SERVICE_MODE
                    || step.step() == StepCode.CALIBRATE_PARKING_BRAKE
                    || step.step() == StepCode.RENEW_PARKING_ACTUATOR) {
                facts.cautionProposals.draw(
                        new CautionProposal(CautionCode.ELECTRIC_PARKING_BRAKE, because("WRK-912", step)));
            }
        }
    }

    /** The hydraulics of a vehicle with an anti-lock system are opened. */
    private static void wrk913(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if ((step.step() == StepCode.BLEED_CIRCUIT
                            || step.step() == StepCode.FLUSH_FLUID
                            || step.step() == StepCode.CYCLE_MODULATOR
                            || step.step() == StepCode.RENEW_MODULATOR)
                    && any(
                            facts.vehicleLayouts.all(),
                            layout -> !Boolean.FALSE.equals(layout.vehicle().antilock()))) {
                facts.cautionProposals.draw(
                        new CautionProposal(CautionCode.ANTILOCK_MODULATOR, because("WRK-913", step)));
            }
        }
    }

    /** A vehicle that brakes regeneratively is worked on. */
    private static void wrk914(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if ((step.step() == StepCode.SECURE_AND_LIFT
                            || step.step() == StepCode.FINAL_ROLLER_TEST
                            || step.step() == StepCode.REPEAT_ROLLER_TEST)
                    && any(
                            facts.vehicleLayouts.all(),
                            layout -> Boolean.TRUE.equals(layout.vehicle().regenerative()))) {
                facts.cautionProposals.draw(new CautionProposal(CautionCode.HIGH_VOLTAGE, because("WRK-914", step)));
            }
        }
    }

    /** A drum or a calliper comes off. */
    private static void wrk915(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.REMOVE_DRUM || step.step() == StepCode.REMOVE_CALLIPER) {
                facts.cautionProposals.draw(new CautionProposal(CautionCode.HOT_PARTS, because("WRK-915", step)));
            }
        }
    }

    /** Parts are washed with solvent. */
    private static void wrk916(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.DEGREASE_DRUM
                    || step.step() == StepCode.DEGREASE_DISC
                    || step.step() == StepCode.RENEW_DRUM
                    || step.step() == StepCode.RENEW_DISC
                    || step.step() == StepCode.CLEAN_BACK_PLATE
                    || step.step() == StepCode.RENEW_PARKING_SHOES) {
                facts.cautionProposals.draw(new CautionProposal(CautionCode.SOLVENTS, because("WRK-916", step)));
            }
        }
    }

    /** Parts are machined or drilled. */
    private static void wrk917(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.MACHINE_DRUM
                    || step.step() == StepCode.RENEW_WHEEL_BOLT
                    || step.step() == StepCode.RENEW_BLEED_NIPPLE) {
                facts.cautionProposals.draw(new CautionProposal(CautionCode.MACHINING, because("WRK-917", step)));
            }
        }
    }

    /** There is work on the brakes. */
    private static void wrk918(Facts facts) {
        for (StepProposal step : facts.stepProposals.of(StepCode.READ_VEHICLE_DATA)) {
            facts.cautionProposals.draw(new CautionProposal(CautionCode.TORQUE_AND_LIMITS, because("WRK-918", step)));
        }
    }

    /** A vehicle with air suspension is lifted. */
    private static void wrk919(Facts facts) {
        for (StepProposal step : facts.stepProposals.of(StepCode.SECURE_AND_LIFT)) {
            if (any(
                    facts.vehicleLayouts.all(),
                    layout -> Boolean.TRUE.equals(layout.vehicle().airSuspension()))) {
                facts.cautionProposals.draw(new CautionProposal(CautionCode.AIR_SUSPENSION, because("WRK-919", step)));
            }
        }
    }

    /** There is work on the brakes. */
    private static void wrk920(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.READ_VEHICLE_DATA || step.step() == StepCode.REPEAT_ROLLER_TEST) {
                facts.cautionProposals.draw(new CautionProposal(CautionCode.LOCAL_LAW, because("WRK-920", step)));
            }
        }
    }

    /** New parts are fitted. */
    private static void wrk921(Facts facts) {
        for (StepProposal step : facts.stepProposals.of(StepCode.MATCH_PARTS)) {
            facts.cautionProposals.draw(new CautionProposal(CautionCode.UNMARKED_PARTS, because("WRK-921", step)));
        }
    }

    /** Work reaches the pedal box. */
    private static void wrk922(Facts facts) {
        for (StepProposal step : facts.stepProposals.all()) {
            if (step.step() == StepCode.RENEW_SERVO
                    || step.step() == StepCode.RENEW_MASTER_CYLINDER
                    || step.step() == StepCode.SET_MASTER_CYLINDER
                    || step.step() == StepCode.FREE_PEDAL_LINKAGE) {
                facts.cautionProposals.draw(
                        new CautionProposal(CautionCode.RESTRAINT_WIRING, because("WRK-922", step)));
            }
        }
    }
}
