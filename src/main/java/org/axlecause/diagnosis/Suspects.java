package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.ExplainedAway;
import org.axlecause.facts.Likelier;
import org.axlecause.facts.Place;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Refutation;
import org.jspecify.annotations.Nullable;

/** The causes that are weighed: all candidates but those ruled out, with their odds before the seen evidence. */
final class Suspects {

    private final CauseModel model;
    private final Possibilities possibilities;
    private final Evidence evidence;
    private final List<Suspect> suspects = new ArrayList<>();
    private final Map<Candidate, Suspect> byCandidate = new HashMap<>();
    private final Set<Candidate> ruledOut = new HashSet<>();
    private final Set<Candidate> contradicted = new HashSet<>();
    private final TreeMap<Sign, Links> bySign = new TreeMap<>();
    private final Map<Sign, List<OpenLink>> openLinks = new HashMap<>();

    Suspects(CauseModel model, Layout layout, Evidence evidence, DiagnosisInput input, List<Candidate> candidates) {
        this.model = model;
        this.possibilities = model.possibilities(input.vehicle());
        this.evidence = evidence;
        Set<Candidate> proved = new HashSet<>();
        input.proofs().forEach(proof -> proved.add(candidate(proof)));
        input.refutations().forEach(refutation -> {
            Candidate candidate = candidate(refutation);
            if (proved.contains(candidate)) {
                contradicted.add(candidate);
            } else {
                ruledOut.add(candidate);
            }
        });
        Set<Candidate> background = new HashSet<>();
        for (ExplainedAway away : input.explainedAway()) {
            background.add(new Candidate(away.code(), away.place()));
        }
        Set<Candidate> likelier = new HashSet<>();
        for (Likelier work : input.likelier()) {
            likelier.add(new Candidate(work.code(), work.place()));
        }
        evidence.seen().keySet().forEach(sign -> bySign.put(sign, new Links()));
        Priors priors = new Priors(model, layout, input.day(), candidates);
        for (Candidate candidate : candidates) {
            if (ruledOut.contains(candidate)) {
                noteRuledOut(candidate);
                continue;
            }
            boolean certain = proved.contains(candidate) && !contradicted.contains(candidate);
            Suspect suspect = new Suspect(
                    suspects.size(), candidate, model.cause(candidate.code()), priors.of(candidate), certain);
            if (background.contains(candidate)) {
                suspect.odds *= model.settings().explainedAway();
                suspect.explainedAway = true;
            }
            if (likelier.contains(candidate)) {
                suspect.odds *= model.settings().afterRecentWork();
                suspect.likelier = true;
            } else if (suspect.cause.needsWork()) {
                suspect.odds *= model.settings().withoutWork();
                suspect.untold = true;
            }
            suspects.add(suspect);
            byCandidate.put(candidate, suspect);
            link(suspect);
        }
    }

    private static Candidate candidate(Proof proof) {
        return new Candidate(proof.code(), proof.place());
    }

    private static Candidate candidate(Refutation refutation) {
        return new Candidate(refutation.code(), refutation.place());
    }

    /** All suspects, sorted by code and place. */
    List<Suspect> all() {
        return suspects;
    }

    @Nullable
    Suspect of(CauseCode code, Place place) {
        return byCandidate.get(new Candidate(code, place));
    }

    Set<Candidate> ruledOut() {
        return ruledOut;
    }

    /** Causes that are both proved and ruled out. */
    Set<Candidate> contradicted() {
        return contradicted;
    }

    /** Seen evidence with the causes it speaks for. */
    NavigableMap<Sign, Links> bySign() {
        return bySign;
    }

    private void noteRuledOut(Candidate candidate) {
        for (Possibilities.Effect effect : possibilities.effectsOf(candidate)) {
            if (isPast(effect, candidate)) {
                continue;
            }
            for (Sign sign : effect.signs()) {
                Links links = bySign.get(sign);
                if (links != null) {
                    links.ruledOut++;
                }
            }
        }
    }

    /** Whether it would have shown in the first run only and the axle has had its second. */
    private boolean isPast(Possibilities.Effect effect, Candidate candidate) {
        return effect.firstRunOnly() && evidence.runAgain(candidate.place());
    }

    private void link(Suspect suspect) {
        for (Possibilities.Effect effect : possibilities.effectsOf(suspect.candidate)) {
            if (isPast(effect, suspect.candidate)) {
                continue;
            }
            Together together = new Together(suspect.cause, effect.signs(), effect.strength());
            for (Sign sign : effect.signs()) {
                Links links = bySign.get(sign);
                if (links != null) {
                    links.suspects.add(suspect);
                    suspect.seen.put(sign, together.seen());
                } else if (evidence.missed(sign)) {
                    suspect.odds *= 1 - together.missed();
                    suspect.missed.put(sign, together.missed());
                } else {
                    openLinks
                            .computeIfAbsent(sign, empty -> new ArrayList<>())
                            .add(new OpenLink(suspect, together.open()));
                }
            }
        }
    }

