package org.axlecause.judgement;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.diagnosis.Diagnosis;
import org.axlecause.facts.AwaitedEvidence;
import org.axlecause.facts.AxleState;
import org.axlecause.facts.CautionProposal;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.Departure;
import org.axlecause.facts.FitnessGround;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.RefusedWork;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.RetestComparison;
import org.axlecause.facts.ScopeDecided;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.StepProposal;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.UnaskedLine;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehicleLayout;
import org.axlecause.facts.VerificationGround;
import org.axlecause.facts.VerificationSign;
import org.axlecause.facts.WorkReported;
import org.axlecause.inference.Conclusions;
import org.axlecause.inference.RuleBase;
import org.axlecause.repair.Fitness;
import org.axlecause.repair.LineTerms;
import org.axlecause.repair.PlanRepair;
import org.axlecause.repair.RepairInput;
import org.axlecause.repair.RepairPlan;
import org.axlecause.repair.Verification;
import org.jspecify.annotations.Nullable;

/** Makes the second call of the rule base and plans the repair from what it concludes. */
final class RepairCall {

    private final RuleBase rules;
    private final PlanRepair planRepair;

    RepairCall(RuleBase rules, PlanRepair planRepair) {
        this.rules = rules;
        this.planRepair = planRepair;
    }

    /**
     * What the first call left for the second.
     *
     * @param presentation presentation that the case is judged by
     * @param diagnosis causes as they are settled
     * @param axles state of the axles
     * @param tests the tests
     * @param asFound deficiencies of the state in which the vehicle came
     * @param afterWork deficiencies of the final tests
     * @param symptoms symptoms that show
     * @param terms what the regime asks; null where there is no regime
     * @param departures departures that act
     */
    record Basis(
            Presentation presentation,
            Diagnosis diagnosis,
            List<AxleState> axles,
            Tests tests,
            List<Deficiency> asFound,
            List<Deficiency> afterWork,
            List<Symptom> symptoms,
            @Nullable RegimeTerms terms,
            List<Departure> departures) {}

    /**
     * What follows for the repair.
     *
     * @param plan lines, steps, cautions and price
     * @param fitness advice on use
     * @param verification proof of the repair
     * @param questions what the rules ask
     * @param done lines that the reported steps have done
     * @param notCured axles, or the vehicle, that the final test shows no better than at arrival
     */
    record Result(
            RepairPlan plan,
            Fitness fitness,
            Verification verification,
            List<OpenQuestion> questions,
            List<LineDone> done,
            Set<Place> notCured) {}

    Result of(Matter matter, StandingHistory history, Basis basis) {
        List<WorkReported> reports = history.of(WorkReported.class).stream()
                .map(recorded -> (WorkReported) recorded.entry())
                .toList();
        List<LineDecision> decisions = history.of(ScopeDecided.class).stream()
                .flatMap(recorded -> ((ScopeDecided) recorded.entry()).decisions().stream())
                .toList();
        Vehicle vehicle = basis.presentation.content().vehicle();
        LaterWork later = new LaterWork(history, planRepair);
        List<RetestComparison> comparisons = Comparisons.of(basis.tests, later, vehicle, matter.policy(), basis.terms);
        Set<LineKey> again = neededAgain(matter, history, basis, later);
        List<LineDone> done = planRepair.linesDone(SecondCall.reports(history), again);
        Conclusions second = rules.conclude(shared(matter), facts(history, basis, comparisons, done));
        List<AwaitedEvidence> awaited = second.of(AwaitedEvidence.class);
        RepairPlan plan = planRepair.of(new RepairInput(
                kept(second.of(ScopeProposal.class), basis.departures),
                second.of(StepProposal.class),
                second.of(CautionProposal.class),
                second.of(UnaskedLine.class),
                decisions,
                reports,
                later.reportsBeforeTest(),
                basis.tests.has(Tests.AFTER),
                again,
                vehicle.serviceFluid(),
                matter.priceList(),
                new LineTerms(matter.policy().consents(), matter.policy().hoursAtMost(), awaited, basis.departures),
                rules::explain));
        return new Result(
                plan,
                Fitness.of(second.of(FitnessGround.class), second.of(RefusedWork.class), rules::explain),
                Verification.of(
                        second.of(VerificationGround.class), comparisons, Inspections.last(history), rules::explain),
                Stream.concat(
                                second.of(OpenQuestion.class).stream(),
                                awaited.stream().map(RepairCall::question))
                        .toList(),
                done,
                notCured(second.of(VerificationGround.class)));
    }

