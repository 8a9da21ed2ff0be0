package org.axlecause.judgement;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.axlecause.diagnosis.AxleShare;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.diagnosis.Diagnose;
import org.axlecause.diagnosis.Diagnosis;
import org.axlecause.diagnosis.DiagnosisInput;
import org.axlecause.diagnosis.RankedCause;
import org.axlecause.facts.AxleState;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.DrivenCheckBarred;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.ExplainedAway;
import org.axlecause.facts.Finding;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.FitnessLevel;
import org.axlecause.facts.Likelier;
import org.axlecause.facts.Limit;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.OpeningBarred;
import org.axlecause.facts.Place;
import org.axlecause.facts.Policy;
import org.axlecause.facts.Proof;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Reason;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.RegimeGap;
import org.axlecause.facts.RegimeSheet;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VerificationOutcome;
import org.axlecause.facts.WorkReported;
import org.axlecause.inference.Conclusions;
import org.axlecause.inference.RuleBase;
import org.axlecause.measurement.RegimeFigures;
import org.axlecause.regimes.Regime;
import org.axlecause.regimes.Regimes;
import org.axlecause.repair.Fitness;
import org.axlecause.repair.PlanRepair;
import org.axlecause.repair.Verification;
import org.jspecify.annotations.Nullable;

/**
 * Turns a case's whole history into a judgement: a pure function without clock, database or randomness, so that the same
 * history gives the same judgement, whatever order its entries arrived in.
 */
public final class Judge {

    private final RuleBase rules;
    private final Regimes regimes;
    private final CauseModel model;
    private final Diagnose diagnose;
    private final OpenedAxles openedAxles;
    private final RepairCall repairCall;
    private final ShowChecks showChecks = new ShowChecks();

    /** A judge who knows this rule base, these regimes and this cause model. */
    public Judge(RuleBase rules, Regimes regimes, CauseModel model, PlanRepair planRepair) {
        this.rules = rules;
        this.regimes = regimes;
        this.model = model;
        this.diagnose = new Diagnose(model);
        this.openedAxles = new OpenedAxles(model);
        this.repairCall = new RepairCall(rules, planRepair);
    }

    /** What follows from the matter. */
    public Judgement judge(Matter matter) {
        return judge(matter, diagnose::of);
    }

    /** What follows from the matter, for a trial: no next check is chosen or advised. */
    public Judgement withoutChecks(Matter matter) {
        return judge(matter, diagnose::withoutChecks);
    }

    private Judgement judge(Matter matter, Function<DiagnosisInput, Diagnosis> diagnoses) {
        StandingHistory history = StandingHistory.of(matter.history()).withRunsCombined();
        Presentation presentation = Presentation.of(history, matter.site().zone());
        return presentation == null
                ? withoutVehicle(matter, history)
                : concluded(matter, history, presentation, weighed(matter, history, presentation, diagnoses));
    }

    /**
     * What follows by the matter's own policy and by another, for a trial: no next check is chosen or advised, and
     * what both policies see alike is weighed once, in the words of the first.
     */
    public Compared compare(Matter matter, Policy other) {
        StandingHistory history = StandingHistory.of(matter.history()).withRunsCombined();
        Presentation presentation = Presentation.of(history, matter.site().zone());
        Matter drafted = matter.by(other);
        if (presentation == null) {
            return new Compared(withoutVehicle(matter, history), withoutVehicle(drafted, history));
        }
        Weighed weighed = weighed(matter, history, presentation, diagnose::withoutChecks);
        Weighed otherwise = FirstCall.seesAlike(matter.policy(), other)
                ? weighed
                : weighed(drafted, history, presentation, diagnose::withoutChecks);
        return new Compared(
                concluded(matter, history, presentation, weighed),
                concluded(drafted, history, presentation, otherwise));
    }

    /**
     * A case by two policies.
     *
     * @param before by its own
     * @param after by the other
     */
    public record Compared(Judgement before, Judgement after) {}

    /** How the causes stood while the vehicle was looked at. */
    public Progress progress(Matter matter) {
        FollowProgress follow = follow(matter, diagnose::of);
        return follow == null ? Progress.NONE : follow.progress();
    }

    /** How the causes stood after the arrival test, before anything was looked at; null where no arrival test came first. */
    public @Nullable List<RankedCause> atArrival(Matter matter) {
        FollowProgress follow = follow(matter, diagnose::withoutChecks);
        return follow == null ? null : follow.arrival();
    }

