package org.axlecause.policy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import org.axlecause.policy.PolicyViews.DifferenceView;
import org.jspecify.annotations.Nullable;

/** Sets two documents of a policy side by side, layer by layer. */
final class ComparePolicies {

    private final List<DifferenceView> table = new ArrayList<>();
    private final List<String> words = new ArrayList<>();

    private ComparePolicies() {}

    static ComparePolicies of(PolicyDocument before, PolicyDocument after) {
        ComparePolicies comparison = new ComparePolicies();
        comparison.scope(before, after);
        comparison.layer("chain", before.ofChain(), after.ofChain());
        comparison.layers("region", before.ofRegions(), after.ofRegions());
        comparison.layers("site", before.ofSites(), after.ofSites());
        if (comparison.words.isEmpty()) {
            comparison.words.add("The two set the same.");
        }
        return comparison;
    }

    List<DifferenceView> table() {
        return List.copyOf(table);
    }

    List<String> words() {
        return List.copyOf(words);
    }

    private void scope(PolicyDocument before, PolicyDocument after) {
        if (!Objects.equals(before.covers(), after.covers())) {
            words.add("Judges " + sites(after) + " instead of " + sites(before) + ".");
        }
        if (before.wantsTwoPersons() != after.wantsTwoPersons()) {
            words.add(
                    after.wantsTwoPersons()
                            ? "Must be published by somebody other than its authors."
                            : "May be published by one of its authors.");
        }
    }

    private static String sites(PolicyDocument document) {
        return document.covers() == null ? "all sites" : "the sites " + String.join(", ", document.covers());
    }

    private void layers(String kind, Map<String, List<ClauseWanted>> before, Map<String, List<ClauseWanted>> after) {
        TreeSet<String> codes = new TreeSet<>(before.keySet());
        codes.addAll(after.keySet());
        codes.forEach(code ->
                layer(kind + " " + code, before.getOrDefault(code, List.of()), after.getOrDefault(code, List.of())));
    }

    private void layer(String layer, List<ClauseWanted> before, List<ClauseWanted> after) {
        Map<String, ClauseWanted> old = byKey(before);
        Map<String, ClauseWanted> now = byKey(after);
        TreeSet<String> keys = new TreeSet<>(old.keySet());
        keys.addAll(now.keySet());
        keys.forEach(key -> clause(layer, key, old.get(key), now.get(key)));
    }

    private void clause(String layer, String key, @Nullable ClauseWanted before, @Nullable ClauseWanted after) {
        String was = says(before);
        String is = says(after);
        if (Objects.equals(was, is)) {
            return;
        }
        ClauseWanted either = after == null ? Objects.requireNonNull(before) : after;
        ClauseWord word = Objects.requireNonNull(Vocabulary.released().find(either.clause()), key);
        String change = was == null ? "added" : is == null ? "removed" : "changed";
        table.add(new DifferenceView(layer, key, word.means(), change, was, is));
        String of = word.isRepeated() ? " (" + either.about() + ")" : "";
        words.add("For the " + layer + ", " + word.means() + of + ": "
                + switch (change) {
                    case "added" -> is + ", which it left to the layer above before";
                    case "removed" -> "left to the layer above; it was " + was;
                    default -> is + "; it was " + was;
                }
                + ".");
    }

    private static @Nullable String says(@Nullable ClauseWanted clause) {
        return clause == null ? null : clause.says() + (clause.isLocked() ? ", locked" : "");
    }

    private static Map<String, ClauseWanted> byKey(List<ClauseWanted> clauses) {
        Map<String, ClauseWanted> byKey = new TreeMap<>();
        clauses.forEach(clause -> byKey.put(clause.key(), clause));
        return byKey;
    }
}
