package org.axlecause.repair;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.facts.Because;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CautionProposal;
import org.axlecause.facts.Decision;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Party;
import org.axlecause.facts.Reason;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.RetestComparison;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.StepProposal;
import org.axlecause.facts.UnaskedLine;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.facts.WorkReported;
import org.jspecify.annotations.Nullable;

/** Makes a plan of what the rules propose, what was decided and what was reported: lines, order, care and price. */
public final class PlanRepair {

    private final RepairCatalogue catalogue;
    private final WorkDone workDone;

    public PlanRepair(RepairCatalogue catalogue) {
        this.catalogue = catalogue;
        this.workDone = new WorkDone(catalogue);
    }

    /** The lines that the reported steps have done; the rules of the outcome need them before the plan is made. */
    public List<LineDone> linesDone(List<ReportedStep> reported) {
        return workDone.lines(reported).stream().map(LineDone::new).toList();
    }

    /** The plan that follows from the input. */
    public RepairPlan of(RepairInput input) {
        Map<LineKey, LineDecision> decisions = decisions(input);
        Map<String, ReportedStep> reports = reports(input);
        Set<LineKey> done = done(input, reports);
        Map<LineKey, Decision> decided = new TreeMap<>();
        decisions.forEach((line, decision) -> decided.put(line, decision.decision()));
        MergedLines merged = new MergedLines(catalogue, input.scope(), decided, done);

        Pricing pricing = input.prices() == null ? null : new Pricing(input.prices());
        boolean customerDecided = input.decisions().stream().anyMatch(decision -> decision.by() == Party.CUSTOMER);
        Set<LineKey> shown = new TreeSet<>(merged.standing().keySet());
        shown.addAll(decisions.keySet());
        done.stream()
                .filter(key -> merged.taker(key) == null && wasProposed(key, merged, reports))
                .forEach(shown::add);
        List<ScopeLine> lines = shown.stream()
                .map(key -> line(key, merged, decisions.get(key), done, pricing, customerDecided, input))
                .toList();

        List<PlannedStep> steps = steps(input, lines, reports);
        List<PlannedCaution> cautions = cautions(input, steps);
        return new RepairPlan(
                lines,
                pricing == null || lines.isEmpty() ? null : total(lines, pricing),
                withCautions(steps, cautions),
                cautions,
                unknownLines(input),
                unknownSteps(input));
    }

    private static Map<LineKey, LineDecision> decisions(RepairInput input) {
        Map<LineKey, LineDecision> standing = new TreeMap<>();
        for (LineDecision decision : input.decisions()) {
            LineKey line = LineKey.ofId(decision.line());
            if (line != null) {
                standing.put(line, decision);
            }
        }
        return standing;
    }

    private static Map<String, ReportedStep> reports(RepairInput input) {
        Map<String, ReportedStep> standing = new TreeMap<>();
        for (WorkReported report : input.reports()) {
            ReportedStep step = ReportedStep.ofId(report.step(), report.outcome());
            if (step != null) {
                standing.put(step.id(), step);
            }
        }
        return standing;
    }

    private Set<LineKey> done(RepairInput input, Map<String, ReportedStep> reports) {
        Set<LineKey> done = new TreeSet<>(workDone.lines(List.copyOf(reports.values())));
        if (input.comparisons().stream().anyMatch(RetestComparison::isTested)) {
            input.scope().stream()
                    .filter(line -> line.item() == ScopeItem.ROLLER_TEST)
                    .forEach(line -> done.add(line.line()));
        }
        return done;
    }

    /** Whether a done line is one of its own: proposed, or the very work of a reported step. */
    private boolean wasProposed(LineKey key, MergedLines merged, Map<String, ReportedStep> reports) {
        return merged.proposed(key) != null
                || reports.values().stream()
                        .flatMap(step -> catalogue.step(step.step()).does().stream()
                                .map(kind -> new LineKey(kind.action(), kind.item(), step.place())))
                        .anyMatch(key::equals);
    }

    private ScopeLine line(
            LineKey key,
            MergedLines merged,
            @Nullable LineDecision decided,
            Set<LineKey> done,
            @Nullable Pricing pricing,
            boolean customerDecided,
            RepairInput input) {
        MergedLines.Line proposed = merged.proposed(key);
        LineKey taker = merged.taker(key);
        Operation operation = catalogue.operation(key.action(), key.item());
        LineStanding standing = standing(proposed != null, taker != null, decided, done.contains(key));
        Estimate estimate = pricing == null || standing == LineStanding.MERGED_INTO
                ? null
                : pricing.of(operation, operation.quantity().value(), decided == null ? null : decided.alternative());
        Necessity necessity = necessity(proposed, decided);
        return new ScopeLine(
                key.id(),
                key.action(),
                key.item(),
                key.place(),
                proposed == null ? extent(key) : proposed.extent(),
                operation.quantity(),
                necessity,
                standing,
                taker == null ? null : taker.id(),
                proposed == null ? null : proposed.clause(),
                estimate,
                decided == null ? null : StandingDecision.of(decided),
                change(standing, necessity, operation, estimate, decided, customerDecided),
                grounds(key, proposed, input));
    }

    private static List<Reason> grounds(LineKey key, MergedLines.@Nullable Line proposed, RepairInput input) {
        Stream<Because> grounds = proposed != null
                ? proposed.grounds().stream()
                : input.unasked().stream()
                        .filter(line -> line.line().equals(key))
                        .map(UnaskedLine::because);
        return grounds.map(input.explain()).toList();
    }

