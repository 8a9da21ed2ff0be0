package org.axlecause.handwritten;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import org.axlecause.facts.AwaitedEvidence;
import org.axlecause.facts.Axle;
import org.axlecause.facts.AxleState;
import org.axlecause.facts.BeddingAllowed;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CautionProposal;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Complaint;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Conclusion;
import org.axlecause.facts.DecidedLine;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.DeficiencyInForce;
import org.axlecause.facts.Departure;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.DrivenCheckBarred;
import org.axlecause.facts.DueLine;
import org.axlecause.facts.EarlierFigure;
import org.axlecause.facts.EarlierShape;
import org.axlecause.facts.Exemption;
import org.axlecause.facts.ExpectedForce;
import org.axlecause.facts.ExplainedAway;
import org.axlecause.facts.FailedPart;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Finding;
import org.axlecause.facts.FindingLimit;
import org.axlecause.facts.FitnessGround;
import org.axlecause.facts.FluidRenewed;
import org.axlecause.facts.GaugeUncertainty;
import org.axlecause.facts.InspectedItem;
import org.axlecause.facts.LatelyRenewed;
import org.axlecause.facts.Likelier;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitRisk;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.NeededEvidence;
import org.axlecause.facts.Obstacle;
import org.axlecause.facts.OpenLine;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.OpeningBarred;
import org.axlecause.facts.PartState;
import org.axlecause.facts.PhotoTaken;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.Proof;
import org.axlecause.facts.RecentWork;
import org.axlecause.facts.RefusedWork;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.RegimeGap;
import org.axlecause.facts.ReportedCondition;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.RetestComparison;
import org.axlecause.facts.RetestRound;
import org.axlecause.facts.RoadDeviation;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.SettledCause;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.SoiledLining;
import org.axlecause.facts.StandingCause;
import org.axlecause.facts.StandingDeficiency;
import org.axlecause.facts.StandingFault;
import org.axlecause.facts.StandingLeak;
import org.axlecause.facts.StandingSymptom;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.StepProposal;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.TestBarred;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.TestedAxle;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.UnaskedLine;
import org.axlecause.facts.UnlookedPart;
import org.axlecause.facts.UnsteadyAxle;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehicleLayout;
import org.axlecause.facts.VerificationGround;
import org.axlecause.facts.WorkedWheel;
import org.axlecause.facts.WorkshopLimit;
import org.jspecify.annotations.Nullable;

/** The facts of a case by type, those told and those concluded from them. */
final class Facts {

    private final Map<Class<?>, Known<?>> byType = new HashMap<>();
    private final List<Known<?>> conclusions = new ArrayList<>();

