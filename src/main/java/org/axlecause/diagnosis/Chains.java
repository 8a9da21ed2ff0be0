package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.axlecause.diagnosis.Steps.Step;
import org.axlecause.diagnosis.Suspects.Suspect;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.SymptomCode;
import org.jspecify.annotations.Nullable;

/** Finds the way from a cause over the edges of the cause model to what it shows, and what lies upstream of it. */
final class Chains {

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
    private final Possibilities possibilities;
    private final Evidence evidence;
    private final Suspects suspects;
    private final Steps steps;
    private final boolean undisturbed;
    private final List<Suspect> certain;
    private final Map<Suspect, int[]> ways = new HashMap<>();

    Chains(CauseModel model, Layout layout, Possibilities possibilities, Evidence evidence, Suspects suspects) {
        this.model = model;
        this.layout = layout;
        this.evidence = evidence;
        this.suspects = suspects;
        this.possibilities = possibilities;
        this.steps = possibilities.steps();
        this.undisturbed = suspects.undisturbed();
        this.certain =
                suspects.all().stream().filter(suspect -> suspect.certain).toList();
    }

    static @Nullable CauseCode cause(String code) {
        return CAUSES.get(code);
    }

    static @Nullable SymptomCode symptom(String code) {
        return SYMPTOMS.get(code);
    }

    /** Confirmed causes from which the edges lead to this one, sorted; the most upstream ones only. */
    List<Suspect> confirmedAbove(Suspect suspect) {
        if (certain.isEmpty()) {
            return List.of();
        }
        List<Suspect> above = certain.stream()
                .filter(other -> other != suspect && leadsTo(other, suspect))
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
        List<Integer> chain = new ArrayList<>();
        List<Suspect> above = confirmedAbove(suspect);
        if (!above.isEmpty()) {
            List<Integer> upstream = path(above.get(0), suspect.number);
            chain.addAll(upstream.subList(0, upstream.size() - 1));
        }
        int target = target(suspect);
        if (target == Steps.NONE) {
            chain.add(suspect.number);
        } else {
            chain.addAll(path(suspect, target));
        }
        return chain.stream().map(step -> node(steps.get(step))).toList();
    }

    private boolean leadsTo(Suspect from, Suspect to) {
        return ways(from)[to.number] != Steps.NONE;
    }

    private int target(Suspect suspect) {
        int[] ways = ways(suspect);
        int target = Steps.NONE;
        double most = 0;
        for (int at = 0; at < suspect.seen.count(); at++) {
            Sign sign = possibilities.signs().get(suspect.seen.sign(at));
            double strength = suspect.seen.value(at);
            int step = sign.finding() ? Steps.NONE : steps.numberOf(new Step(sign.code(), sign.place()));
            if (step != Steps.NONE && ways[step] != Steps.NONE) {
                boolean stronger =
                        strength > most || (strength == most && target != Steps.NONE && isBefore(step, target));
                if (target == Steps.NONE || stronger) {
                    target = step;
                    most = strength;
                }
            }
        }
        return target;
    }

    /** Of equally strong symptoms the first by code. */
    private boolean isBefore(int step, int other) {
        SymptomCode one = SYMPTOMS.get(steps.get(step).code());
        SymptomCode two = SYMPTOMS.get(steps.get(other).code());
        return one != null && two != null && one.compareTo(two) < 0;
    }

    private List<Integer> path(Suspect from, int to) {
        int[] ways = ways(from);
        List<Integer> path = new ArrayList<>();
        for (int at = to; at != Steps.NONE; at = ways[at] == at ? Steps.NONE : ways[at]) {
            path.add(0, at);
        }
        return path;
    }

    private int[] ways(Suspect suspect) {
        if (undisturbed) {
            return steps.waysUndisturbed(suspect.number);
        }
        return ways.computeIfAbsent(
                suspect, from -> steps.ways(from.number, number -> suspects.of(number) != null, this::isCertain));
    }

    private boolean isCertain(int number) {
        Suspect suspect = suspects.of(number);
        return suspect != null && suspect.certain;
    }

    private ChainNode node(Step step) {
        CauseCode cause = CAUSES.get(step.code());
        if (cause != null) {
            boolean isCertain = isCertain(possibilities.numberOf(new Candidate(cause, step.place())));
            return new ChainNode(step.code(), model.cause(cause).text(), step.place(), isCertain);
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
}