    /** How likely the cause model holds each cause on each axle of the presented vehicle before anything is seen. */
    public List<AxleShare> axleShares(Matter matter) {
        Presentation presentation = Presentation.of(
                StandingHistory.of(matter.history()), matter.site().zone());
        return presentation == null
                ? List.of()
                : model.axleShares(presentation.content().vehicle(), presentation.day());
    }

    private @Nullable FollowProgress follow(Matter matter, Function<DiagnosisInput, Diagnosis> diagnoses) {
        StandingHistory history = StandingHistory.of(matter.history());
        Presentation presentation = Presentation.of(history, matter.site().zone());
        if (presentation == null) {
            return null;
        }
        Vehicle vehicle = presentation.content().vehicle();
        List<Candidate> candidates = model.candidates(vehicle);
        if (candidates.isEmpty()) {
            return null;
        }
        RegimeTerms terms = terms(matter, presentation, new ArrayList<>());
        return new FollowProgress(
                model,
                openedAxles,
                soFar -> diagnoses.apply(inputOf(matter, StandingHistory.of(soFar), presentation, terms, candidates)),
                matter.history().reference(),
                vehicle,
                history.entries());
    }

    private DiagnosisInput inputOf(
            Matter matter,
            StandingHistory entries,
            Presentation presentation,
            @Nullable RegimeTerms terms,
            List<Candidate> candidates) {
        StandingHistory history = entries.withRunsCombined();
        Vehicle vehicle = presentation.content().vehicle();
        RegimeSheet sheet = terms == null ? null : RegimeFigures.of(history.entries(), vehicle, terms);
        List<Finding> findings = FirstCall.findings(history, vehicle);
        Conclusions first = rules.conclude(
                FirstCall.shared(matter.policy(), terms, candidates),
                FirstCall.asFound(history, presentation, findings, Tests.of(history, sheet)));
        return input(matter, presentation, findings, first, openedAxles.of(vehicle, findings));
    }

    private Judgement withoutVehicle(Matter matter, StandingHistory history) {
        Tests tests = Tests.of(history, null);
        OffsetDateTime first = matter.history().entries().get(0).time();
        return new Judgement(
                matter.history().reference(),
                null,
                null,
                first,
                first.atZoneSameInstant(matter.site().zone()).toLocalDate(),
                matter.history().entries().size(),
                Statuses.of(history, List.of(), VerificationOutcome.NOT_TESTED),
                null,
                judgedBy(matter),
                null,
                null,
                shown(tests),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                null,
                List.of(),
                List.of(),
                new Fitness(FitnessLevel.NOT_ESTABLISHED, List.of(), List.of()),
                new Verification(
                        VerificationOutcome.NOT_TESTED, List.of(), List.of(), Inspections.last(history), List.of()),
                HistoryQuestions.of(history, null, matter.policy()),
                timeline(matter, history));
    }

    /**
     * What was weighed before anything is concluded for the repair; of the policy only its thresholds and limits take part.
     *
     * @param questions what is open so far
     * @param terms what the regime asks; null where there is no regime
     * @param tests the tests
     * @param findings findings that speak about causes
     * @param candidates what could be wrong
     * @param asFound deficiencies of the state in which the vehicle came
     * @param afterWork deficiencies of the final tests
     * @param symptoms symptoms that show
     * @param opened axles that were opened
     * @param diagnosis causes as they are settled
     * @param diagnoses how they were weighed
     */
    private record Weighed(
            List<ShownQuestion> questions,
            @Nullable RegimeTerms terms,
            Tests tests,
            List<Finding> findings,
            List<Candidate> candidates,
            List<Deficiency> asFound,
            List<Deficiency> afterWork,
            List<Symptom> symptoms,
            Set<Integer> opened,
            Diagnosis diagnosis,
            Function<DiagnosisInput, Diagnosis> diagnoses) {}

