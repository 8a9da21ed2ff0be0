package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.axlecause.diagnosis.Groups.Group;
import org.axlecause.diagnosis.Suspects.Suspect;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.Place;
import org.jspecify.annotations.Nullable;

/** Tells whether the doubt that is left about the causes of a group still matters to the work. */
final class ScopeDoubt {

    private ScopeDoubt() {}

    /** Whether one scope holds over the sets of causes, those aside that are only in the background. */
    static boolean sameScope(Group group, Possibilities possibilities, Settings settings) {
        BitSet none = new BitSet();
        List<BitSet> marks = new ArrayList<>();
        for (Suspect suspect : group.members()) {
            marks.add(suspect.probability >= settings.background() ? possibilities.scopeMarksOf(suspect.number) : none);
        }
        marks.add(none);
        Map<BitSet, double[]> scopes = new HashMap<>();
        double total = 0;
        double most = 0;
        WeighedSets sets = group.sets();
        for (int set = 0; set < sets.count(); set++) {
            BitSet scope =
                    union(union(marks.get(sets.first(set)), marks.get(sets.second(set))), marks.get(sets.third(set)));
            double[] held = scopes.computeIfAbsent(scope, empty -> new double[1]);
            held[0] += sets.share(set);
            total += sets.share(set);
            most = Math.max(most, held[0]);
        }
        return most >= settings.sameScopeAt() * total && !emptyIsMost(scopes.get(none), most);
    }

    private static boolean emptyIsMost(double @Nullable [] empty, double most) {
        return most <= (empty == null ? 0 : empty[0]);
    }

    /** What two causes make the scope; mostly what one of them alone makes it. */
    private static BitSet union(BitSet one, BitSet other) {
        if (one.isEmpty()) {
            return other;
        }
        if (other.isEmpty()) {
            return one;
        }
        BitSet both = (BitSet) one.clone();
        both.or(other);
        return both;
    }

    /** By candidate the numbers of what it makes the scope. */
    static List<BitSet> numberedMarks(CauseModel model, Layout layout, List<Candidate> candidates) {
        Map<String, Integer> numbers = new HashMap<>();
        List<BitSet> marks = new ArrayList<>();
        for (Candidate candidate : candidates) {
            BitSet own = new BitSet();
            marks(model.cause(candidate.code()), candidate.place(), layout)
                    .forEach(mark -> own.set(numbers.computeIfAbsent(mark, one -> numbers.size())));
            marks.add(own);
        }
        return marks;
    }

    private static List<String> marks(Cause cause, Place place, Layout layout) {
        return cause.signature().stream()
                .filter(mark -> !mark.isNextRun())
                .filter(mark -> mark.on() == null || mark.on() == layout.brakeOf(place))
                .map(mark -> mark.action() + " " + mark.item() + " " + at(mark, place, layout))
                .toList();
    }

    private static String at(ScopeMark mark, Place place, Layout layout) {
        return switch (mark.extent()) {
            case WHEEL -> place.wheel().toString();
            case AXLE -> place.axlePlace().toString();
            case CIRCUIT -> layout.at(Level.CIRCUIT, place).toString();
            case VEHICLE -> Place.VEHICLE.toString();
        };
    }
}
