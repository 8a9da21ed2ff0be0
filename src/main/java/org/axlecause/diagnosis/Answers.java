package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.axlecause.diagnosis.NextCheck.Answer;
import org.axlecause.diagnosis.NextCheck.Blank;
import org.axlecause.facts.Agent;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Place;
import org.axlecause.facts.Spot;
import org.jspecify.annotations.Nullable;

/** Writes what can come out of a check as events to fill in. */
final class Answers {

    private static final String NEWTON = "N";

    private final CauseModel model;
    private final Layout layout;

    Answers(CauseModel model, Layout layout) {
        this.model = model;
        this.layout = layout;
    }

    /** Findings that a check can make, those of sound parts included, in the order of the files. */
    List<String> findingsOf(Check check) {
        List<String> codes = new ArrayList<>();
        for (Check.Outcome outcome : check.outcomes()) {
            if (outcome.finding() != null) {
                codes.add(outcome.finding());
            }
        }
        for (Component component : check.sound()) {
            for (FindingEvidence finding : model.findingsOn(component)) {
                if (finding.conditions().contains(Condition.SOUND)
                        && (finding.checks().isEmpty() || finding.checks().contains(check.code()))) {
                    codes.add(finding.code());
                }
            }
        }
        return codes;
    }

    List<Answer> of(Check check, Place place) {
        List<Answer> answers = new ArrayList<>();
        if (check.rollerTest() != null) {
            answers.add(new Answer(
                    "the readings of the run", null, null, place, null, check.rollerTest(), readings(place)));
        }
        for (Check.Outcome outcome : check.outcomes()) {
            addOutcome(outcome, place, answers);
        }
        for (Component component : check.sound()) {
            answers.add(finding(
                    component + " sound", component, Condition.SOUND, place, null, measureOf(check, component)));
        }
        answers.add(finding("can't be got at", mainPart(check), Condition.NOT_ACCESSIBLE, place, null, null));
        return answers;
    }

    private void addOutcome(Check.Outcome outcome, Place place, List<Answer> answers) {
        if (outcome.finding() == null) {
            answers.add(finding(
                    outcome.component() + " " + outcome.condition(),
                    outcome.component(),
                    outcome.condition(),
                    place,
                    null,
                    outcome.measure()));
            return;
        }
        FindingEvidence evidence = model.finding(outcome.finding());
        for (Condition condition : evidence.conditions()) {
            for (Agent agent : agents(evidence)) {
                for (Place spot : spots(evidence, place)) {
                    answers.add(
                            finding(evidence.text(), evidence.component(), condition, spot, agent, outcome.measure()));
                }
            }
        }
    }

    private static List<@Nullable Agent> agents(FindingEvidence evidence) {
        List<@Nullable Agent> agents = new ArrayList<>();
        for (Agent agent : evidence.agents()) {
            if (agent != null && agent != Agent.UNKNOWN) {
                agents.add(agent);
            }
        }
        if (agents.isEmpty()) {
            agents.add(null);
        }
        return agents;
    }

    /** A seized or tight piston is asked for by its spot, so that one is told from both. */
    private List<Place> spots(FindingEvidence evidence, Place place) {
        boolean pistons = evidence.component() == Component.WHEEL_CYLINDER
                && (evidence.conditions().contains(Condition.SEIZED)
                        || evidence.conditions().contains(Condition.TIGHT));
        Axle axle = layout.axleOf(place);
        if (!pistons || axle == null || place.axle() == null || place.side() == null) {
            boolean perPlace = place.equals(Place.VEHICLE)
                    && (evidence.level() == Level.WHEEL || evidence.level() == Level.CIRCUIT);
            return perPlace
                    ? layout.places(evidence.level())
                    : List.of(evidence.level() == Level.VEHICLE ? Place.VEHICLE : place);
        }
        List<Spot> spots = axle.brake() == BrakeLayout.DRUM_DUO_SERVO
                ? List.of(Spot.PRIMARY, Spot.SECONDARY)
                : axle.brake() == BrakeLayout.DRUM_DUPLEX
                        ? List.of(Spot.UPPER, Spot.LOWER)
                        : List.of(Spot.LEADING, Spot.TRAILING);
        return spots.stream()
                .map(spot -> Place.ofSpot(place.axle(), place.side(), spot))
                .toList();
    }

    private static @Nullable MeasuredQuantity measureOf(Check check, Component component) {
        return check.outcomes().stream()
                .filter(outcome -> outcome.component() == component && outcome.measure() != null)
                .map(Check.Outcome::measure)
                .findFirst()
                .orElse(null);
    }

    private static Component mainPart(Check check) {
        if (!check.sound().isEmpty()) {
            return check.sound().get(0);
        }
        return check.outcomes().isEmpty()
                ? Component.TYRE
                : check.outcomes().get(0).component();
    }

    private Answer finding(
            String says,
            Component component,
            Condition condition,
            Place place,
            @Nullable Agent agent,
            @Nullable MeasuredQuantity measure) {
        List<Blank> blanks = measure == null
                ? List.of()
                : List.of(new Blank(camel(measure.toString()), measure, model.unitOf(measure)));
        return new Answer(says, component, condition, place, agent, null, blanks);
    }

    private List<Blank> readings(Place place) {
        List<Blank> blanks = new ArrayList<>();
        for (Place wheel : layout.wheelsOf(place)) {
            for (String reading : List.of("peak", "drag")) {
                blanks.add(new Blank(camel(reading + " " + wheel), null, NEWTON));
            }
        }
        return blanks;
    }

    private static String camel(String words) {
        StringBuilder camel = new StringBuilder();
        for (String word : words.split("[ -]", -1)) {
            camel.append(camel.isEmpty() ? word : word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1));
        }
        return camel.toString();
    }
}
