package org.axlecause.judgement;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.axlecause.diagnosis.Diagnosis;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.DecidedLine;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.FluidRenewed;
import org.axlecause.facts.LatelyRenewed;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitStanding;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Obstacle;
import org.axlecause.facts.ObstacleMet;
import org.axlecause.facts.PartState;
import org.axlecause.facts.PhotoTaken;
import org.axlecause.facts.Place;
import org.axlecause.facts.RecentWork;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.RetestRound;
import org.axlecause.facts.ScopeDecided;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.SettledCause;
import org.axlecause.facts.Stage;
import org.axlecause.facts.StandingDeficiency;
import org.axlecause.facts.StandingSymptom;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.TestedAxle;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.WorkReported;
import org.jspecify.annotations.Nullable;

/** Gathers the facts of the second call of the rule base: what speaks about scope, work and the proof of the repair. */
final class SecondCall {

    /** A suspected cause speaks about the scope once it is likelier than not. */
    private static final BigDecimal LIKELIER_THAN_NOT = new BigDecimal("0.5");

    private SecondCall() {}

    /** Confirmed causes, and suspected ones that are likelier than not. */
    static List<SettledCause> causes(Diagnosis diagnosis) {
        return diagnosis.causes().stream()
                .filter(cause -> cause.standing() == CauseStanding.CONFIRMED
                        || (cause.standing() == CauseStanding.SUSPECTED
                                && cause.probability().compareTo(LIKELIER_THAN_NOT) > 0))
                .map(cause -> new SettledCause(cause.code(), cause.place(), cause.standing(), cause.root()))
                .toList();
    }

    /**
     * Every finding that still speaks, as a state of its part. A part found sound after the work no longer speaks once
     * a fault is found on it later, and a fault found after the work no longer once the part is found sound after it.
     */
    static List<PartState> parts(StandingHistory history, Vehicle vehicle) {
        List<PartState> parts = new ArrayList<>();
        for (Recorded recorded : history.of(FindingRecorded.class)) {
            FindingRecorded finding = (FindingRecorded) recorded.entry();
            if (Places.known(finding.place(), vehicle)) {
                PartState later = new PartState(
                        recorded.id(),
                        finding.stage(),
                        finding.component(),
                        finding.condition(),
                        finding.place(),
                        finding.extent(),
                        finding.agent(),
                        finding.measurement());
                parts.removeIf(earlier -> later.replaces(earlier));
                parts.add(later);
            }
        }
        return parts;
    }

    /** Parts that earlier work on record has renewed, so that they are not of the age of their twins. */
    static List<LatelyRenewed> latelyRenewed(Presentation presentation) {
        return presentation.content().recentWork().stream()
                .map(work -> new LatelyRenewed(work.item(), work.place()))
                .distinct()
                .toList();
    }

    /** When the fluid was last renewed, as far as the work on record says. */
    static List<FluidRenewed> fluidRenewed(Presentation presentation) {
        return presentation.content().recentWork().stream()
                .filter(work -> work.item() == ScopeItem.BRAKE_FLUID)
                .map(RecentWork::date)
                .flatMap(Stream::ofNullable)
                .max(Comparator.naturalOrder())
                .map(day ->
                        new FluidRenewed(day, BigDecimal.valueOf(ChronoUnit.YEARS.between(day, presentation.day()))))
                .stream()
                .toList();
    }

    /** Parts that a finding carries a photo of. */
    static List<PhotoTaken> photos(StandingHistory history, Vehicle vehicle) {
        List<PhotoTaken> photos = new ArrayList<>();
        for (Recorded recorded : history.of(FindingRecorded.class)) {
            FindingRecorded finding = (FindingRecorded) recorded.entry();
            ScopeItem item = PartState.itemOf(finding.component());
            if (item != null && !finding.evidence().isEmpty() && Places.known(finding.place(), vehicle)) {
                photos.add(new PhotoTaken(recorded.id(), item, finding.place()));
            }
        }
        return photos;
    }

    static List<Obstacle> obstacles(StandingHistory history, Vehicle vehicle) {
        List<Obstacle> obstacles = new ArrayList<>();
        for (Recorded recorded : history.of(ObstacleMet.class)) {
            ObstacleMet met = (ObstacleMet) recorded.entry();
            if (Places.known(met.place(), vehicle)) {
                obstacles.add(new Obstacle(recorded.id(), met.component(), met.condition(), met.place()));
            }
        }
        return obstacles;
    }

