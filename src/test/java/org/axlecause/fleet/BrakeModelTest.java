package org.axlecause.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.axlecause.fleet.ReferenceAxle.BAR;
import static org.axlecause.fleet.ReferenceAxle.DUO_SERVO;
import static org.axlecause.fleet.ReferenceAxle.HEALTHY;
import static org.axlecause.fleet.ReferenceAxle.HYDRAULICS;
import static org.axlecause.fleet.ReferenceAxle.SHOE;

import org.axlecause.facts.Trace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Test vectors of the forward model; the standing of each source stands beside its check. */
class BrakeModelTest {

    private static final double POUND_PER_SQUARE_INCH = 6894.757;
    private static final double POUND = 4.4482216;
    private static final double INCH = 0.0254;

    /** Worked example 12.9 of a machine-design text, program and result (read); drum brake with long shoes. */
    @Test
    void a_long_shoe_needs_the_force_and_gives_the_torque_of_the_worked_example() {
        LongShoe shoe = new LongShoe(250, 50, Math.toRadians(15), Math.toRadians(75), 200, 200);

        double force = shoe.leadingForce(1, 0.30);
        double trailing = shoe.trailingPressure(force, 0.30);

        assertThat(force).isCloseTo(5025.46, within(0.01));
        assertThat(shoe.torque(1, 0.30)).isCloseTo(686_298, within(1.0));
        assertThat(trailing).isCloseTo(0.5894, within(0.0001));
        assertThat(2 * (shoe.torque(1, 0.30) + shoe.torque(trailing, 0.30))).isCloseTo(2_181_614, within(1.0));
    }

    /** Design example of a well-known machine-design textbook (from memory; the pivot and arm are recalled, not read). */
    @Test
    void a_long_shoe_past_the_right_angle_gives_the_textbook_torques() {
        LongShoe shoe = new LongShoe(0.150, 0.032, 0, Math.toRadians(126), 0.1227, 0.212);

        double force = shoe.leadingForce(1e6, 0.32);
        double trailing = shoe.trailingPressure(force, 0.32);

        assertThat(shoe.frictionMoment(1e6, 0.32)).isCloseTo(304, withinPercentage(1));
        assertThat(shoe.normalMoment(1e6)).isCloseTo(788, withinPercentage(1));
        assertThat(force).isCloseTo(2280, withinPercentage(1));
        assertThat(shoe.torque(1e6, 0.32)).isCloseTo(366, withinPercentage(1));
        assertThat(trailing).isCloseTo(443e3, withinPercentage(1));
        assertThat(shoe.torque(trailing, 0.32)).isCloseTo(162, withinPercentage(1));
    }

    @Test
    void a_shoe_as_a_factor_is_the_same_shoe() {
        LongShoe shoe = new LongShoe(250, 50, Math.toRadians(15), Math.toRadians(75), 200, 200);

        double byTheory = shoe.torque(1, 0.30) / (shoe.leadingForce(1, 0.30) * 250);

        assertThat(shoe.factor().leading(0.30)).isCloseTo(byTheory, within(1e-12));
    }

    /** Worked through from the disc formula (derived; parts common practice). */
    @ParameterizedTest(name = "{0} cm2 at {1} m with {2}: {3} N m per bar")
    @CsvSource({"25.5, 0.12, 0.40, 24.5", "11.3, 0.11, 0.40, 9.94"})
    void a_disc_gives_twice_friction_times_force_times_radius(
            double area, double radius, double friction, double torquePerBar) {
        double torque = new FrictionPair.Disc(friction, 1).factor() * area * 1e-4 * radius * BAR;

        assertThat(torque).isCloseTo(torquePerBar, withinPercentage(0.5));
    }

    /** 60 bar on the front disc of the row above, tyre 0.30 m: 4.90 kN (derived). */
    @Test
    void a_front_disc_at_60_bar_brakes_with_4_9_kilonewtons() {
        Hydraulics free = new Hydraulics(0.03, 0.03, 0, 0, 0, 0, Double.POSITIVE_INFINITY);
        WheelBrake front = new WheelBrake(
                new FrictionPair.Disc(0.40, 1), 25.5e-4, 0.12, 0.30, free, Swing.NONE, 0, 0, 0.8, 10_000);

        assertThat(front.steadyForce(60 * BAR)).isCloseTo(4900, withinPercentage(0.5));
    }

    /** A bore of 22.22 mm needs 3.88 kN for 100 bar (read in a note on brake circuits, recomputed). */
    @Test
    void a_master_cylinder_of_22_millimetres_needs_3_88_kilonewtons_for_100_bar() {
        Pedal rod = new Pedal(1, 1, Double.POSITIVE_INFINITY, 0.02222, 1);

        assertThat(rod.forceFor(100 * BAR)).isCloseTo(3880, withinPercentage(0.1));
        assertThat(rod.pressure(rod.forceFor(100 * BAR))).isCloseTo(100 * BAR, within(1.0));
    }

