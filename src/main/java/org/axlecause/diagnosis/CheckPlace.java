package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.axlecause.facts.Axle;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Place;
import org.axlecause.facts.SymptomCode;
import org.jspecify.annotations.Nullable;

/**
 * A check at a place of a layout, with all about it that depends on the layout alone.
 *
 * @param check the check
 * @param place where
 * @param signs what it could tell of, sorted
 * @param firstShown what tells whether it was made, where it comes before all others
 * @param firstAfter what it comes first after
 * @param needs sign without which it has no sense; null where it always has
 * @param settles causes that its answers can prove or rule out, sorted
 * @param answers what can come out
 */
record CheckPlace(
        Check check,
        Place place,
        List<Sign> signs,
        List<Sign> firstShown,
        List<Sign> firstAfter,
        @Nullable Sign needs,
        List<Candidate> settles,
        List<NextCheck.Answer> answers) {

    /** The check there; what it settles is looked for among the candidates. */
    static CheckPlace of(
            CauseModel model, Layout layout, Answers answers, Check check, Place place, List<Candidate> candidates) {
        SymptomCode needed = check.needsSymptom();
        return new CheckPlace(
                check,
                place,
                signs(model, layout, check, place),
                List.copyOf(
                        symptoms(model, layout, check.shows().stream().limit(1).toList(), place)),
                List.copyOf(symptoms(model, layout, check.firstAfter(), place)),
                needed == null ? null : new Sign(needed.toString(), false, place),
                settles(model, layout, answers.findingsOf(check), place, candidates),
                answers.of(check, place));
    }

    /** Whether the brakes of the place, or of any axle where it is at none, are ones that the check is made on. */
    static boolean fits(Layout layout, Check check, Place place) {
        if (place.axle() == null) {
            return layout.vehicle().axles().stream().anyMatch(check::fits);
        }
        Axle axle = layout.axleOf(place);
        return axle != null && check.fits(axle);
    }

    boolean is(Check other, Place where) {
        return check.code() == other.code() && place.equals(where);
    }

    private static List<Sign> signs(CauseModel model, Layout layout, Check check, Place place) {
        Set<Sign> signs = symptoms(model, layout, check.shows(), place);
        for (Check.Outcome outcome : check.outcomes()) {
            if (outcome.symptom() != null) {
                signs.addAll(symptoms(model, layout, List.of(outcome.symptom()), place));
            } else if (outcome.finding() != null) {
                FindingEvidence finding = model.finding(outcome.finding());
                for (Place at : layout.at(finding.level(), place)) {
                    if (finding.on() == null || finding.on() == layout.brakeOf(at)) {
                        signs.add(new Sign(finding.code(), true, at));
                    }
                }
            }
        }
        return List.copyOf(signs);
    }

    private static Set<Sign> symptoms(CauseModel model, Layout layout, Collection<SymptomCode> symptoms, Place place) {
        Set<Sign> signs = new TreeSet<>();
        for (SymptomCode symptom : symptoms) {
            for (Place at : layout.at(model.symptom(symptom).level(), place)) {
                signs.add(new Sign(symptom.toString(), false, at));
            }
        }
        return signs;
    }

    private static List<Candidate> settles(
            CauseModel model, Layout layout, List<String> findings, Place place, List<Candidate> candidates) {
        Set<Candidate> settled = new TreeSet<>();
        for (String finding : findings) {
            Set<CauseCode> causes = model.causesSettledBy(finding);
            List<Place> found = layout.at(model.finding(finding).level(), place);
            for (Candidate candidate : causes.isEmpty() ? List.<Candidate>of() : candidates) {
                if (causes.contains(candidate.code())
                        && candidate.place().meets(place)
                        && found.stream().anyMatch(at -> at.meets(candidate.place()))) {
                    settled.add(candidate);
                }
            }
        }
        return List.copyOf(new ArrayList<>(settled));
    }
}
