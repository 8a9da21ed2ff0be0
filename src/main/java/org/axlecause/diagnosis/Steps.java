package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.function.IntPredicate;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Place;
import org.axlecause.facts.SymptomCode;
import org.jspecify.annotations.Nullable;

/** How the edges of the cause model lead from causes over states to symptoms on vehicles of one layout. */
final class Steps {

    /** No step, or no way to it. */
    static final int NONE = -1;

    private static final int STATE_ASSUMED = 1;
    private static final int CAUSE_ASSUMED = 10;

    private final CauseModel model;
    private final Layout layout;
    private final Possibilities possibilities;
    private final List<Step> steps = new ArrayList<>();
    private final Map<Step, Integer> numbers = new HashMap<>();
    private final List<int[]> next = new ArrayList<>();
    private final int[] candidates;
    private final AtomicReferenceArray<int @Nullable []> undisturbed;

    Steps(CauseModel model, Layout layout, Possibilities possibilities) {
        this.model = model;
        this.layout = layout;
        this.possibilities = possibilities;
        for (Candidate candidate : possibilities.candidates()) {
            number(new Step(candidate.code().toString(), candidate.place()));
        }
        this.undisturbed = new AtomicReferenceArray<>(steps.size());
        for (int step = 0; step < steps.size(); step++) {
            next.add(nextOf(steps.get(step)));
        }
        this.candidates = steps.stream().mapToInt(this::candidateOf).toArray();
    }

    private int number(Step step) {
        Integer known = numbers.get(step);
        if (known == null) {
            known = steps.size();
            numbers.put(step, known);
            steps.add(step);
        }
        return known;
    }

    /** Steps one edge further; a cause that can't be on the vehicle breaks the way. */
    private int[] nextOf(Step from) {
        List<Integer> found = new ArrayList<>();
        for (Edge edge : model.edgesFrom(from.code())) {
            for (Place place : layout.reached(from.place(), edge.reach(), level(edge, from.place()))) {
                Step to = new Step(edge.to(), place);
                if (Chains.cause(edge.to()) == null || candidateOf(to) != NONE) {
                    found.add(number(to));
                }
            }
        }
        return found.stream().mapToInt(Integer::intValue).toArray();
    }

    private Level level(Edge edge, Place from) {
        CauseCode cause = Chains.cause(edge.to());
        if (cause != null) {
            return model.cause(cause).level();
        }
        SymptomCode symptom = Chains.symptom(edge.to());
        return symptom == null
                ? edge.reach().level(Level.of(from))
                : model.symptom(symptom).level();
    }

    private int candidateOf(Step step) {
        CauseCode cause = Chains.cause(step.code());
        return cause == null ? NONE : possibilities.numberOf(new Candidate(cause, step.place()));
    }

    Step get(int step) {
        return steps.get(step);
    }

    int numberOf(Step step) {
        return numbers.getOrDefault(step, NONE);
    }

    /** By step that the edges reach from a candidate, the step before it on the way that assumes least. */
    int[] ways(int candidate, IntPredicate suspected, IntPredicate certain) {
        return found(candidate, suspected, certain);
    }

    /** The same where no cause is ruled out and none is certain. */
    int[] waysUndisturbed(int candidate) {
        int[] known = undisturbed.get(candidate);
        if (known == null) {
            known = found(candidate, number -> true, number -> false);
            undisturbed.set(candidate, known);
        }
        return known;
    }

    private int[] found(int candidate, IntPredicate suspected, IntPredicate certain) {
        int[] before = new int[steps.size()];
        Arrays.fill(before, NONE);
        int[] costs = new int[steps.size()];
        Arrays.fill(costs, Integer.MAX_VALUE);
        PriorityQueue<Reached> open = new PriorityQueue<>();
        before[candidate] = candidate;
        costs[candidate] = 0;
        open.add(new Reached(candidate, 0, 0));
        int order = 0;
        while (!open.isEmpty()) {
            Reached at = open.remove();
            if (at.cost() > costs[at.step()]) {
                continue;
            }
            for (int step : next.get(at.step())) {
                int cause = candidates[step];
                int cost = at.cost() + (cause == NONE || certain.test(cause) ? STATE_ASSUMED : CAUSE_ASSUMED);
                if (cost < costs[step] && (cause == NONE || suspected.test(cause))) {
                    costs[step] = cost;
                    before[step] = at.step();
                    open.add(new Reached(step, cost, ++order));
                }
            }
        }
        return before;
    }

    /** A step with what the way to it assumes: a second cause that nobody proved counts for more than a state. */
    private record Reached(int step, int cost, int order) implements Comparable<Reached> {

        @Override
        public int compareTo(Reached other) {
            return cost != other.cost ? Integer.compare(cost, other.cost) : Integer.compare(order, other.order);
        }
    }

    /**
     * A code at a place on the way.
     *
     * @param code code of a cause, a state or a symptom
     * @param place where
     */
    record Step(String code, Place place) {}
}
