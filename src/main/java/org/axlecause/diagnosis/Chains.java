package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.TreeMap;
import java.util.TreeSet;
import org.axlecause.diagnosis.Suspects.Suspect;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Place;
import org.axlecause.facts.SymptomCode;
import org.jspecify.annotations.Nullable;

/** Finds the way from a cause over the edges of the cause model to what it shows, and what lies upstream of it. */
final class Chains {

    private static final int STATE_ASSUMED = 1;
    private static final int CAUSE_ASSUMED = 10;
    private static final Map<String, SymptomCode> SYMPTOMS = new HashMap<>();
    private static final Map<String, CauseCode> CAUSES = new HashMap<>();

    static {
        for (SymptomCode code : SymptomCode.values()) {
            SYMPTOMS.put(code.toString(), code);
        }
        for (CauseCode code : CauseCode.values()) {
            CAUSES.put(code.toString(), code);
        }
    }

    private final CauseModel model;
    private final Layout layout;
    private final Evidence evidence;
    private final Suspects suspects;
    private final Map<Suspect, Map<Step, Step>> ways = new HashMap<>();

    Chains(CauseModel model, Layout layout, Evidence evidence, Suspects suspects) {
        this.model = model;
        this.layout = layout;
        this.evidence = evidence;
        this.suspects = suspects;
    }

    static @Nullable CauseCode cause(String code) {
        return CAUSES.get(code);
    }

    static @Nullable SymptomCode symptom(String code) {
        return SYMPTOMS.get(code);
    }

    /** Confirmed causes from which the edges lead to this one, sorted; the most upstream ones only. */
    List<Suspect> confirmedAbove(Suspect suspect) {
        List<Suspect> above = suspects.all().stream()
                .filter(other -> other.certain && other != suspect && leadsTo(other, suspect))
                .toList();
        return above.stream()
                .filter(one -> above.stream().noneMatch(other -> other != one && leadsTo(other, one)))
                .toList();
    }

    /** Causes that could lie upstream and are neither proved nor ruled out, sorted. */
    List<Suspect> openAbove(Suspect suspect) {
        return suspects.all().stream()
                .filter(other -> !other.certain && other != suspect && leadsTo(other, suspect))
                .toList();
    }

    /** The chain of a cause: from the most upstream confirmed cause over this one to the symptom it shows most. */
    List<ChainNode> of(Suspect suspect) {
        List<Step> steps = new ArrayList<>();
        List<Suspect> above = confirmedAbove(suspect);
        if (!above.isEmpty()) {
            List<Step> upstream = path(above.get(0), step(suspect));
            steps.addAll(upstream.subList(0, upstream.size() - 1));
        }
        Step target = target(suspect);
        if (target == null) {
            steps.add(step(suspect));
        } else {
            steps.addAll(path(suspect, target));
        }
        return steps.stream().map(this::node).toList();
    }

    private boolean leadsTo(Suspect from, Suspect to) {
        return ways(from).containsKey(step(to));
    }

    private static Step step(Suspect suspect) {
        return new Step(suspect.candidate.code().toString(), suspect.candidate.place());
    }

