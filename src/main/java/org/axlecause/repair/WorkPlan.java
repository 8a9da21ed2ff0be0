package org.axlecause.repair;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.StepProposal;
import org.axlecause.facts.WorkOutcome;
import org.jspecify.annotations.Nullable;

/**
 * Makes the steps that the planned lines need, in a valid order. A tick that a failed re-test has followed no longer
 * counts where its step serves a line that is open; a step that was not possible holds back all that wait for it.
 */
final class WorkPlan {

    private final RepairCatalogue catalogue;
    private final StepOrders orders;
    private final Reports reports;

    WorkPlan(RepairCatalogue catalogue, StepOrders orders, Reports reports) {
        this.catalogue = catalogue;
        this.orders = orders;
        this.reports = reports;
    }

    List<PlannedStep> of(List<StepProposal> proposed, List<ScopeLine> lines) {
        Map<StepOrder.Key, Set<String>> served = served(proposed, lines);
        Set<String> open = lines.stream()
                .filter(ScopeLine::isPlanned)
                .filter(line -> line.standing() != LineStanding.DONE)
                .map(ScopeLine::id)
                .collect(Collectors.toSet());
        Map<StepOrder.Key, List<String>> ordered = orders.of(served.keySet());
        Map<String, Set<String>> held = new LinkedHashMap<>();
        List<PlannedStep> steps = new ArrayList<>();
        ordered.forEach((key, after) -> {
            CatalogueStep known = catalogue.step(key.step());
            Set<String> lineIds = served.getOrDefault(key, Set.of());
            WorkOutcome outcome = outcome(key, lineIds, open);
            Set<String> heldBy = new TreeSet<>();
            after.forEach(before -> heldBy.addAll(held.getOrDefault(before, Set.of())));
            Set<String> passedOn = new TreeSet<>(heldBy);
            if (outcome == WorkOutcome.NOT_POSSIBLE) {
                passedOn.add(key.id());
            }
            held.put(key.id(), passedOn);
            steps.add(new PlannedStep(
                    key.id(),
                    key.step(),
                    key.place(),
                    known.says(),
                    List.copyOf(lineIds),
                    after,
                    known.verify(),
                    known.stop(),
                    backTo(known.backTo(), key, ordered.keySet()),
                    known.tools(),
                    known.source(),
                    List.of(),
                    outcome,
                    List.copyOf(heldBy)));
        });
        return steps;
    }

    private Map<StepOrder.Key, Set<String>> served(List<StepProposal> proposed, List<ScopeLine> lines) {
        Set<Object> planned =
                lines.stream().filter(ScopeLine::isPlanned).map(ScopeLine::key).collect(Collectors.toSet());
        Map<StepOrder.Key, Set<String>> served = new LinkedHashMap<>();
        proposed.stream()
                .filter(step -> planned.contains(step.line()))
                .sorted(Comparator.comparing(StepProposal::line))
                .forEach(step -> served.computeIfAbsent(
                                new StepOrder.Key(step.step(), step.place()), key -> new LinkedHashSet<>())
                        .add(step.line().id()));
        reports.all()
                .forEach(step -> served.computeIfAbsent(
                        new StepOrder.Key(step.step(), step.place()), key -> new LinkedHashSet<>()));
        return served;
    }

    private @Nullable WorkOutcome outcome(StepOrder.Key key, Set<String> lines, Set<String> open) {
        ReportedStep report = reports.on(key.id());
        if (report == null) {
            return null;
        }
        boolean again = reports.isTested(key.id()) && lines.stream().anyMatch(open::contains);
        return again ? null : report.outcome();
    }

    private static @Nullable String backTo(@Nullable StepCode code, StepOrder.Key from, Set<StepOrder.Key> planned) {
        return planned.stream()
                .filter(key -> key.step() == code && StepOrder.related(from.place(), key.place()))
                .map(StepOrder.Key::id)
                .findFirst()
                .orElse(null);
    }
}
