package org.axlecause.repair;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.axlecause.facts.Place;
import org.axlecause.facts.Side;
import org.axlecause.facts.StepCode;

/**
 * Brings steps into an order in which each comes after what it needs. Needs that the plan lacks pass their own needs on,
 * so that the order holds across them. The right side is taken apart after the left one is whole again, as its pattern,
 * unless a step of the whole axle needs both sides apart.
 */
final class StepOrder {

    private final RepairCatalogue catalogue;
    private final Map<StepCode, List<Key>> byCode = new HashMap<>();
    private final Map<StepCode, Integer> ranks = new HashMap<>();

    /**
     * A step at a place.
     *
     * @param step the step
     * @param place where
     * @param id its identifier in the plan
     */
    record Key(StepCode step, Place place, String id) {

        Key(StepCode step, Place place) {
            this(step, place, step + "-" + place.id());
        }
    }

    StepOrder(RepairCatalogue catalogue, Iterable<Key> steps) {
        this.catalogue = catalogue;
        steps.forEach(key ->
                byCode.computeIfAbsent(key.step(), code -> new ArrayList<>()).add(key));
        byCode.keySet().forEach(this::rank);
    }

    /** The steps in their order, each with the ids of the steps that it comes right after. */
    Map<Key, List<String>> ordered() {
        Map<Key, Set<Key>> waits = new HashMap<>();
        byCode.values().forEach(keys -> keys.forEach(key -> waits.put(key, before(key))));
        keepPatterns(waits);
        Comparator<Key> order = Comparator.comparing((Key key) -> rank(key.step()))
                .thenComparing(Key::place)
                .thenComparing(Key::step);
        Map<Key, List<String>> ordered = new LinkedHashMap<>();
        Map<Key, Set<Key>> earlier = new HashMap<>();
        List<Key> open = new ArrayList<>(waits.keySet());
        open.sort(order);
        while (!open.isEmpty()) {
            Key next = open.stream()
                    .filter(key -> ordered.keySet().containsAll(waits.getOrDefault(key, Set.of())))
                    .findFirst()
                    .orElseThrow(() -> new IllegalStateException("The catalogue of steps orders these in a circle: "
                            + waits.keySet().stream().map(Key::id).sorted().toList()));
            open.remove(next);
            Set<Key> direct = waits.getOrDefault(next, Set.of());
            Set<Key> passedOn = new HashSet<>();
            direct.forEach(before -> passedOn.addAll(earlier.getOrDefault(before, Set.of())));
            ordered.put(
                    next,
                    direct.stream()
                            .filter(before -> !passedOn.contains(before))
                            .map(Key::id)
                            .toList());
            passedOn.addAll(direct);
            earlier.put(next, passedOn);
        }
        return ordered;
    }

    private Set<Key> before(Key key) {
        Set<Key> before = new TreeSet<>(Comparator.comparing(Key::id));
        collect(key, catalogue.step(key.step()).needs(), EnumSet.noneOf(StepCode.class), before);
        return before;
    }

    private void keepPatterns(Map<Key, Set<Key>> waits) {
        waits.entrySet().stream()
                .filter(entry -> entry.getKey().place().side() == Side.RIGHT)
                .sorted(Comparator.comparing(entry -> entry.getKey().id()))
                .forEach(entry -> catalogue.step(entry.getKey().step()).keepsPattern().stream()
                        .flatMap(pattern -> present(pattern).stream())
                        .filter(other ->
                                other.place().equals(entry.getKey().place().opposite()))
                        .filter(other -> !waitsFor(other, entry.getKey(), waits, new HashSet<>()))
                        .forEach(entry.getValue()::add));
    }

    private static boolean waitsFor(Key key, Key other, Map<Key, Set<Key>> waits, Set<Key> met) {
        if (key.equals(other)) {
            return true;
        }
        return met.add(key)
                && waits.getOrDefault(key, Set.of()).stream().anyMatch(before -> waitsFor(before, other, waits, met));
    }

    private void collect(Key key, List<StepCode> needs, Set<StepCode> met, Set<Key> before) {
        for (StepCode need : needs) {
            if (met.add(need)) {
                List<Key> related = present(need).stream()
                        .filter(other -> related(key.place(), other.place()))
                        .toList();
                before.addAll(related);
                if (related.isEmpty()) {
                    collect(key, catalogue.step(need).needs(), met, before);
                }
            }
        }
    }

    private List<Key> present(StepCode code) {
        return byCode.getOrDefault(code, List.of());
    }

    /** Whether work at one place can depend on work at the other: a circuit or the vehicle on everything. */
    static boolean related(Place one, Place other) {
        if (one.axle() == null || other.axle() == null) {
            return true;
        }
        return one.sameAxle(other) && (one.side() == null || other.side() == null || one.side() == other.side());
    }

    /** How many needs lie before a step in the longest chain of the catalogue. */
    private int rank(StepCode code) {
        Integer known = ranks.get(code);
        if (known != null) {
            return known;
        }
        int rank = 0;
        for (StepCode need : catalogue.step(code).needs()) {
            rank = Math.max(rank, rank(need) + 1);
        }
        ranks.put(code, rank);
        return rank;
    }
}