    private static LineStanding standing(
            boolean proposed, boolean merged, @Nullable LineDecision decided, boolean done) {
        if (done) {
            return LineStanding.DONE;
        }
        if (merged) {
            return LineStanding.MERGED_INTO;
        }
        if (!proposed) {
            return LineStanding.NO_LONGER_NEEDED;
        }
        if (decided == null) {
            return LineStanding.PROPOSED;
        }
        return switch (decided.decision()) {
            case AGREED -> LineStanding.AGREED;
            case REFUSED -> LineStanding.REFUSED;
            case LATER -> LineStanding.LATER;
        };
    }

    private static Necessity necessity(MergedLines.@Nullable Line proposed, @Nullable LineDecision decided) {
        if (proposed != null) {
            return proposed.necessity();
        }
        Necessity agreed = decided == null ? null : decided.necessity();
        return agreed == null ? Necessity.OPTIONAL : agreed;
    }

    private static ScopeExtent extent(LineKey key) {
        if (key.place().circuit() != null) {
            return ScopeExtent.CIRCUIT;
        }
        if (key.place().axle() == null) {
            return ScopeExtent.VEHICLE;
        }
        return key.place().side() == null ? ScopeExtent.AXLE : ScopeExtent.WHEEL;
    }

    private static @Nullable Change change(
            LineStanding standing,
            Necessity necessity,
            Operation operation,
            @Nullable Estimate estimate,
            @Nullable LineDecision decided,
            boolean customerDecided) {
        if (standing == LineStanding.DONE
                || standing == LineStanding.MERGED_INTO
                || standing == LineStanding.NO_LONGER_NEEDED) {
            return null;
        }
        if (decided == null) {
            return customerDecided ? Change.ADDED : null;
        }
        boolean same = (decided.necessity() == null || decided.necessity() == necessity)
                && (decided.quantity() == null
                        || decided.quantity().compareTo(operation.quantity().value()) == 0)
                && sameGross(estimate, decided);
        return same ? null : Change.CHANGED;
    }

    private static boolean sameGross(@Nullable Estimate estimate, LineDecision decided) {
        Amount gross = estimate == null ? null : estimate.gross();
        BigDecimal shown = decided.estimate();
        return gross == null
                || shown == null
                || (gross.currency().equals(decided.currency())
                        && shown.compareTo(new BigDecimal(gross.amount())) == 0);
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

    private List<PlannedStep> steps(RepairInput input, List<ScopeLine> lines, Map<String, ReportedStep> reports) {
        Set<LineKey> planned =
                lines.stream().filter(ScopeLine::isPlanned).map(ScopeLine::key).collect(Collectors.toSet());
        Map<StepOrder.Key, Set<String>> served = new LinkedHashMap<>();
        input.steps().stream()
                .filter(step -> planned.contains(step.line()))
                .sorted(Comparator.comparing(StepProposal::line))
                .forEach(step -> served.computeIfAbsent(
                                new StepOrder.Key(step.step(), step.place()), key -> new LinkedHashSet<>())
                        .add(step.line().id()));
        reports.values()
                .forEach(step -> served.computeIfAbsent(
                        new StepOrder.Key(step.step(), step.place()), key -> new LinkedHashSet<>()));
        List<PlannedStep> steps = new ArrayList<>();
        new StepOrder(catalogue, served.keySet()).ordered().forEach((key, after) -> {
            CatalogueStep known = catalogue.step(key.step());
            ReportedStep report = reports.get(key.id());
            steps.add(new PlannedStep(
                    key.id(),
                    key.step(),
                    key.place(),
                    known.says(),
                    List.copyOf(served.getOrDefault(key, Set.of())),
                    after,
                    known.verify(),
                    known.stop(),
                    known.tools(),
                    List.of(),
                    report == null ? null : report.outcome()));
        });
        return steps;
    }

    private List<PlannedCaution> cautions(RepairInput input, List<PlannedStep> steps) {
        Map<PlannedCaution, Integer> found = new LinkedHashMap<>();
        Set<CautionCode> codes = input.cautions().stream()
                .map(CautionProposal::caution)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(CautionCode.class)));
        for (CautionCode code : codes) {
            CatalogueCaution caution = catalogue.caution(code);
            Set<StepCode> precedes = Set.copyOf(caution.precedes());
            List<String> before = steps.stream()
                    .filter(step -> precedes.contains(step.step()))
                    .map(PlannedStep::id)
                    .toList();
            if (!before.isEmpty()) {
                found.put(
                        new PlannedCaution(code, caution.text(), before, caution.source()),
                        positions(steps).getOrDefault(before.get(0), 0));
            }
        }
        return found.entrySet().stream()
                .sorted(Map.Entry.<PlannedCaution, Integer>comparingByValue()
                        .thenComparing(entry -> entry.getKey().code()))
                .map(Map.Entry::getKey)
                .toList();
    }

    private static Map<String, Integer> positions(List<PlannedStep> steps) {
        Map<String, Integer> positions = new LinkedHashMap<>();
        steps.forEach(step -> positions.put(step.id(), positions.size()));
        return positions;
    }

    /** Each caution once, at the first step that it precedes. */
    private static List<PlannedStep> withCautions(List<PlannedStep> steps, List<PlannedCaution> cautions) {
        return steps.stream()
                .map(step -> new PlannedStep(
                        step.id(),
                        step.step(),
                        step.place(),
                        step.says(),
                        step.lines(),
                        step.after(),
                        step.verify(),
                        step.stop(),
                        step.tools(),
                        cautions.stream()
                                .filter(caution -> caution.before().get(0).equals(step.id()))
                                .map(PlannedCaution::code)
                                .toList(),
                        step.outcome()))
                .toList();
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