    /** Facts that cases share: what the workshop sets and how well it measures. */
    private List<? extends List<?>> shared(Matter matter) {
        return List.of(matter.policy().clauses(), matter.policy().needed(), planRepair.gauges());
    }

    private static List<ScopeProposal> kept(List<ScopeProposal> proposals, List<Departure> departures) {
        return proposals.stream()
                .filter(proposal -> departures.stream().noneMatch(departure -> departure.frees(proposal)))
                .toList();
    }

    private static OpenQuestion question(AwaitedEvidence awaited) {
        return new OpenQuestion(
                QuestionCode.EVIDENCE_AWAITED,
                awaited.line().place(),
                "The line " + awaited.line().id() + " waits for " + awaited.what()
                        + ", which the policy wants on record first.",
                "Record it with finding.recorded, or depart from the clause with a reason where it is not locked.",
                awaited.because());
    }

    private static Set<Place> notCured(List<VerificationGround> grounds) {
        return grounds.stream()
                .filter(ground -> ground.sign() == VerificationSign.NOT_CURED)
                .map(ground -> ground.place().axlePlace())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Lines done before the last final test that what was found or met after it calls for once more. */
    private Set<LineKey> neededAgain(Matter matter, StandingHistory history, Basis basis, LaterWork later) {
        StandingHistory since = later.sinceLastTest(history);
        Vehicle vehicle = basis.presentation.content().vehicle();
        List<PartState> faults = SecondCall.parts(since, vehicle).stream()
                .filter(PartState::isFault)
                .toList();
        List<Object> facts = new ArrayList<>(faults);
        facts.addAll(SecondCall.obstacles(since, vehicle));
        if (!basis.tests.has(Tests.AFTER) || facts.isEmpty()) {
            return Set.of();
        }
        facts.add(new VehicleLayout(vehicle, basis.presentation.day()));
        facts.addAll(basis.axles);
        Set<LineKey> needed = rules.conclude(shared(matter), facts).of(ScopeProposal.class).stream()
                .map(ScopeProposal::line)
                .collect(Collectors.toCollection(TreeSet::new));
        planRepair.linesDone(SecondCall.reports(history), Set.of()).stream()
                .filter(done -> faults.stream().anyMatch(fault -> done.mends(fault.item(), fault.place())))
                .forEach(done -> needed.add(done.line()));
        planRepair.linesDone(SecondCall.reports(since), Set.of()).forEach(done -> needed.remove(done.line()));
        return needed;
    }

    private List<Object> facts(
            StandingHistory history, Basis basis, List<RetestComparison> comparisons, List<LineDone> done) {
        Vehicle vehicle = basis.presentation.content().vehicle();
        List<ReportedStep> reported = SecondCall.reports(history);
        List<Object> facts = new ArrayList<>();
        facts.add(new VehicleLayout(vehicle, basis.presentation.day()));
        facts.addAll(SecondCall.causes(basis.diagnosis));
        facts.addAll(SecondCall.latelyRenewed(basis.presentation));
        facts.addAll(SecondCall.fluidRenewed(basis.presentation));
        facts.addAll(SecondCall.photos(history, vehicle));
        facts.addAll(basis.departures);
        facts.addAll(SecondCall.parts(history, vehicle));
        facts.addAll(SecondCall.obstacles(history, vehicle));
        facts.addAll(basis.axles);
        facts.addAll(basis.diagnosis.unlooked());
        facts.addAll(SecondCall.decisions(history));
        facts.addAll(reported);
        facts.addAll(done);
        facts.addAll(comparisons);
        facts.addAll(SecondCall.testedAxles(basis.tests));
        facts.addAll(SecondCall.rounds(basis.tests));
        facts.addAll(SecondCall.deficiencies(basis.asFound, basis.afterWork, basis.tests));
        facts.addAll(SecondCall.symptoms(basis.symptoms, basis.tests));
        return facts;
    }
}
