package org.axlecause.fleet;

import java.time.LocalDate;
import java.util.List;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.VehiclePresented;

/**
 * An invented case.
 *
 * @param seed seed that it was drawn with
 * @param day day of the presentation
 * @param faults what is wrong with the vehicle
 * @param brought what that has led to and is a fault by itself
 * @param presented the presentation
 * @param tests the roller tests at arrival
 * @param technician who answers checks on this vehicle
 */
public record DrawnCase(
        long seed,
        LocalDate day,
        List<Fault> faults,
        List<Fault> brought,
        VehiclePresented presented,
        List<RollerTestRecorded> tests,
        Technician technician) {

    public DrawnCase {
        faults = List.copyOf(faults);
        brought = List.copyOf(brought);
        tests = List.copyOf(tests);
    }
}
