package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import org.axlecause.facts.Because;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Place;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;

/** What was seen, what was looked for and is not there, and which findings name no clear place. */
final class Evidence {

    private final CauseModel model;
    private final Layout layout;
    private final TreeMap<Sign, List<Because>> seen = new TreeMap<>();
    private final Set<Sign> notThere = new HashSet<>();
    private final List<Finding> unclear = new ArrayList<>();
    private final Map<Component, Set<Place>> closed = new HashMap<>();

    Evidence(CauseModel model, Layout layout, DiagnosisInput input) {
        this.model = model;
        this.layout = layout;
        input.symptoms().forEach(this::take);
        input.observable().forEach(this::take);
        input.findings().forEach(this::take);
        notThere.removeAll(seen.keySet());
        seen.values().forEach(grounds -> grounds.sort(null));
    }

    /** What was seen, sorted, with the rules behind it. */
    NavigableMap<Sign, List<Because>> seen() {
        return seen;
    }

    /** What was looked for and is not there. */
    Set<Sign> notThere() {
        return notThere;
    }

    /** Parts that nobody could get at, with their wheels. */
    Map<Component, Set<Place>> closed() {
        return closed;
    }

    boolean sees(Sign sign) {
        return seen.containsKey(sign);
    }

    /** Whether the axle was run a second time, so that what shows there now has outlasted the first run. */
    boolean runAgain(Place axle) {
        Sign differs = new Sign(SymptomCode.TEST_NOT_REPEATABLE.toString(), false, axle);
        return sees(differs) || notThere.contains(differs);
    }

    /** Whether nobody has looked for it yet and the part can be got at. */
    boolean open(Sign sign) {
        return !sees(sign) && !notThere.contains(sign) && !(sign.finding() && isClosed(sign));
    }

    /** What is known of each sign of the layout, by its number. */
    Known[] known(Signs signs) {
        Known[] known = new Known[signs.count()];
        Arrays.fill(known, Known.OPEN);
        if (!closed.isEmpty()) {
            for (int sign = 0; sign < known.length; sign++) {
                if (signs.get(sign).finding() && isClosed(signs.get(sign))) {
                    known[sign] = Known.CLOSED;
                }
            }
        }
        mark(notThere, Known.MISSED, signs, known);
        mark(seen.keySet(), Known.SEEN, signs, known);
        return known;
    }

    private static void mark(Collection<Sign> all, Known as, Signs signs, Known[] known) {
        for (Sign sign : all) {
            int number = signs.numberOf(sign);
            if (number != Signs.NONE) {
                known[number] = as;
            }
        }
    }

    /** What is known of a sign. */
    enum Known {
        /** Nobody has looked for it yet. */
        OPEN,
        /** Nobody can look for it. */
        CLOSED,
        /** It was looked for and is not there. */
        MISSED,
        SEEN
    }

    /** Faults of parts of a wheel that were recorded without the wheel. */
    List<Finding> unclear() {
        return unclear;
    }

    private boolean isClosed(Sign sign) {
        Set<Place> places = closed.get(model.finding(sign.code()).component());
        return places != null && places.stream().anyMatch(place -> place.covers(sign.place()));
    }

    private void take(Symptom symptom) {
        for (Sign sign : signs(symptom.code(), symptom.place())) {
            seen.computeIfAbsent(sign, empty -> new ArrayList<>()).add(symptom.because());
        }
    }

    private void take(SymptomObservable observable) {
        notThere.addAll(signs(observable.code(), observable.place()));
    }

    private List<Sign> signs(SymptomCode code, Place place) {
        SymptomEvidence symptom = model.symptom(code);
        if (symptom.eachWheel() == null) {
            return layout.at(symptom.level(), place).stream()
                    .map(at -> new Sign(code.toString(), false, at))
                    .toList();
        }
        String wheelSymptom = symptom.eachWheel().toString();
        return layout.wheelsOf(place).stream()
                .map(wheel -> new Sign(wheelSymptom, false, wheel))
                .toList();
    }

    private void take(Finding finding) {
        if (finding.condition() == Condition.NOT_ACCESSIBLE) {
            if (finding.check() == null || model.looksAt(finding.check(), finding.component())) {
                closed.computeIfAbsent(finding.component(), component -> new HashSet<>())
                        .add(finding.place().wheel());
            }
            return;
        }
        boolean placed = false;
        boolean couldBePlaced = false;
        for (FindingEvidence evidence : model.findingsOn(finding.component())) {
            boolean shows = evidence.seenIn(finding);
            if (!shows && !evidence.ruledOutBy(finding)) {
                continue;
            }
            couldBePlaced |= shows && !finding.sound();
            for (Place place : placesOf(evidence, finding, shows)) {
                Sign sign = new Sign(evidence.code(), true, place);
                if (shows) {
                    placed = true;
                    seen.computeIfAbsent(sign, empty -> new ArrayList<>());
                } else {
                    notThere.add(sign);
                }
            }
        }
        if (couldBePlaced && !placed) {
            unclear.add(finding);
        }
    }

    private List<Place> placesOf(FindingEvidence evidence, Finding finding, boolean shows) {
        Place given = finding.place();
        List<Place> places =
                switch (evidence.level()) {
                    case WHEEL -> wheels(given, shows && !finding.sound());
                    case AXLE -> given.axle() == null ? List.of() : List.of(given.axlePlace());
                    case CIRCUIT ->
                        given.circuit() == null && !given.isWheel() ? List.of() : layout.at(Level.CIRCUIT, given);
                    case VEHICLE -> List.of(Place.VEHICLE);
                };
        return evidence.on() == null
                ? places
                : places.stream()
                        .filter(place -> layout.brakeOf(place) == evidence.on())
                        .toList();
    }

    /** A fault is at the wheel that is named; a sound axle is sound at both wheels. */
    private List<Place> wheels(Place given, boolean fault) {
        if (given.isWheel()) {
            return List.of(given.wheel());
        }
        return fault || given.axle() == null ? List.of() : layout.wheelsOf(given);
    }
}
