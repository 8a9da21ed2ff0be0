package org.axlecause.judgement;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.axlecause.diagnosis.Diagnosis;
import org.axlecause.diagnosis.NextCheck;
import org.axlecause.diagnosis.RankedCause;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.Entry;
import org.axlecause.facts.Figure;
import org.axlecause.facts.Finding;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.RecentWork;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RoadTestRecorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Stage;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.VehiclePresented;
import org.jspecify.annotations.Nullable;

/**
 * A case whose final test shows no cure, seen as a case of its own: the final tests take the place of those before the
 * work, what the work has mended no longer speaks, and the work itself is recent.
 */
final class Reopened {

    private Reopened() {}

    /** The history with the final tests as the tests to find causes by. */
    static StandingHistory history(StandingHistory history) {
        List<Recorded> entries = new ArrayList<>();
        for (Recorded recorded : history.entries()) {
            Stage stage = stage(recorded.entry());
            if (stage == null) {
                entries.add(recorded);
            } else if (stage == Stage.FINAL) {
                entries.add(new Recorded(
                        recorded.id(),
                        recorded.time(),
                        asDiagnostic(recorded.entry()),
                        asDiagnostic(recorded.figures())));
            }
        }
        return new StandingHistory(entries, history.withdrawn(), history.idle());
    }

    /** The presentation with the work that was done as the latest of its recent work. */
    static Presentation presentation(Presentation presentation, List<LineDone> done) {
        VehiclePresented content = presentation.content();
        Stream<RecentWork> work = done.stream()
                .filter(LineDone::isChangingForce)
                .map(line -> new RecentWork(line.line().item(), line.line().place(), null, BigDecimal.ZERO));
        return new Presentation(
                presentation.entry(),
                new VehiclePresented(
                        content.site(),
                        content.reason(),
                        content.previousCase(),
                        content.regime(),
                        content.vehicle(),
                        content.notice(),
                        content.complaints(),
                        Stream.concat(content.recentWork().stream(), work).toList()),
                presentation.day(),
                presentation.others());
    }

    /** The findings that the work has not ended. */
    static List<Finding> findings(List<Finding> findings, List<LineDone> done) {
        return findings.stream()
                .filter(finding -> done.stream().noneMatch(line -> mends(line, finding)))
                .toList();
    }

    /** Says of each axle that was not cured what is lowered and what to look at next. */
    static List<ShownQuestion> questions(Set<Place> notCured, Diagnosis before, Diagnosis now) {
        List<ShownQuestion> questions = new ArrayList<>();
        for (Place axle : notCured) {
            List<String> lowered = before.causes().stream()
                    .filter(cause -> cause.standing() == CauseStanding.CONFIRMED
                            && cause.place().sameAxle(axle))
                    .filter(cause -> now.causes().stream().noneMatch(other -> isStillConfirmed(cause, other)))
                    .map(cause -> cause.code() + " at " + cause.place())
                    .toList();
            questions.add(HistoryQuestions.question(
                    QuestionCode.REPAIR_DID_NOT_CURE,
                    axle,
                    "The final test of " + axle
                            + " is not clearly better than the one on arrival. The causes are weighed anew by"
                            + " it, and what the work has mended counts no longer"
                            + (lowered.isEmpty() ? "." : "; less likely now: " + String.join(", ", lowered) + "."),
                    now.nextChecks().stream()
                            .findFirst()
                            .map(next -> "Do not adjust until it passes. Make the next check: " + words(next) + ".")
                            .orElse("Do not adjust until it passes. Look over the whole axle again and record what is"
                                    + " found, sound or not.")));
        }
        return questions;
    }

    private static String words(NextCheck next) {
        return next.check() + " at " + next.place();
    }

    private static boolean isStillConfirmed(RankedCause cause, RankedCause other) {
        return other.code() == cause.code()
                && other.place().equals(cause.place())
                && other.standing() == CauseStanding.CONFIRMED;
    }

    private static boolean mends(LineDone line, Finding finding) {
        PartState state = new PartState(
                finding.entry(),
                FindingStage.AS_FOUND,
                finding.component(),
                finding.condition(),
                finding.place(),
                finding.extent(),
                finding.agent(),
                finding.measurement());
        return state.isFault() && line.mends(state.item(), state.place());
    }

    private static @Nullable Stage stage(Entry entry) {
        if (entry instanceof RollerTestRecorded roller) {
            return roller.stage();
        }
        return entry instanceof RoadTestRecorded road ? road.stage() : null;
    }

    private static Entry asDiagnostic(Entry entry) {
        if (entry instanceof RollerTestRecorded roller) {
            return new RollerTestRecorded(
                    Stage.DIAGNOSTIC,
                    roller.brake(),
                    roller.axles(),
                    roller.tester(),
                    roller.surface(),
                    roller.pedalForce(),
                    roller.conditions());
        }
        RoadTestRecorded road = (RoadTestRecorded) entry;
        return new RoadTestRecorded(
                Stage.DIAGNOSTIC,
                road.brake(),
                road.initialSpeed(),
                road.meanFullyDevelopedDeceleration(),
                road.beginSpeed(),
                road.endSpeed(),
                road.beginDistance(),
                road.endDistance(),
                road.stoppingDistance(),
                road.deviation());
    }

    private static @Nullable TestFigures asDiagnostic(@Nullable TestFigures kept) {
        return kept == null
                ? null
                : new TestFigures(
                        kept.test(),
                        kept.figures().stream().map(Reopened::asDiagnostic).toList(),
                        kept.shapes(),
                        kept.doubts());
    }

    private static Figure asDiagnostic(Figure figure) {
        return new Figure(
                figure.kind(),
                figure.test(),
                Stage.DIAGNOSTIC,
                figure.brake(),
                figure.place(),
                figure.value(),
                figure.uncertainty(),
                figure.observable(),
                figure.basis());
    }
}
