package org.axlecause.repair;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Place;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.Side;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.WorkOutcome;

/** Tells from the reported steps which scope lines are done. */
final class WorkDone {

    private final RepairCatalogue catalogue;

    WorkDone(RepairCatalogue catalogue) {
        this.catalogue = catalogue;
    }

    /** Lines whose doing step was reported done everywhere it belongs, with the lines that they take along. */
    Set<LineKey> lines(List<ReportedStep> reported) {
        Set<LineKey> done = new TreeSet<>();
        List<ReportedStep> finished = reported.stream()
                .filter(step -> step.outcome() == WorkOutcome.DONE)
                .toList();
        for (ReportedStep step : finished) {
            for (Operation.Kind kind : catalogue.step(step.step()).does()) {
                Operation operation = catalogue.operation(kind.action(), kind.item());
                boolean sideOfAxle =
                        operation.extent() == ScopeExtent.AXLE && step.place().isWheel();
                if (!sideOfAxle) {
                    add(new LineKey(kind.action(), kind.item(), step.place()), done);
                } else if (bothSides(step.step(), step.place(), finished)) {
                    add(new LineKey(kind.action(), kind.item(), step.place().axlePlace()), done);
                }
            }
        }
        return done;
    }

    private void add(LineKey line, Set<LineKey> done) {
        done.add(line);
        for (Operation.Kind taken :
                catalogue.operation(line.action(), line.item()).takesAlong()) {
            for (Place place : within(line.place())) {
                done.add(new LineKey(taken.action(), taken.item(), place));
            }
        }
    }

    private static List<Place> within(Place place) {
        if (place.equals(Place.VEHICLE)) {
            return List.of(place, Place.ofCircuit(1), Place.ofCircuit(2));
        }
        boolean wholeAxle = place.axle() != null && place.side() == null;
        return wholeAxle ? List.of(place, place.left(), place.right()) : List.of(place);
    }

    private static boolean bothSides(StepCode step, Place wheel, List<ReportedStep> finished) {
        Set<Side> sides = finished.stream()
                .filter(other -> other.step() == step && other.place().sameAxle(wheel))
                .map(other -> other.place().side())
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Side.class)));
        return sides.size() == Side.values().length;
    }
}