    final Known<AwaitedEvidence> awaitedEvidence = known(AwaitedEvidence.class);
    final Known<Axle> axles = known(Axle.class);
    final Known<AxleState> axleStates = known(AxleState.class);
    final Known<BeddingAllowed> beddingAllowed = known(BeddingAllowed.class);
    final ByCode<CauseCode, Candidate> candidates = byCode(Candidate.class, CauseCode.class, Candidate::code);
    final Known<CautionProposal> cautionProposals = known(CautionProposal.class);
    final ByCode<ComplaintCode, Complaint> complaints = byCode(Complaint.class, ComplaintCode.class, Complaint::code);
    final Known<DecidedLine> decidedLines = known(DecidedLine.class);
    final Known<Deficiency> deficiencies = known(Deficiency.class);
    final Known<DeficiencyInForce> deficienciesInForce = known(DeficiencyInForce.class);
    final Known<Departure> departures = known(Departure.class);
    final Known<DrivenCheckBarred> drivenChecksBarred = known(DrivenCheckBarred.class);
    final ByCode<ScopeItem, DueLine> dueLines = byCode(DueLine.class, ScopeItem.class, DueLine::item);
    final ByCode<FigureKind, EarlierFigure> earlierFigures =
            byCode(EarlierFigure.class, FigureKind.class, EarlierFigure::kind);
    final Known<EarlierShape> earlierShapes = known(EarlierShape.class);
    final Known<Exemption> exemptions = known(Exemption.class);
    final Known<ExpectedForce> expectedForces = known(ExpectedForce.class);
    final Known<ExplainedAway> explainedAway = known(ExplainedAway.class);
    final ByCode<ScopeItem, FailedPart> failedParts = byCode(FailedPart.class, ScopeItem.class, FailedPart::item);
    final ByCode<FigureKind, Figure> figures = byCode(Figure.class, FigureKind.class, Figure::kind);
    final ByCode<Component, Finding> findings = byCode(Finding.class, Component.class, Finding::component);
    final Known<FindingLimit> findingLimits = known(FindingLimit.class);
    final Known<FitnessGround> fitnessGrounds = known(FitnessGround.class);
    final Known<FluidRenewed> fluidRenewed = known(FluidRenewed.class);
    final Known<GaugeUncertainty> gaugeUncertainties = known(GaugeUncertainty.class);
    final ByCode<DeficiencyCode, InspectedItem> inspectedItems =
            byCode(InspectedItem.class, DeficiencyCode.class, InspectedItem::deficiency);
    final ByCode<ScopeItem, LatelyRenewed> latelyRenewed =
            byCode(LatelyRenewed.class, ScopeItem.class, LatelyRenewed::item);
    final Known<Likelier> likelier = known(Likelier.class);
    final ByCode<DeficiencyCode, Limit> limits = byCode(Limit.class, DeficiencyCode.class, Limit::deficiency);
    final Known<LimitRisk> limitRisks = known(LimitRisk.class);
    final Known<LineDone> linesDone = known(LineDone.class);
    final Known<NeededEvidence> neededEvidence = known(NeededEvidence.class);
    final ByCode<Component, Obstacle> obstacles = byCode(Obstacle.class, Component.class, Obstacle::component);
    final Known<OpenLine> openLines = known(OpenLine.class);
    final Known<OpenQuestion> openQuestions = known(OpenQuestion.class);
    final Known<OpeningBarred> openingBarred = known(OpeningBarred.class);
    final ByCode<Component, PartState> partStates = byCode(PartState.class, Component.class, PartState::component);
    final Known<PhotoTaken> photosTaken = known(PhotoTaken.class);
    final ByCode<ClauseCode, PolicyClause> policyClauses =
            byCode(PolicyClause.class, ClauseCode.class, PolicyClause::code);
    final ByCode<CauseCode, Proof> proofs = byCode(Proof.class, CauseCode.class, Proof::code);
    final ByCode<ScopeItem, RecentWork> recentWork = byCode(RecentWork.class, ScopeItem.class, RecentWork::item);
    final Known<RefusedWork> refusedWork = known(RefusedWork.class);
    final Known<Refutation> refutations = known(Refutation.class);
    final Known<RegimeGap> regimeGaps = known(RegimeGap.class);
    final ByCode<TestCondition, ReportedCondition> reportedConditions =
            byCode(ReportedCondition.class, TestCondition.class, ReportedCondition::condition);
    final Known<ReportedStep> reportedSteps = known(ReportedStep.class);
    final Known<RetestComparison> retestComparisons = known(RetestComparison.class);
    final Known<RetestRound> retestRounds = known(RetestRound.class);
    final Known<RoadDeviation> roadDeviations = known(RoadDeviation.class);
    final Known<ScopeProposal> scopeProposals = known(ScopeProposal.class);
    final ByCode<CauseCode, SettledCause> settledCauses =
            byCode(SettledCause.class, CauseCode.class, SettledCause::code);
    final Known<ShapeOfLoss> shapesOfLoss = known(ShapeOfLoss.class);
    final Known<SoiledLining> soiledLinings = known(SoiledLining.class);
    final Known<StandingCause> standingCauses = known(StandingCause.class);
    final Known<StandingDeficiency> standingDeficiencies = known(StandingDeficiency.class);
    final ByCode<Component, StandingFault> standingFaults =
            byCode(StandingFault.class, Component.class, StandingFault::component);
    final Known<StandingLeak> standingLeaks = known(StandingLeak.class);
    final ByCode<SymptomCode, StandingSymptom> standingSymptoms =
            byCode(StandingSymptom.class, SymptomCode.class, StandingSymptom::code);
    final ByCode<StepCode, StepProposal> stepProposals = byCode(StepProposal.class, StepCode.class, StepProposal::step);
    final ByCode<SymptomCode, Symptom> symptoms = byCode(Symptom.class, SymptomCode.class, Symptom::code);
    final ByCode<SymptomCode, SymptomObservable> symptomObservables =
            byCode(SymptomObservable.class, SymptomCode.class, SymptomObservable::code);
    final Known<TestBarred> testsBarred = known(TestBarred.class);
    final ByCode<DoubtCode, TestDoubt> testDoubts = byCode(TestDoubt.class, DoubtCode.class, TestDoubt::code);
    final Known<TestedAxle> testedAxles = known(TestedAxle.class);
    final ByCode<ThresholdCode, Threshold> thresholds = byCode(Threshold.class, ThresholdCode.class, Threshold::code);
    final Known<UnaskedLine> unaskedLines = known(UnaskedLine.class);
    final Known<UnlookedPart> unlookedParts = known(UnlookedPart.class);
    final Known<UnsteadyAxle> unsteadyAxles = known(UnsteadyAxle.class);
    final Known<Vehicle> vehicles = known(Vehicle.class);
    final Known<VehicleLayout> vehicleLayouts = known(VehicleLayout.class);
    final Known<VerificationGround> verificationGrounds = known(VerificationGround.class);
    final Known<WorkedWheel> workedWheels = known(WorkedWheel.class);
    final Known<WorkshopLimit> workshopLimits = known(WorkshopLimit.class);