    private Weighed weighed(
            Matter matter,
            StandingHistory history,
            Presentation presentation,
            Function<DiagnosisInput, Diagnosis> diagnoses) {
        Vehicle vehicle = presentation.content().vehicle();
        List<ShownQuestion> questions = new ArrayList<>();
        RegimeTerms terms = terms(matter, presentation, questions);
        RegimeSheet sheet = terms == null ? null : RegimeFigures.of(history.entries(), vehicle, terms);
        if (sheet != null) {
            sheet.gaps().forEach(gap -> questions.add(question(gap)));
        }
        Tests tests = Tests.of(history, sheet);
        List<Finding> findings = FirstCall.findings(history, vehicle);
        List<Candidate> candidates = model.candidates(vehicle);
        Conclusions first = rules.conclude(
                FirstCall.shared(matter.policy(), terms, candidates),
                FirstCall.asFound(history, presentation, findings, tests));
        List<Deficiency> asFound = first.of(Deficiency.class);
        Conclusions last = tests.has(Tests.AFTER)
                ? rules.conclude(
                        FirstCall.shared(matter.policy(), terms, List.of()), FirstCall.afterWork(vehicle, tests))
                : null;
        List<Deficiency> afterWork = last == null ? List.of() : last.of(Deficiency.class);
        List<Symptom> symptoms = first.of(Symptom.class);
        first.of(OpenQuestion.class).forEach(open -> questions.add(question(open)));
        if (last != null) {
            last.of(OpenQuestion.class).stream()
                    .filter(open -> open.code() == QuestionCode.TOO_CLOSE_TO_CALL)
                    .forEach(open -> questions.add(question(open)));
        }
        tests.doubts(Tests.BEFORE).forEach(doubt -> questions.add(question(doubt)));
        tests.doubts(Tests.AFTER).forEach(doubt -> questions.add(question(doubt)));

        Set<Integer> opened = openedAxles.of(vehicle, findings);
        Diagnosis diagnosis = candidates.isEmpty()
                ? outOfRange(vehicle, questions)
                : diagnoses.apply(input(matter, presentation, findings, first, opened));
        diagnosis
                .questions()
                .forEach(open -> questions.add(
                        HistoryQuestions.question(open.code(), open.place(), open.says(), open.resolve())));
        return new Weighed(
                questions,
                terms,
                tests,
                findings,
                candidates,
                asFound,
                afterWork,
                symptoms,
                opened,
                diagnosis,
                diagnoses);
    }

    private Judgement concluded(Matter matter, StandingHistory history, Presentation presentation, Weighed weighed) {
        Vehicle vehicle = presentation.content().vehicle();
        Diagnosis diagnosis = weighed.diagnosis();
        RegimeTerms terms = weighed.terms();
        Tests tests = weighed.tests();
        boolean inRange = !weighed.candidates().isEmpty();
        List<ShownQuestion> questions = new ArrayList<>(HistoryQuestions.of(history, presentation, matter.policy()));
        questions.addAll(weighed.questions());
        List<AxleState> axles = openedAxles.states(vehicle, weighed.findings(), weighed.opened());
        Departures departures = Departures.of(history, matter.policy());
        questions.addAll(departures.questions());
        RepairCall.Result repair = repairCall.of(
                matter,
                history,
                new RepairCall.Basis(
                        presentation,
                        diagnosis,
                        inRange ? axles : List.of(),
                        tests,
                        weighed.asFound(),
                        weighed.afterWork(),
                        weighed.symptoms(),
                        terms,
                        departures.acting()));
        repair.questions().forEach(open -> questions.add(question(open)));
        questions.addAll(ClosingQuestions.of(history, diagnosis));
        questions.addAll(WorkQuestions.of(repair.plan()));
        Inspections.question(repair.verification()).ifPresent(questions::add);

        Diagnosis shown = diagnosis;
        if (inRange && repair.verification().outcome() == VerificationOutcome.NOT_CURED) {
            shown = reopened(matter, history, presentation, weighed, repair);
            questions.addAll(Reopened.questions(repair.notCured(), diagnosis, shown));
        }

        FindingStage stage =
                history.of(WorkReported.class).isEmpty() ? FindingStage.AS_FOUND : FindingStage.DURING_WORK;
        return new Judgement(
                matter.history().reference(),
                presentation.entry().id(),
                presentation.content().site(),
                presentation.entry().time(),
                presentation.day(),
                matter.history().entries().size(),
                Statuses.of(
                        history, repair.plan().lines(), repair.verification().outcome()),
                terms == null ? null : new Judgement.JudgedBy(terms.regime(), terms.version()),
                judgedBy(matter),
                inRange ? Judgement.WeighedBy.of(matter.weights()) : null,
                departures.shown().isEmpty() ? null : departures.shown(),
                shown(tests),
                deficiencies(Stream.concat(weighed.asFound().stream(), weighed.afterWork().stream()), tests, terms),
                symptoms(weighed.symptoms()),
                shown.causes().stream().map(this::shown).toList(),
                shown.nextChecks().stream()
                        .filter(next -> next.lookingOver() || !isVerified(repair))
                        .map(next -> showChecks.shown(next, stage))
                        .toList(),
                repair.plan().lines(),
                repair.plan().estimate(),
                repair.plan().steps(),
                repair.plan().cautions(),
                repair.fitness(),
                repair.verification(),
                inOrder(questions),
                timeline(matter, history));
    }

