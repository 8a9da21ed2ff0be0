package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.axlecause.facts.Axle;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Place;

/** Finds the parts of opened axles that must be looked at in any case. */
final class LookingOver {

    private final CauseModel model;
    private final Layout layout;
    private final DiagnosisInput input;

    LookingOver(CauseModel model, Layout layout, DiagnosisInput input) {
        this.model = model;
        this.layout = layout;
        this.input = input;
    }

    /** Parts of opened axles that nobody has looked at, by wheel and in the order of the files. */
    List<Unlooked> unlooked() {
        List<Unlooked> unlooked = new ArrayList<>();
        for (int number : new TreeSet<>(input.openedAxles())) {
            Axle axle = layout.vehicle().axle(number);
            if (axle == null) {
                continue;
            }
            for (Place wheel : layout.wheelsOf(Place.ofAxle(number))) {
                for (Check.LookedOver part : model.lookingOver()) {
                    boolean needed = part.brake() == WheelBrake.of(axle)
                            && (part.onlyBrakes().isEmpty() || part.onlyBrakes().contains(axle.brake()));
                    if (needed && !lookedAt(part, wheel)) {
                        unlooked.add(new Unlooked(part.component(), part.check(), wheel));
                    }
                }
            }
        }
        return unlooked;
    }

    private boolean lookedAt(Check.LookedOver part, Place wheel) {
        return input.findings().stream()
                .anyMatch(finding -> finding.component() == part.component()
                        && finding.place().wheel().covers(wheel)
                        && finding.place().axle() != null
                        && !passedOver(finding, part));
    }

    /** Whether the part was called sound by a look that could not see all that the asked one sees. */
    private boolean passedOver(Finding finding, Check.LookedOver part) {
        return finding.sound()
                && finding.check() != null
                && finding.check() != part.check()
                && model.check(part.check()).outcomes().stream()
                        .filter(outcome -> outcome.component() == part.component() && outcome.finding() != null)
                        .map(outcome -> model.finding(outcome.finding()))
                        .anyMatch(seen -> !seen.ruledOutBy(finding));
    }

    /**
     * A part of an opened axle that nobody has looked at.
     *
     * @param component the part
     * @param check the check to make
     * @param wheel where
     */
    record Unlooked(Component component, CheckCode check, Place wheel) {

        boolean at(CheckCode other, Place place) {
            return check == other && wheel.equals(place);
        }
    }
}
