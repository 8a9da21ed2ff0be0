package org.axlecause.judgement;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.CaseClosed;
import org.axlecause.facts.EntryWithdrawn;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.JudgedCause;
import org.axlecause.facts.ObstacleMet;
import org.axlecause.facts.Place;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PolicyAdopted;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Vehicle;
import org.jspecify.annotations.Nullable;

/** Questions that the history itself raises: what is missing, what contradicts the vehicle, what takes nothing back. */
final class HistoryQuestions {

    private HistoryQuestions() {}

    static List<ShownQuestion> of(StandingHistory history, @Nullable Presentation presentation, Policy policy) {
        List<ShownQuestion> questions = new ArrayList<>();
        if (presentation == null) {
            questions.add(question(
                    QuestionCode.VEHICLE_MISSING,
                    Place.VEHICLE,
                    "No vehicle has been presented for this case; what was sent is kept and nothing is concluded.",
                    "Send vehicle.presented for this case."));
        } else {
            for (Recorded other : presentation.others()) {
                questions.add(question(
                        QuestionCode.PRESENTATIONS_DIFFER,
                        Place.VEHICLE,
                        "The presentation " + other.id() + " differs in site or vehicle from "
                                + presentation.entry().id() + ", by which the case is judged.",
                        "Withdraw the wrong one with entry.withdrawn."));
            }
            questions.addAll(unknownAxles(history, presentation.content().vehicle()));
        }
        for (Recorded idle : history.idle()) {
            EntryWithdrawn withdrawal = (EntryWithdrawn) idle.entry();
            questions.add(question(
                    QuestionCode.WITHDRAWAL_TARGET_MISSING,
                    Place.VEHICLE,
                    idle.id() + " takes back " + withdrawal.target()
                            + ", which is no entry of this case that can be taken back.",
                    "Send the entry it aims at, or correct source and id; a withdrawal can't be taken back, and an"
                            + " entry of another case is withdrawn there."));
        }
        adopted(history, policy).ifPresent(questions::add);
        return questions;
    }

    /** The policy that was adopted last, where the case is not judged by it. */
    private static Optional<ShownQuestion> adopted(StandingHistory history, Policy policy) {
        List<Recorded> adoptions = history.of(PolicyAdopted.class);
        if (adoptions.isEmpty()) {
            return Optional.empty();
        }
        Recorded last = adoptions.get(adoptions.size() - 1);
        PolicyAdopted adopted = (PolicyAdopted) last.entry();
        if (adopted.policy().equals(policy.name()) && adopted.version() == policy.version()) {
            return Optional.empty();
        }
        return Optional.of(question(
                QuestionCode.POLICY_UNKNOWN,
                Place.VEHICLE,
                last.id() + " adopts version " + adopted.version() + " of the policy '" + adopted.policy()
                        + "', which is not published here; the case is judged by version " + policy.version() + " of '"
                        + policy.name() + "'.",
                "Withdraw the entry, or send policy.adopted with the name and version of a published policy."));
    }

    /** Axles that entries speak of and the vehicle does not have. */
    private static List<ShownQuestion> unknownAxles(StandingHistory history, Vehicle vehicle) {
        List<ShownQuestion> questions = new ArrayList<>();
        for (Recorded recorded : history.entries()) {
            Set<Integer> unknown = new TreeSet<>();
            axlesOf(recorded).filter(axle -> vehicle.axle(axle) == null).forEach(unknown::add);
            for (int axle : unknown) {
                questions.add(
                        question(
                                QuestionCode.AXLE_UNKNOWN,
                                Place.ofAxle(axle),
                                recorded.id() + " speaks of axle " + axle + "; the presented vehicle has "
                                        + vehicle.axles().size() + ". What it says there is kept and not judged.",
                                "Withdraw the entry and send it for the right axle, or present the vehicle with all its axles."));
            }
        }
        return questions;
    }

    private static Stream<Integer> axlesOf(Recorded recorded) {
        if (recorded.entry() instanceof RollerTestRecorded test) {
            return test.axles().stream().map(AxleReading::number);
        }
        Stream<Place> places = Stream.empty();
        if (recorded.entry() instanceof FindingRecorded finding) {
            places = Stream.of(finding.place());
        } else if (recorded.entry() instanceof ObstacleMet obstacle) {
            places = Stream.of(obstacle.place());
        } else if (recorded.entry() instanceof CaseClosed closed) {
            places = closed.confirmedCauses().stream().map(JudgedCause::place);
        }
        return places.flatMap(place -> Stream.ofNullable(place.axle()));
    }

    static ShownQuestion question(QuestionCode code, Place place, String says, String resolve) {
        return new ShownQuestion(code, place, says, resolve, List.of());
    }
}