    /** 360 lbf on a bore of 0.90 in: the exact area gives 566 psi; the source prints 558 (read), hence 2 %. */
    @Test
    void a_pedal_output_of_360_pounds_makes_about_560_psi() {
        Pedal rod = new Pedal(1, 1, Double.POSITIVE_INFINITY, 0.90 * INCH, 1);

        double pressure = rod.pressure(360 * POUND) / POUND_PER_SQUARE_INCH;

        assertThat(pressure).isCloseTo(566, within(0.5)).isCloseTo(558, withinPercentage(2));
    }

    /** 556 psi on two pistons of 2 in: exactly 3493 lbf; the source prints 3419 (read), hence 3 %. */
    @Test
    void two_pistons_of_two_inches_press_with_about_3450_pounds() {
        double area = Math.PI * Math.pow(2 * INCH, 2) / 4;

        double force = 2 * 556 * POUND_PER_SQUARE_INCH * area / POUND;

        assertThat(force).isCloseTo(3493, within(1.0)).isCloseTo(3419, withinPercentage(3));
    }

    /** A valve with knee 675 psi and slope 0.43: 1000 psi in, 815 psi out (read). */
    @Test
    void a_proportioning_valve_passes_its_share_above_the_knee() {
        Proportioning valve = new Proportioning(675, 0.43);

        assertThat(valve.behind(1000)).isCloseTo(814.75, within(1e-9));
        assertThat(valve.behind(600)).isEqualTo(600);
        assertThat(Proportioning.NONE.behind(1000)).isEqualTo(1000);
    }

    /** Above its run-out a servo adds nothing (common practice): 120 N at ratio 4 and gain 5. */
    @Test
    void a_pedal_without_its_servo_makes_a_fifth_of_the_pressure() {
        Pedal assisted = new Pedal(4, 5, 80 * BAR, 0.02222, 0.95);
        Pedal bare = new Pedal(4, 1, 80 * BAR, 0.02222, 0.95);

        assertThat(assisted.pressure(120)).isCloseTo(59 * BAR, withinPercentage(1));
        assertThat(bare.pressure(120)).isCloseTo(12 * BAR, withinPercentage(2.1));
        assertThat(assisted.pressure(assisted.forceFor(90 * BAR))).isCloseTo(90 * BAR, within(1.0));
    }

    /** Forces and mass of a published test print-out (read): 6.53 kN on 1083 kg is 61 %, parking 1.16 kN is 11 %. */
    @ParameterizedTest(name = "{0} N on {1} kg: {2} %")
    @CsvSource({"6530, 1083, 61.5", "1160, 1083, 10.9"})
    void the_braking_ratio_is_force_over_weight(double force, double mass, double percent) {
        assertThat(100 * BrakeModel.brakingRatio(force, mass, 9.81)).isCloseTo(percent, within(0.05));
    }

    /** 16 % of 4250 kg are 667 daN (derived; the source rounds to 680). */
    @Test
    void sixteen_percent_of_a_van_of_4250_kilograms_are_667_decanewtons() {
        assertThat(BrakeModel.brakingRatio(6670, 4250, 9.81)).isCloseTo(0.16, within(0.0001));
    }

    /** Brake factors of the reference geometries by friction (derived; geometries judgement). */
    @ParameterizedTest(name = "friction {0}: disc {1}, shoes {2} and {3}, simplex {4}, duo-servo {5} and {6}, {7}")
    @CsvSource({
        "0.08, 0.16, 0.192, 0.162, 0.355, 0.18, 0.21, 0.39",
        "0.10, 0.20, 0.246, 0.199, 0.445, 0.23, 0.29, 0.52",
        "0.12, 0.24, 0.302, 0.234, 0.537, 0.29, 0.37, 0.66",
        "0.15, 0.30, 0.392, 0.285, 0.677, 0.38, 0.52, 0.90",
        "0.20, 0.40, 0.557, 0.364, 0.921, 0.55, 0.86, 1.40",
        "0.25, 0.50, 0.746, 0.436, 1.181, 0.75, 1.33, 2.08",
        "0.30, 0.60, 0.964, 0.502, 1.465, 1.00, 2.00, 3.00",
        "0.35, 0.70, 1.217, 0.563, 1.780, 1.31, 2.98, 4.30",
        "0.38, 0.76, 1.391, 0.598, 1.989, 1.54, 3.79, 5.33",
        "0.42, 0.84, 1.653, 0.641, 2.294, 1.91, 5.25, 7.16",
        "0.45, 0.90, 1.877, 0.672, 2.549, 2.25, 6.75, 9.00"
    })
    void brake_factors_follow_the_friction(
            double friction,
            double disc,
            double leading,
            double trailing,
            double simplex,
            double primary,
            double secondary,
            double duoServo) {
        FrictionPair.DuoServo pair = new FrictionPair.DuoServo(friction, DUO_SERVO, true, true);

        assertThat(new FrictionPair.Disc(friction, 1).factor()).isCloseTo(disc, within(0.0005));
        assertThat(SHOE.leading(friction)).isCloseTo(leading, within(0.0006));
        assertThat(SHOE.trailing(friction)).isCloseTo(trailing, within(0.0006));
        assertThat(new FrictionPair.Simplex(friction, SHOE, 1, 1).factor()).isCloseTo(simplex, within(0.0011));
        assertThat(new FrictionPair.Duplex(friction, SHOE, 1, 1).factor()).isCloseTo(2 * leading, within(0.0011));
        assertThat(pair.primary()).isCloseTo(primary, within(0.006));
        assertThat(pair.secondary()).isCloseTo(secondary, within(0.006));
        assertThat(pair.factor()).isCloseTo(duoServo, within(0.006));
    }