    private @Nullable Step target(Suspect suspect) {
        Map<Step, Step> ways = ways(suspect);
        return suspect.seen.entrySet().stream()
                .filter(entry -> !entry.getKey().finding())
                .filter(entry -> ways.containsKey(step(entry.getKey())))
                .min(Map.Entry.<Sign, Double>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(entry -> SYMPTOMS.get(entry.getKey().code()), Comparator.naturalOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(entry -> step(entry.getKey()))
                .orElse(null);
    }

    private static Step step(Sign sign) {
        return new Step(sign.code(), sign.place());
    }

    private List<Step> path(Suspect from, Step to) {
        Map<Step, Step> ways = ways(from);
        List<Step> path = new ArrayList<>();
        Step at = to;
        while (at != null) {
            path.add(0, at);
            Step before = ways.get(at);
            at = before == null || before.equals(at) ? null : before;
        }
        return path;
    }

    /** By step that the edges reach from a cause, the step before it on the way that assumes least. */
    private Map<Step, Step> ways(Suspect suspect) {
        Map<Step, Step> known = ways.get(suspect);
        if (known != null) {
            return known;
        }
        Map<Step, Step> before = new HashMap<>();
        Map<Step, Integer> costs = new HashMap<>();
        PriorityQueue<Reached> open =
                new PriorityQueue<>(Comparator.comparingInt(Reached::cost).thenComparingInt(Reached::order));
        Step start = step(suspect);
        before.put(start, start);
        costs.put(start, 0);
        open.add(new Reached(start, 0, 0));
        int order = 0;
        while (!open.isEmpty()) {
            Reached at = open.remove();
            if (at.cost() > costs.getOrDefault(at.step(), Integer.MAX_VALUE)) {
                continue;
            }
            for (Edge edge : model.edgesFrom(at.step().code())) {
                Place from = at.step().place();
                for (Place place : layout.reached(from, edge.reach(), level(edge, from))) {
                    Step next = new Step(edge.to(), place);
                    int cost = at.cost() + cost(next);
                    if (cost < costs.getOrDefault(next, Integer.MAX_VALUE) && possible(next)) {
                        costs.put(next, cost);
                        before.put(next, at.step());
                        open.add(new Reached(next, cost, ++order));
                    }
                }
            }
        }
        ways.put(suspect, before);
        return before;
    }

    /** What a step assumes: a second cause that nobody proved counts for more than a state in between. */
    private int cost(Step step) {
        CauseCode cause = CAUSES.get(step.code());
        if (cause == null) {
            return STATE_ASSUMED;
        }
        Suspect suspect = suspects.of(cause, step.place());
        return suspect != null && suspect.certain ? STATE_ASSUMED : CAUSE_ASSUMED;
    }

    /** A cause that is ruled out or can't be on the vehicle breaks the way. */
    private boolean possible(Step step) {
        CauseCode cause = CAUSES.get(step.code());
        return cause == null || suspects.of(cause, step.place()) != null;
    }

    private Level level(Edge edge, Place from) {
        CauseCode cause = CAUSES.get(edge.to());
        if (cause != null) {
            return model.cause(cause).level();
        }
        SymptomCode symptom = SYMPTOMS.get(edge.to());
        return symptom == null
                ? edge.reach().level(Level.of(from))
                : model.symptom(symptom).level();
    }

    private ChainNode node(Step step) {
        CauseCode cause = CAUSES.get(step.code());
        if (cause != null) {
            Suspect suspect = suspects.of(cause, step.place());
            return new ChainNode(
                    step.code(), model.cause(cause).text(), step.place(), suspect != null && suspect.certain);
        }
        SymptomCode symptom = SYMPTOMS.get(step.code());
        if (symptom != null) {
            return new ChainNode(
                    step.code(),
                    model.symptom(symptom).text(),
                    step.place(),
                    evidence.sees(new Sign(step.code(), false, step.place())));
        }
        State state = model.state(step.code());
        boolean seen = state.seenBy().stream()
                .anyMatch(code -> layout.at(model.finding(code).level(), step.place()).stream()
                        .anyMatch(place -> evidence.sees(new Sign(code, true, place))));
        return new ChainNode(step.code(), state.text(), step.place(), seen);
    }

    /** Codes of suspects for a question, each once. */
    static String named(List<Suspect> suspects) {
        TreeMap<String, TreeSet<String>> places = new TreeMap<>();
        for (Suspect suspect : suspects) {
            places.computeIfAbsent(suspect.candidate.code().toString(), code -> new TreeSet<>())
                    .add(suspect.candidate.place().toString());
        }
        return places.entrySet().stream()
                .map(entry -> entry.getKey() + " (" + String.join(", ", entry.getValue()) + ")")
                .reduce((left, right) -> left + ", " + right)
                .orElse("");
    }

    /** A step with what the way to it assumes. */
    private record Reached(Step step, int cost, int order) {}

    /** A code at a place on the way. */
    private record Step(String code, Place place) {}
}