    /**
     * Strengths of one link of a cause that shows at several places. A cause of a circuit or of the vehicle shows as a
     * whole or not at all, and then at each place with a chance of its own: four dragging wheels are one piece of
     * evidence for what holds them all. A cause of an axle often shows at one of its wheels only, unless it works on both
     * alike.
     */
    private final class Together {

        private final double strength;
        private final boolean asOne;
        private int seen;
        private int missed;

        Together(Cause cause, List<Sign> signs, double strength) {
            this.strength = strength;
            this.asOne = signs.size() > 1 && (cause.alike() || cause.level() != Level.AXLE);
            for (Sign sign : signs) {
                seen += bySign.containsKey(sign) ? 1 : 0;
                missed += !bySign.containsKey(sign) && evidence.missed(sign) ? 1 : 0;
            }
        }

        double seen() {
            return !asOne
                    ? strength
                    : Math.pow(strength, 1.0 / seen) * model.settings().shownTogether();
        }

        double missed() {
            if (!asOne) {
                return strength;
            }
            double each = model.settings().shownTogether();
            return seen > 0 ? each : 1 - Math.pow(1 - strength + strength * Math.pow(1 - each, missed), 1.0 / missed);
        }

        double open() {
            return asOne && seen > 0 ? model.settings().shownTogether() : strength;
        }
    }

    /**
     * By suspect that would show one of these signs, which nobody has looked for yet, and by sign the chance that it does
     * not show it; sorted.
     */
    SortedMap<Suspect, double[]> missing(List<Sign> open) {
        SortedMap<Suspect, double[]> missing = new TreeMap<>();
        for (int sign = 0; sign < open.size(); sign++) {
            for (OpenLink link : openLinks.getOrDefault(open.get(sign), List.of())) {
                double[] row = missing.computeIfAbsent(link.suspect(), suspect -> certainlyMissing(open.size()));
                row[sign] *= 1 - link.strength();
            }
        }
        return missing;
    }

    private static double[] certainlyMissing(int signs) {
        double[] row = new double[signs];
        Arrays.fill(row, 1);
        return row;
    }

    /** How many times likelier both are together than each by itself; none where they exclude each other. */
    double together(Suspect one, Suspect other) {
        if (one.certain && other.certain) {
            return 1;
        }
        boolean excluded = one.cause.excludes().contains(other.candidate.code())
                || other.cause.excludes().contains(one.candidate.code());
        if (excluded && one.candidate.place().meets(other.candidate.place())) {
            return 0;
        }
        Double bothSides = one.cause.bothSides();
        if (bothSides != null
                && one.candidate.code() == other.candidate.code()
                && one.candidate.place().sameAxle(other.candidate.place())) {
            return Priors.together(one.prior, bothSides);
        }
        return 1;
    }

    /** Suspects that one suspect is tied to by an exclusion or as its twin. */
    Collection<Suspect> tiedTo(Suspect suspect) {
        List<Suspect> tied = new ArrayList<>();
        if (suspect.cause.bothSides() != null) {
            addIfThere(suspect.candidate.code(), suspect.candidate.place().opposite(), tied);
        }
        for (CauseCode code : suspect.cause.excludes()) {
            addIfThere(code, suspect.candidate.place(), tied);
        }
        return tied;
    }

    private void addIfThere(CauseCode code, Place place, List<Suspect> tied) {
        Suspect found = byCandidate.get(new Candidate(code, place));
        if (found != null) {
            tied.add(found);
        }
    }

    /** Causes that one piece of seen evidence speaks for. */
    static final class Links {
        final List<Suspect> suspects = new ArrayList<>();
        int ruledOut;
    }

    private record OpenLink(Suspect suspect, double strength) {}

    /** A cause at a place while it is weighed. */
    static final class Suspect implements Comparable<Suspect> {

        final int index;
        final Candidate candidate;
        final Cause cause;
        final double prior;
        final boolean certain;
        final TreeMap<Sign, Double> seen = new TreeMap<>();
        final TreeMap<Sign, Double> missed = new TreeMap<>();
        boolean explainedAway;
        boolean likelier;
        boolean untold;
        double odds;
        double probability;

        Suspect(int index, Candidate candidate, Cause cause, double prior, boolean certain) {
            this.index = index;
            this.candidate = candidate;
            this.cause = cause;
            this.prior = prior;
            this.certain = certain;
            this.odds = prior / (1 - prior);
        }

        @Override
        public int compareTo(Suspect other) {
            return Integer.compare(index, other.index);
        }
    }
}
