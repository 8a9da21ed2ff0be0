package org.axlecause.diagnosis;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.axlecause.diagnosis.Groups.Group;
import org.axlecause.diagnosis.Suspects.Suspect;
import org.axlecause.facts.Place;

/** Tells whether the doubt that is left about the causes of a group still matters to the work. */
final class ScopeDoubt {

    private ScopeDoubt() {}

    /** Whether one scope holds over the sets of causes, those aside that are only in the background. */
    static boolean sameScope(Group group, Layout layout, Settings settings) {
        Map<Set<String>, Double> scopes = new HashMap<>();
        double total = 0;
        double most = 0;
        for (Network.WeighedSet set : group.sets()) {
            TreeSet<String> scope = new TreeSet<>();
            for (int member : new int[] {set.first(), set.second(), set.third()}) {
                if (member >= 0 && group.members().get(member).probability >= settings.background()) {
                    scope.addAll(marks(group.members().get(member), layout));
                }
            }
            total += set.share();
            most = Math.max(most, scopes.merge(scope, set.share(), Double::sum));
        }
        return most >= settings.sameScopeAt() * total && !emptyIsMost(scopes, most);
    }

    private static boolean emptyIsMost(Map<Set<String>, Double> scopes, double most) {
        return scopes.getOrDefault(new TreeSet<>(), 0.0) >= most;
    }

    private static List<String> marks(Suspect suspect, Layout layout) {
        Place place = suspect.candidate.place();
        return suspect.cause.signature().stream()
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