    /** The decision that stands on each line: the last one in the order that counts. */
    static List<DecidedLine> decisions(StandingHistory history) {
        Map<LineKey, DecidedLine> standing = new TreeMap<>();
        for (Recorded recorded : history.of(ScopeDecided.class)) {
            for (LineDecision decision : ((ScopeDecided) recorded.entry()).decisions()) {
                LineKey line = LineKey.ofId(decision.line());
                if (line != null) {
                    standing.put(line, new DecidedLine(line, decision.decision(), decision.by()));
                }
            }
        }
        return List.copyOf(standing.values());
    }

    /** The report that stands on each step: the last one in the order that counts. */
    static List<ReportedStep> reports(StandingHistory history) {
        Map<String, ReportedStep> standing = new TreeMap<>();
        for (Recorded recorded : history.of(WorkReported.class)) {
            WorkReported report = (WorkReported) recorded.entry();
            ReportedStep step = ReportedStep.ofId(report.step(), report.outcome());
            if (step != null) {
                standing.put(step.id(), step);
            }
        }
        return List.copyOf(standing.values());
    }

    /** The axles that the latest test of each brake shows. */
    static List<TestedAxle> testedAxles(Tests tests) {
        List<TestedAxle> tested = new ArrayList<>();
        for (BrakeSystem brake : BrakeSystem.values()) {
            tests.latestByAxle(brake, EnumSet.allOf(Stage.class))
                    .forEach((place, run) ->
                            tested.add(new TestedAxle(place, brake, run.stage(), run.imbalance(place))));
        }
        return tested;
    }

    /** How many final tests of the service brake each axle has seen. */
    static List<RetestRound> rounds(Tests tests) {
        return tests.latestByAxle(BrakeSystem.SERVICE, Tests.AFTER).keySet().stream()
                .filter(place -> !place.equals(Place.VEHICLE))
                .map(place -> new RetestRound(place, tests.rounds(place, BrakeSystem.SERVICE)))
                .toList();
    }

    /**
     * Deficiencies that still stand: those of the work's proof where the axle was tested after the work, else those of
     * the state in which the vehicle came.
     */
    static List<StandingDeficiency> deficiencies(List<Deficiency> asFound, List<Deficiency> afterWork, Tests tests) {
        List<StandingDeficiency> standing = new ArrayList<>();
        for (Deficiency deficiency : asFound) {
            boolean tested = deficiency.stage() != null
                    && tests.latestByAxle(brakeOf(deficiency, tests), Tests.AFTER)
                            .containsKey(deficiency.place().axlePlace());
            if (!tested) {
                standing.add(standing(deficiency));
            }
        }
        afterWork.forEach(deficiency -> standing.add(standing(deficiency)));
        return standing;
    }

    static List<StandingSymptom> symptoms(List<Symptom> symptoms, Tests tests) {
        return symptoms.stream()
                .filter(symptom -> !tests.latestByAxle(BrakeSystem.SERVICE, Tests.AFTER)
                        .containsKey(symptom.place().axlePlace()))
                .map(symptom ->
                        new StandingSymptom(symptom.code(), symptom.place(), symptom.strength(), symptom.shown()))
                .distinct()
                .toList();
    }

    private static BrakeSystem brakeOf(Deficiency deficiency, Tests tests) {
        return tests.runs().stream()
                .filter(run -> run.test().equals(deficiency.test()))
                .map(TestRun::brake)
                .findFirst()
                .orElse(BrakeSystem.SERVICE);
    }

    private static @Nullable BigDecimal share(Deficiency deficiency) {
        BigDecimal value = deficiency.value();
        Limit limit = deficiency.limit();
        return value == null || limit == null || limit.value().signum() == 0
                ? null
                : value.divide(limit.value(), MathContext.DECIMAL64);
    }

    private static StandingDeficiency standing(Deficiency deficiency) {
        Limit limit = deficiency.limit();
        return new StandingDeficiency(
                deficiency.code(),
                deficiency.place(),
                deficiency.severity(),
                share(deficiency),
                deficiency.shown() + ": "
                        + String.join(", ", deficiency.because().facts()),
                limit != null && limit.standing() == LimitStanding.POLICY);
    }
}