    /** Whether the final test proved the repair, which answers what was still in doubt. */
    private static boolean isVerified(RepairCall.Result repair) {
        return repair.verification().outcome() == VerificationOutcome.VERIFIED;
    }

    /** Causes weighed anew by a final test that shows no cure. */
    private Diagnosis reopened(
            Matter matter,
            StandingHistory history,
            Presentation presentation,
            Weighed weighed,
            RepairCall.Result repair) {
        RegimeTerms terms = weighed.terms();
        StandingHistory again = Reopened.history(history);
        Vehicle vehicle = presentation.content().vehicle();
        RegimeSheet sheet = terms == null ? null : RegimeFigures.of(again.entries(), vehicle, terms);
        Presentation since = Reopened.presentation(presentation, repair.done());
        List<Finding> open = Reopened.findings(weighed.findings(), repair.done());
        Conclusions first = rules.conclude(
                FirstCall.shared(matter.policy(), terms, weighed.candidates()),
                FirstCall.asFound(again, since, open, Tests.of(again, sheet)));
        return weighed.diagnoses().apply(input(matter, since, open, first, weighed.opened()));
    }

    private @Nullable RegimeTerms terms(Matter matter, Presentation presentation, List<ShownQuestion> questions) {
        String named = presentation.content().regime();
        String code = named == null ? matter.site().regime() : named;
        Regime regime = regimes.find(code);
        if (regime == null) {
            questions.add(HistoryQuestions.question(
                    QuestionCode.REGIME_UNKNOWN,
                    Place.VEHICLE,
                    "No regime bears the code " + code + "; nothing is held against a legal limit.",
                    "Present the vehicle with one of " + String.join(", ", regimes.codes()) + "."));
            return null;
        }
        LocalDate day = matter.asOf() == null ? presentation.day() : matter.asOf();
        RegimeTerms terms = regime.termsFor(presentation.content().vehicle(), day);
        terms.gaps().forEach(gap -> questions.add(question(gap)));
        return terms;
    }

    private static DiagnosisInput input(
            Matter matter, Presentation presentation, List<Finding> findings, Conclusions first, Set<Integer> opened) {
        return new DiagnosisInput(
                presentation.content().vehicle(),
                presentation.day(),
                matter.weights(),
                first.of(Symptom.class),
                first.of(SymptomObservable.class),
                findings,
                first.of(Proof.class),
                first.of(Refutation.class),
                first.of(ExplainedAway.class),
                first.of(Likelier.class),
                opened,
                !first.of(DrivenCheckBarred.class).isEmpty(),
                !first.of(OpeningBarred.class).isEmpty());
    }

    private static Diagnosis outOfRange(Vehicle vehicle, List<ShownQuestion> questions) {
        questions.add(HistoryQuestions.question(
                QuestionCode.OUTSIDE_SCOPE_RANGE,
                Place.VEHICLE,
                "Causes, next checks, work and plan are worked out for hydraulically braked vehicles of category M1 and"
                        + " N1 only; this one is " + vehicle.category() + ".",
                "Use the figures and the faults found, and judge the cause by the vehicle's own data."));
        return Diagnosis.NONE;
    }

    private List<ShownDeficiency> deficiencies(Stream<Deficiency> found, Tests tests, @Nullable RegimeTerms terms) {
        Map<String, Deficiency> byWhat = new LinkedHashMap<>();
        Map<String, List<Reason>> reasons = new LinkedHashMap<>();
        found.forEach(deficiency -> {
            String what = deficiency.code() + " " + deficiency.place() + " " + deficiency.test() + " "
                    + deficiency.severity() + " " + deficiency.item();
            byWhat.putIfAbsent(what, deficiency);
            reasons.computeIfAbsent(what, key -> new ArrayList<>()).add(rules.explain(deficiency.because()));
        });
        return byWhat.entrySet().stream()
                .map(entry -> shown(entry.getValue(), tests, terms, reasons.getOrDefault(entry.getKey(), List.of())))
                .sorted(Comparator.comparing(ShownDeficiency::severity, Comparator.nullsLast(Comparator.reverseOrder()))
                        .thenComparing(ShownDeficiency::code)
                        .thenComparing(ShownDeficiency::place)
                        .thenComparing(ShownDeficiency::test))
                .toList();
    }