    /** Derived: a self-locking shoe is far from any lining's friction. */
    @Test
    void a_leading_shoe_locks_only_at_a_friction_that_no_lining_has() {
        assertThat(SHOE.lockingFriction()).isCloseTo(0.952, within(0.001));
        assertThat(SHOE.leading(0.96)).isInfinite();
    }

    /** Derived. */
    @Test
    void a_duo_servo_brake_lives_by_its_primary_shoe() {
        assertThat(new FrictionPair.DuoServo(0.38, DUO_SERVO, false, true).factor())
                .isCloseTo(0.11, within(0.005));
        assertThat(new FrictionPair.DuoServo(0.38, DUO_SERVO, true, false).factor())
                .isCloseTo(5.22, within(0.005));
        assertThat(new FrictionPair.DuoServo(0.38, DUO_SERVO, true, true).factor())
                .isCloseTo(5.33, within(0.005));
    }

    /** Derived: how much of its factor each layout keeps when friction falls from 0.38. */
    @ParameterizedTest(name = "friction {0}")
    @CsvSource({"0.25, 0.658, 0.594, 0.389", "0.12, 0.316, 0.270, 0.124"})
    void self_help_makes_a_brake_sensitive_to_friction(double friction, double disc, double simplex, double duoServo) {
        assertThat(kept(new FrictionPair.Disc(0.38, 1), friction)).isCloseTo(disc, within(0.0006));
        assertThat(kept(new FrictionPair.Simplex(0.38, SHOE, 1, 1), friction)).isCloseTo(simplex, within(0.0006));
        assertThat(kept(new FrictionPair.DuoServo(0.38, DUO_SERVO, true, true), friction))
                .isCloseTo(duoServo, within(0.0006));
    }

    private static double kept(FrictionPair pair, double friction) {
        return pair.withFriction(friction).factor() / pair.factor();
    }

    /** Reference wheel at 50 bar (derived): 962 N without piston friction, 956 N with 0.3 bar of it, 19.8 N per bar. */
    @Test
    void the_reference_wheel_brakes_with_956_newtons_at_50_bar() {
        assertThat(HEALTHY.with(HYDRAULICS.withPistonFriction(0)).steadyForce(50 * BAR))
                .isCloseTo(962, within(0.5));
        assertThat(HEALTHY.steadyForce(50 * BAR)).isCloseTo(956, within(0.5));
        assertThat(HEALTHY.forcePerPressure() * BAR).isCloseTo(19.8, within(0.05));
    }

    /** One circuit of a diagonal split lost (read as a statement): a front and the opposite rear wheel give nothing. */
    @Test
    void a_lost_diagonal_circuit_halves_the_braking() {
        WheelBrake front = HEALTHY.with(new FrictionPair.Disc(0.38, 1));
        WheelBrake rear = HEALTHY;
        double whole = 2 * front.steadyForce(50 * BAR) + 2 * rear.steadyForce(50 * BAR);

        double frontLeft = front.steadyForce(0);
        double rearRight = rear.steadyForce(0);
        double rest = front.steadyForce(50 * BAR) + rear.steadyForce(50 * BAR);

        assertThat(frontLeft).isZero();
        assertThat(rearRight).isZero();
        assertThat((frontLeft + rearRight + rest) / whole).isCloseTo(0.5, within(0.02));
    }

    @Test
    void a_calliper_that_cannot_slide_loses_the_force_of_its_outer_pad() {
        assertThat(new FrictionPair.Disc(0.40, 0.3).factor() / new FrictionPair.Disc(0.40, 1).factor())
                .isCloseTo(0.65, within(1e-9));
    }

