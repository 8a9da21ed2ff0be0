package org.axlecause.judgement;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.diagnosis.Check;
import org.axlecause.diagnosis.WheelBrake;
import org.axlecause.facts.Axle;
import org.axlecause.facts.AxleState;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Side;
import org.axlecause.facts.Vehicle;
import org.jspecify.annotations.Nullable;

/** Tells from the findings which axles have been opened and whether both their wheels were looked over. */
final class OpenedAxles {

    /** Access level of a check from which a drum or calliper is off. */
    private static final int DRUM_OR_CALLIPER_OFF = 3;

    private final CauseModel model;

    OpenedAxles(CauseModel model) {
        this.model = model;
    }

    /** Numbers of the axles that have been opened. */
    Set<Integer> of(Vehicle vehicle, List<Finding> findings) {
        Set<Integer> opened = new TreeSet<>();
        for (Axle axle : vehicle.axles()) {
            List<Component> inside = inside(axle);
            if (findings.stream().anyMatch(finding -> opens(finding, axle, inside))) {
                opened.add(axle.number());
            }
        }
        return opened;
    }

    /** The state of every braked axle. */
    List<AxleState> states(Vehicle vehicle, List<Finding> findings, Set<Integer> opened) {
        List<AxleState> states = new ArrayList<>();
        for (Axle axle : vehicle.axles()) {
            if (axle.brake() != null) {
                states.add(new AxleState(axle, opened.contains(axle.number()), bothLookedOver(axle, findings)));
            }
        }
        return states;
    }

    private boolean opens(Finding finding, Axle axle, List<Component> inside) {
        Integer number = finding.place().axle();
        return number != null
                && number == axle.number()
                && finding.condition() != Condition.NOT_ACCESSIBLE
                && (inside.contains(finding.component()) || access(finding.check()) >= DRUM_OR_CALLIPER_OFF);
    }

    private boolean bothLookedOver(Axle axle, List<Finding> findings) {
        return inside(axle).stream()
                .allMatch(component ->
                        looked(axle, Side.LEFT, component, findings) && looked(axle, Side.RIGHT, component, findings));
    }

    private static boolean looked(Axle axle, Side side, Component component, List<Finding> findings) {
        return findings.stream()
                .anyMatch(finding -> finding.component() == component
                        && Integer.valueOf(axle.number()).equals(finding.place().axle())
                        && finding.place().side() == side);
    }

    private List<Component> inside(Axle axle) {
        if (axle.brake() == null) {
            return List.of();
        }
        return model.lookingOver().stream()
                .filter(looked -> looked.brake() == WheelBrake.of(axle))
                .filter(looked ->
                        looked.onlyBrakes().isEmpty() || looked.onlyBrakes().contains(axle.brake()))
                .map(Check.LookedOver::component)
                .toList();
    }

    private int access(@Nullable CheckCode code) {
        return model.checks().stream()
                .filter(check -> check.code() == code)
                .mapToInt(Check::access)
                .findFirst()
                .orElse(0);
    }
}