    /** Brings facts in; those that no rule asks for are left out. */
    void tell(Collection<?> facts) {
        for (Object fact : facts) {
            Known<?> known = byType.get(fact.getClass());
            if (known != null) {
                tell(known, fact);
            }
        }
    }

    /** Facts that stay when those of a case are forgotten. */
    static Facts shared(Iterable<? extends Collection<?>> shared) {
        Facts facts = new Facts();
        shared.forEach(facts::tell);
        facts.byType.values().forEach(Known::share);
        return facts;
    }

    /** Forgets all but the shared facts. */
    void forget() {
        byType.values().forEach(Known::forget);
    }

    /** All conclusions that are known. */
    List<Conclusion> conclusions() {
        List<Conclusion> all = new ArrayList<>();
        conclusions.forEach(known -> known.all().forEach(one -> all.add((Conclusion) one)));
        return all;
    }

    static <T> boolean any(List<T> facts, Predicate<T> asked) {
        for (T fact : facts) {
            if (asked.test(fact)) {
                return true;
            }
        }
        return false;
    }

    static <T> boolean none(List<T> facts, Predicate<T> asked) {
        return !any(facts, asked);
    }

    @SuppressWarnings("unchecked") // Why: facts are told by their own class.
    private static <T> void tell(Known<T> known, Object fact) {
        known.tell((T) fact);
    }

    private <T> Known<T> known(Class<T> type) {
        return put(type, new Known<>());
    }

    private <C extends Enum<C>, T> ByCode<C, T> byCode(Class<T> type, Class<C> codes, Function<T, @Nullable C> code) {
        return put(type, new ByCode<>(codes, code));
    }

    private <T, K extends Known<T>> K put(Class<T> type, K known) {
        byType.put(type, known);
        if (Conclusion.class.isAssignableFrom(type)) {
            conclusions.add(known);
        }
        return known;
    }
}