    @Test
    void a_flap_keeps_pressure_back_after_the_release() {
        WheelBrake held = HEALTHY.with(HYDRAULICS.restricted(0.03, 0.3, 10 * BAR));

        Trace trace = ReferenceAxle.run(held, HEALTHY);

        double last = trace.left().at(trace.left().size() - 1);
        assertThat(last).isCloseTo(60 + (10 + 0.3 - 1.5) * 19.8, withinPercentage(2));
        assertThat(trace.right().at(trace.right().size() - 1)).isCloseTo(60, within(0.5));
    }

    @Test
    void the_same_seed_records_the_same_noise_and_another_seed_another() {
        Recording recording = ReferenceAxle.RECORDING.noisy(0.03, 20, 7);

        Trace once = ReferenceAxle.run(HEALTHY, HEALTHY, ReferenceAxle.APPLICATION, recording);
        Trace again = ReferenceAxle.run(HEALTHY, HEALTHY, ReferenceAxle.APPLICATION, recording);
        Trace other = ReferenceAxle.run(
                HEALTHY, HEALTHY, ReferenceAxle.APPLICATION, ReferenceAxle.RECORDING.noisy(0.03, 20, 8));

        assertThat(again).isEqualTo(once);
        assertThat(other.left()).isNotEqualTo(once.left());
        assertThat(once.left()).isNotEqualTo(once.right());
    }

    /** Throats of Hagen-Poiseuille flow (derived, viscosity assumed): 0.25 mm and 20 mm long in front of a calliper. */
    @ParameterizedTest(name = "{0} mm over {1} mm: {3} s")
    @CsvSource({
        "0.50, 20, 2e-13, 0.027",
        "0.30, 20, 2e-13, 0.21",
        "0.25, 20, 2e-13, 0.44",
        "0.20, 20, 2e-13, 1.06",
        "0.25, 20, 0.5e-13, 0.11",
        "3.0, 3000, 2e-13, 0.003"
    })
    void a_throat_delays_by_its_resistance_and_the_compliance_behind_it(
            double bore, double length, double compliance, double seconds) {
        double time = Restriction.timeConstant(bore / 1000, length / 1000, 0.0105, compliance);

        assertThat(time).isCloseTo(seconds, withinPercentage(seconds < 0.01 ? 10 : 4));
    }

    /** Clearance of a cylinder pair, bore 19.05 mm, master 22.2 mm, pedal ratio 4 (derived). */
    @ParameterizedTest(name = "{0} mm a piston: {1} cm3, {2} mm stroke, {3} mm pedal")
    @CsvSource({"0.5, 0.29, 0.7, 3", "1.0, 0.57, 1.5, 6", "2.0, 1.14, 2.9, 12", "3.0, 1.71, 4.4, 18"})
    void clearance_is_paid_for_with_pedal_travel(double gap, double volume, double stroke, double travel) {
        double swept = 2 * gap / 1000 * Math.PI * Math.pow(0.01905, 2) / 4;
        Pedal pedal = new Pedal(4, 1, Double.POSITIVE_INFINITY, 0.0222, 0.95);

        assertThat(swept * 1e6).isCloseTo(volume, within(0.006));
        assertThat(pedal.travelFor(swept) / 4 * 1000).isCloseTo(stroke, within(0.06));
        assertThat(pedal.travelFor(swept) * 1000).isCloseTo(travel, within(0.6));
    }

    /** Air of 1, 2 and 5 cm3 squeezed isothermally (derived). */
    @ParameterizedTest(name = "{0} cm3 at {1} bar: {2} cm3")
    @CsvSource({"1, 20, 0.95", "1, 50, 0.98", "2, 50, 1.96", "5, 20, 4.76", "5, 50, 4.90"})
    void air_gives_way_at_low_pressure(double volume, double pressure, double squeezed) {
        assertThat(1e6 * Restriction.squeezed(volume / 1e6, pressure * BAR)).isCloseTo(squeezed, within(0.006));
    }

    /** Lever to roller by a cable (formula judgement): 200 N, ratio 6, cable 0.7, shoe lever 4, factor 1.989. */
    @Test
    void a_parking_brake_shares_its_lever_between_two_cables() {
        ParkingActuation lever = new ParkingActuation(6, 0.7, 4);

        double force = lever.force(200, ReferenceAxle.SIMPLEX, 0.1015, 0.29);

        assertThat(force).isCloseTo(200 * 6 * 0.7 / 2 * 4 * 1.989 * 0.35, withinPercentage(0.1));
        assertThat(new ParkingActuation(6, 0.35, 4).force(200, ReferenceAxle.SIMPLEX, 0.1015, 0.29))
                .isCloseTo(force / 2, within(0.001));
    }
}
