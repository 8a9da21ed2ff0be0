package org.axlecause.diagnosis;

import java.util.List;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.Verified;
import org.jspecify.annotations.Nullable;

/**
 * A check of the catalogue.
 *
 * @param code its code
 * @param text how it is done
 * @param level kind of place it is made at
 * @param on kind of wheel brake it is made on; null for all
 * @param onlyBrakes layouts of wheel brake it is made on; none means all
 * @param onlyParking layouts of parking brake it is made on; none means all
 * @param minutes minutes on the spot
 * @param access how far the vehicle must be taken apart, 0 on its wheels to 4 hydraulics opened
 * @param risk harm it can do to parts
 * @param drives kind of braking it needs; null where it needs none
 * @param cautions cautions before it
 * @param needsSymptom symptom without which it has no sense; null where it always has
 * @param rollerTest brake of the roller test it is, or null
 * @param shows symptoms that the roller test would show
 * @param firstAfter symptoms after which it comes before all other checks, until what it shows is known
 * @param sound parts that it can find without fault
 * @param outcomes what else can come out
 * @param standing standing of minutes and risk
 * @param source document and section, or whose knowledge it is
 */
public record Check(
        CheckCode code,
        String text,
        Level level,
        @Nullable WheelBrake on,
        List<BrakeLayout> onlyBrakes,
        List<ParkingLayout> onlyParking,
        int minutes,
        int access,
        Risk risk,
        @Nullable Drives drives,
        List<CautionCode> cautions,
        @Nullable SymptomCode needsSymptom,
        @Nullable BrakeSystem rollerTest,
        List<SymptomCode> shows,
        List<SymptomCode> firstAfter,
        List<Component> sound,
        List<Outcome> outcomes,
        Verified standing,
        String source) {

    boolean fits(Axle axle) {
        return axle.brake() != null
                && (on == null || on == WheelBrake.of(axle))
                && (onlyBrakes.isEmpty() || onlyBrakes.contains(axle.brake()))
                && (onlyParking.isEmpty() || onlyParking.contains(axle.parkingBrake()));
    }

    /**
     * One thing that can come out of a check.
     *
     * @param finding code of the finding; null where it tells a symptom
     * @param symptom symptom that it tells; null for a finding
     * @param component part to record
     * @param condition state to record
     * @param measure quantity to measure with it; null where none
     */
    public record Outcome(
            @Nullable String finding,
            @Nullable SymptomCode symptom,
            Component component,
            Condition condition,
            @Nullable MeasuredQuantity measure) {}

    /**
     * What is looked at on both wheels of an opened axle.
     *
     * @param brake kind of wheel brake
     * @param onlyBrakes layouts it is for; none means all
     * @param component the part
     * @param check the check to make
     */
    public record LookedOver(WheelBrake brake, List<BrakeLayout> onlyBrakes, Component component, CheckCode check) {}
}
