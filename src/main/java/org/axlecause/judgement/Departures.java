package org.axlecause.judgement;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Departure;
import org.axlecause.facts.DepartureRecorded;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Place;
import org.axlecause.facts.Policy;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Recorded;
import org.jspecify.annotations.Nullable;

/**
 * The departures of a case, and what comes of them: one from an open clause acts, one from a locked clause is kept, shown
 * and without effect.
 *
 * @param acting those that act
 * @param shown all of them, in the order that counts
 * @param questions what is asked about those without effect
 */
public record Departures(List<Departure> acting, List<ShownDeparture> shown, List<ShownQuestion> questions) {

    static Departures of(StandingHistory history, Policy policy) {
        List<Departure> acting = new ArrayList<>();
        List<ShownDeparture> shown = new ArrayList<>();
        List<ShownQuestion> questions = new ArrayList<>();
        for (Recorded recorded : history.of(DepartureRecorded.class)) {
            DepartureRecorded departure = (DepartureRecorded) recorded.entry();
            String line = departure.line();
            LineKey key = line == null ? null : LineKey.ofId(line);
            Optional<String> refusal = line != null && key == null
                    ? Optional.of("there is no line '" + line + "'")
                    : whyNot(departure.clause(), policy);
            if (refusal.isEmpty()) {
                acting.add(new Departure(departure.clause(), key));
            }
            refusal.ifPresent(why -> questions.add(question(recorded, departure, key, why)));
            shown.add(
                    new ShownDeparture(recorded.id(), departure.clause(), line, departure.reason(), refusal.isEmpty()));
        }
        return new Departures(List.copyOf(acting), List.copyOf(shown), List.copyOf(questions));
    }

    /** Why nobody may depart from that clause under that policy; empty where a site may. */
    public static Optional<String> whyNot(ClauseCode clause, Policy policy) {
        if (policy.locked().contains(clause)) {
            return Optional.of("the clause '" + clause + "' is locked by version " + policy.version()
                    + " of the policy '" + policy.name() + "'");
        }
        return clause.isOfLines()
                ? Optional.empty()
                : Optional.of("the clause '" + clause
                        + "' decides a bound, proof or advice and no line, so that nobody departs from it");
    }

    private static ShownQuestion question(
            Recorded recorded, DepartureRecorded departure, @Nullable LineKey line, String why) {
        return HistoryQuestions.question(
                QuestionCode.DEPARTURE_WITHOUT_EFFECT,
                line == null ? Place.VEHICLE : line.place(),
                recorded.id() + " departs from the clause '" + departure.clause() + "' and has no effect: " + why + ".",
                "Withdraw it and follow the policy, or ask the chain to unlock the clause.");
    }
}
