package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.jspecify.annotations.Nullable;

/** Which causes of one layout exclude each other and which are often on both wheels of an axle, by their numbers. */
final class Ties {

    private final List<int[]> neighbours = new ArrayList<>();
    private final List<int[]> excluded = new ArrayList<>();
    private final List<int[]> twins = new ArrayList<>();

    Ties(CauseModel model, List<Candidate> candidates, Map<Candidate, Integer> numbers) {
        for (int number = 0; number < candidates.size(); number++) {
            Candidate candidate = candidates.get(number);
            Cause cause = model.cause(candidate.code());
            List<Integer> beside = new ArrayList<>();
            if (cause.bothSides() != null) {
                add(
                        numbers.get(new Candidate(
                                candidate.code(), candidate.place().opposite())),
                        beside);
            }
            for (CauseCode code : cause.excludes()) {
                add(numbers.get(new Candidate(code, candidate.place())), beside);
            }
            List<Integer> never = new ArrayList<>();
            List<Integer> often = new ArrayList<>();
            for (int before = 0; before < number; before++) {
                Candidate other = candidates.get(before);
                boolean excludes = cause.excludes().contains(other.code())
                        || model.cause(other.code()).excludes().contains(candidate.code());
                if (excludes && candidate.place().meets(other.place())) {
                    never.add(before);
                } else if (cause.bothSides() != null
                        && other.code() == candidate.code()
                        && other.place().sameAxle(candidate.place())) {
                    often.add(before);
                }
            }
            neighbours.add(array(beside));
            excluded.add(array(never));
            twins.add(array(often));
        }
    }

    private static void add(@Nullable Integer number, List<Integer> to) {
        if (number != null) {
            to.add(number);
        }
    }

    private static int[] array(List<Integer> numbers) {
        return numbers.stream().mapToInt(Integer::intValue).toArray();
    }

    /** Causes that a cause excludes at its own place, and the same cause at the other wheel. */
    int[] neighboursOf(int candidate) {
        return neighbours.get(candidate);
    }

    /** Causes of lower numbers that can't be there together with this one. */
    int[] excludedBefore(int candidate) {
        return excluded.get(candidate);
    }

    /** The same cause at the other wheel of the axle, where its number is lower and both are often there. */
    int[] twinsBefore(int candidate) {
        return twins.get(candidate);
    }
}
