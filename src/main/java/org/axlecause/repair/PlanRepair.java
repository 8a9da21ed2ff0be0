package org.axlecause.repair;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.axlecause.facts.GaugeUncertainty;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.facts.WorkReported;

/** Makes a plan of what the rules propose, what was decided and what was reported: lines, order, care and price. */
public final class PlanRepair {

    private final RepairCatalogue catalogue;
    private final StepOrders orders;
    private final WorkDone workDone;

    public PlanRepair(RepairCatalogue catalogue) {
        this.catalogue = catalogue;
        this.orders = new StepOrders(catalogue);
        this.workDone = new WorkDone(catalogue);
    }

    /**
     * The lines that the reported steps have done, apart from those that are needed again; the rules of the outcome need
     * them before the plan is made.
     */
    public List<LineDone> linesDone(List<ReportedStep> reported, Set<LineKey> neededAgain) {
        return workDone.lines(reported).stream()
                .filter(line -> !neededAgain.contains(line))
                .map(LineDone::new)
                .toList();
    }

    /** How far the gauges may be off with which findings are measured. */
    public List<GaugeUncertainty> gauges() {
        return catalogue.gauges();
    }

    /** The plan that follows from the input. */
    public RepairPlan of(RepairInput input) {
        Decisions decisions = new Decisions(input.decisions());
        Reports reports = new Reports(input.reports(), input.reportsBeforeTest());
        Pricing pricing = input.prices() == null ? null : new Pricing(input.prices());
        List<ScopeLine> lines = new ScopeLines(catalogue, input, decisions, reports, pricing).all();
        List<PlannedStep> steps = new WorkPlan(catalogue, orders, reports).of(input.steps(), lines);
        List<PlannedCaution> cautions = new PlanCautions(catalogue).of(input.cautions(), steps);
        return new RepairPlan(
                lines,
                pricing == null || lines.isEmpty() ? null : total(lines, pricing),
                PlanCautions.placed(cautions, steps),
                cautions,
                unknownLines(input),
                unknownSteps(input));
    }

    private static Estimate total(List<ScopeLine> lines, Pricing pricing) {
        List<ScopeLine> standing = lines.stream()
                .filter(line -> line.estimate() != null)
                .filter(PlanRepair::isOffered)
                .toList();
        Estimate all = pricing.sum(
                standing.stream()
                        .filter(line -> line.isPlanned() || line.necessity() == Necessity.RECOMMENDED)
                        .flatMap(line -> Stream.ofNullable(line.estimate()))
                        .toList(),
                null);
        return pricing.sum(
                standing.stream()
                        .filter(ScopeLine::isPlanned)
                        .flatMap(line -> Stream.ofNullable(line.estimate()))
                        .toList(),
                all);
    }

    private static boolean isOffered(ScopeLine line) {
        return switch (line.standing()) {
            case PROPOSED, AGREED, DONE -> true;
            default -> false;
        };
    }

    private static List<String> unknownLines(RepairInput input) {
        return input.decisions().stream()
                .map(LineDecision::line)
                .filter(line -> LineKey.ofId(line) == null)
                .distinct()
                .sorted()
                .toList();
    }

    private static List<String> unknownSteps(RepairInput input) {
        return input.reports().stream()
                .map(WorkReported::step)
                .filter(step -> ReportedStep.ofId(step, WorkOutcome.DONE) == null)
                .distinct()
                .sorted()
                .toList();
    }
}