    private static ShownDeficiency shown(
            Deficiency deficiency, Tests tests, @Nullable RegimeTerms terms, List<Reason> because) {
        Limit limit = deficiency.limit();
        Limit required = limit == null || terms == null ? null : terms.required(limit);
        return new ShownDeficiency(
                deficiency.code(),
                deficiency.item(),
                deficiency.severity(),
                deficiency.place(),
                deficiency.stage(),
                deficiency.test(),
                limit == null ? null : Quantity.of(limit.kind(), deficiency.value()),
                limit == null ? null : ShownLimit.of(limit),
                required == null ? null : ShownLimit.of(required),
                tests.probabilityNonConforming(deficiency),
                because);
    }

    private List<ShownSymptom> symptoms(List<Symptom> symptoms) {
        Map<String, Symptom> byWhat = new LinkedHashMap<>();
        Map<String, List<Reason>> reasons = new LinkedHashMap<>();
        for (Symptom symptom : symptoms) {
            String what = symptom.code() + " " + symptom.place();
            byWhat.merge(what, symptom, (one, other) -> one.strength().compareTo(other.strength()) >= 0 ? one : other);
            reasons.computeIfAbsent(what, key -> new ArrayList<>()).add(rules.explain(symptom.because()));
        }
        return byWhat.entrySet().stream()
                .map(entry -> new ShownSymptom(
                        entry.getValue().code(),
                        entry.getValue().place(),
                        entry.getValue().strength(),
                        reasons.getOrDefault(entry.getKey(), List.of())))
                .sorted(Comparator.comparing(ShownSymptom::code).thenComparing(ShownSymptom::place))
                .toList();
    }

    private ShownCause shown(RankedCause cause) {
        return new ShownCause(
                cause.code(),
                cause.place(),
                cause.text(),
                cause.standing(),
                cause.probability(),
                cause.root(),
                cause.chain().stream().map(ShownCause.ShownNode::of).toList(),
                cause.evidence(),
                cause.because().stream().map(rules::explain).toList());
    }

    private ShownQuestion question(OpenQuestion open) {
        return new ShownQuestion(
                open.code(), open.place(), open.says(), open.resolve(), List.of(rules.explain(open.because())));
    }

    private static ShownQuestion question(RegimeGap gap) {
        return HistoryQuestions.question(gap.code(), gap.place(), gap.says(), gap.resolve());
    }

    private static ShownQuestion question(TestDoubt doubt) {
        return HistoryQuestions.question(
                QuestionCode.DOUBTFUL_TEST,
                doubt.place(),
                doubt.says(),
                "Repeat the test with the doubt removed before anything is dismantled.");
    }

    /** The same question asked on several grounds is one question. */
    private static List<ShownQuestion> inOrder(List<ShownQuestion> questions) {
        Map<String, ShownQuestion> byWhat = new LinkedHashMap<>();
        for (ShownQuestion question : questions) {
            String what = question.code() + " " + question.place() + " " + question.says() + " " + question.resolve();
            byWhat.merge(what, question, (one, other) -> one.and(other.because()));
        }
        return byWhat.values().stream()
                .sorted(Comparator.comparing(ShownQuestion::code)
                        .thenComparing(ShownQuestion::place)
                        .thenComparing(ShownQuestion::says)
                        .thenComparing(ShownQuestion::resolve))
                .toList();
    }

    private static List<ShownFigure> shown(Tests tests) {
        return tests.runs().stream()
                .flatMap(run -> run.figures().stream())
                .map(ShownFigure::of)
                .toList();
    }

    private static Judgement.JudgedBy judgedBy(Matter matter) {
        return new Judgement.JudgedBy(
                matter.policy().name(), String.valueOf(matter.policy().version()));
    }

    private static List<TimelineEntry> timeline(Matter matter, StandingHistory history) {
        return matter.history().entries().stream()
                .map(recorded -> entry(recorded, history))
                .toList();
    }

    private static TimelineEntry entry(Recorded recorded, StandingHistory history) {
        return new TimelineEntry(
                recorded.id().source(),
                recorded.id().id(),
                recorded.time(),
                EntryType.of(recorded.entry()).toString(),
                history.withdrawn().contains(recorded.id()),
                EntryWords.of(recorded.entry()));
    }
}
