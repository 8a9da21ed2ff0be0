package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.axlecause.diagnosis.Groups.Group;
import org.axlecause.diagnosis.Suspects.Suspect;
import org.axlecause.facts.Place;

/** Tells whether the doubt that is left about the causes of a group still matters to the work. */
final class ScopeDoubt {

    private ScopeDoubt() {}

    /** Whether one scope holds over the sets of causes, those aside that are only in the background. */
    static boolean sameScope(Group group, Layout layout, Settings settings) {
        List<BitSet> marks = numberedMarks(group, layout, settings);
        Map<BitSet, Double> scopes = new HashMap<>();
        double total = 0;
        double most = 0;
        for (Network.WeighedSet set : group.sets()) {
            BitSet scope = new BitSet();
            add(set.first(), marks, scope);
            add(set.second(), marks, scope);
            add(set.third(), marks, scope);
            total += set.share();
            most = Math.max(most, scopes.merge(scope, set.share(), Double::sum));
        }
        return most >= settings.sameScopeAt() * total && !emptyIsMost(scopes, most);
    }

    private static boolean emptyIsMost(Map<BitSet, Double> scopes, double most) {
        return scopes.getOrDefault(new BitSet(), 0.0) >= most;
    }

    private static void add(int member, List<BitSet> marks, BitSet scope) {
        if (member >= 0) {
            scope.or(marks.get(member));
        }
    }

    /** By member the numbers of what it makes the scope; nothing for one in the background. */
    private static List<BitSet> numberedMarks(Group group, Layout layout, Settings settings) {
        Map<String, Integer> numbers = new HashMap<>();
        List<BitSet> marks = new ArrayList<>();
        for (Suspect suspect : group.members()) {
            BitSet own = new BitSet();
            if (suspect.probability >= settings.background()) {
                marks(suspect, layout).forEach(mark -> own.set(numbers.computeIfAbsent(mark, one -> numbers.size())));
            }
            marks.add(own);
        }
        return marks;
    }

    private static List<String> marks(Suspect suspect, Layout layout) {
        Place place = suspect.candidate.place();
        return suspect.cause.signature().stream()
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
