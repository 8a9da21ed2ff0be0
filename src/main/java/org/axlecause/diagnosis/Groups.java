package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.diagnosis.Suspects.Suspect;
import org.jspecify.annotations.Nullable;

/** Splits the suspects into groups that share seen evidence, exclude each other or are twins, and weighs each. */
final class Groups {

    private final CauseModel model;
    private final Suspects suspects;
    private final int[] parent;
    private final List<Group> groups = new ArrayList<>();

    Groups(CauseModel model, Suspects suspects) {
        this.model = model;
        this.suspects = suspects;
        List<Suspect> all = suspects.all();
        this.parent = new int[all.size()];
        for (int i = 0; i < parent.length; i++) {
            parent[i] = i;
        }
        for (Suspects.Links links : suspects.bySign().values()) {
            for (Suspect suspect : links.suspects) {
                join(links.suspects.get(0).index, suspect.index);
            }
        }
        for (Suspect suspect : all) {
            for (int neighbour : suspects.ties().neighboursOf(suspect.number)) {
                Suspect other = suspects.of(neighbour);
                if (other != null) {
                    join(suspect.index, other.index);
                }
            }
        }
        Map<Integer, List<Suspect>> members = new TreeMap<>();
        for (Suspect suspect : all) {
            members.computeIfAbsent(root(suspect.index), root -> new ArrayList<>())
                    .add(suspect);
        }
        members.values().forEach(group -> groups.add(group.size() == 1 ? weighed(group.get(0)) : weighed(group)));
    }

    /** All groups, sorted by their first suspect. */
    List<Group> all() {
        return groups;
    }

    private void join(int one, int other) {
        int first = root(one);
        int second = root(other);
        parent[Math.max(first, second)] = Math.min(first, second);
    }

    private int root(int index) {
        int at = index;
        while (parent[at] != at) {
            parent[at] = parent[parent[at]];
            at = parent[at];
        }
        return at;
    }

    /** A cause on its own that nothing speaks for keeps its odds. */
    private Group weighed(Suspect alone) {
        if (!alone.seen.isEmpty()) {
            return weighed(List.of(alone));
        }
        alone.group = groups.size();
        alone.probability = alone.certain ? 1 : alone.odds / (1 + alone.odds);
        return new Group(groups.size(), List.of(alone), List.of(), WeighedSets.NONE);
    }

    private Group weighed(List<Suspect> members) {
        List<Sign> signs = new ArrayList<>();
        List<Integer> numbers = new ArrayList<>();
        for (Map.Entry<Sign, Suspects.Links> entry : suspects.bySign().entrySet()) {
            List<Suspect> speaking = entry.getValue().suspects;
            if (!speaking.isEmpty() && root(speaking.get(0).index) == root(members.get(0).index)) {
                signs.add(entry.getKey());
                numbers.add(entry.getValue().sign);
            }
        }
        int size = members.size();
        for (int i = 0; i < size; i++) {
            members.get(i).group = groups.size();
            members.get(i).position = i;
        }
        double[] leaks = new double[signs.size()];
        double[] odds = new double[size];
        boolean[] certain = new boolean[size];
        double[][] missing = new double[size][signs.size()];
        for (int sign = 0; sign < leaks.length; sign++) {
            int number = numbers.get(sign);
            leaks[sign] = 1 - model.leak(signs.get(sign));
            for (int i = 0; i < size; i++) {
                missing[i][sign] = 1 - members.get(i).seen.of(number);
            }
        }
        for (int i = 0; i < size; i++) {
            odds[i] = members.get(i).odds;
            certain[i] = members.get(i).certain;
        }
        Network.Weighed weighed = new Network(odds, certain, missing, leaks, together(members)).weigh();
        for (int i = 0; i < size; i++) {
            members.get(i).probability = weighed.marginals().get(i);
        }
        return new Group(groups.size(), members, signs, weighed.sets());
    }

    /** By pair, how many times likelier both are together than each by itself; none where they exclude each other. */
    private double[][] together(List<Suspect> members) {
        double[][] together = new double[members.size()][members.size()];
        for (double[] row : together) {
            Arrays.fill(row, 1);
        }
        for (Suspect member : members) {
            for (int number : suspects.ties().excludedBefore(member.number)) {
                tie(member, suspects.of(number), 0, together);
            }
            Double bothSides = member.cause.bothSides();
            for (int number : suspects.ties().twinsBefore(member.number)) {
                Suspect twin = suspects.of(number);
                if (twin != null && bothSides != null) {
                    tie(member, twin, Priors.together(twin.prior, bothSides), together);
                }
            }
        }
        return together;
    }

    /** Proved causes are there together, whatever speaks against it. */
    private static void tie(Suspect one, @Nullable Suspect other, double times, double[][] together) {
        if (other != null && other.group == one.group && !(one.certain && other.certain)) {
            together[one.position][other.position] = times;
            together[other.position][one.position] = times;
        }
    }

    /**
     * Causes that are weighed together.
     *
     * @param number its number
     * @param members the causes
     * @param signs the seen evidence that ties them
     * @param sets their sets with shares
     */
    record Group(int number, List<Suspect> members, List<Sign> signs, WeighedSets sets) {}
}
