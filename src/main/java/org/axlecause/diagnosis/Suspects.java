package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import org.axlecause.diagnosis.Evidence.Known;
import org.axlecause.facts.Candidate;
import org.jspecify.annotations.Nullable;

/** The causes that are weighed: all candidates but those ruled out, with their odds before the seen evidence. */
final class Suspects {

    private final CauseModel model;
    private final Possibilities possibilities;
    private final Evidence evidence;
    private final Known[] known;
    private final List<Suspect> suspects = new ArrayList<>();
    private final @Nullable Suspect[] byNumber;
    private final Set<Candidate> ruledOut = new HashSet<>();
    private final Set<Candidate> contradicted = new HashSet<>();
    private final TreeMap<Sign, Links> bySign = new TreeMap<>();
    private final @Nullable Links[] links;

    Suspects(CauseModel model, Possibilities possibilities, Evidence evidence, Weighing.Ground ground) {
        this.model = model;
        this.possibilities = possibilities;
        this.evidence = evidence;
        this.known = evidence.known(possibilities.signs());
        this.byNumber = new Suspect[possibilities.candidates().size()];
        for (Candidate refuted : ground.refuted()) {
            (ground.proved().contains(refuted) ? contradicted : ruledOut).add(refuted);
        }
        this.links = new Links[possibilities.signs().count()];
        for (Sign sign : evidence.seen().keySet()) {
            int number = possibilities.signs().numberOf(sign);
            Links none = new Links(number);
            bySign.put(sign, none);
            if (number != Signs.NONE) {
                links[number] = none;
            }
        }
        for (int number = 0; number < byNumber.length; number++) {
            Candidate candidate = possibilities.candidates().get(number);
            if (!ruledOut.isEmpty() && ruledOut.contains(candidate)) {
                noteRuledOut(number);
                continue;
            }
            boolean certain = ground.proved().contains(candidate) && !contradicted.contains(candidate);
            Suspect suspect = new Suspect(
                    suspects.size(),
                    number,
                    candidate,
                    model.cause(candidate.code()),
                    ground.priors().of(number),
                    certain);
            if (ground.explainedAway().contains(candidate)) {
                suspect.odds *= model.settings().explainedAway();
                suspect.explainedAway = true;
            }
            if (ground.likelier().contains(candidate)) {
                suspect.odds *= model.settings().afterRecentWork();
                suspect.likelier = true;
            } else if (suspect.cause.needsWork()) {
                suspect.odds *= model.settings().withoutWork();
                suspect.untold = true;
            }
            suspects.add(suspect);
            byNumber[number] = suspect;
            link(suspect);
        }
    }

    /** All suspects, sorted by code and place. */
    List<Suspect> all() {
        return suspects;
    }

    /** The suspect of a candidate's number; null where it is ruled out. */
    @Nullable
    Suspect of(int number) {
        return byNumber[number];
    }

    /** Whether no candidate is ruled out and none is certain. */
    boolean undisturbed() {
        return suspects.size() == byNumber.length && suspects.stream().noneMatch(suspect -> suspect.certain);
    }

    /** The signs of the layout. */
    Signs signs() {
        return possibilities.signs();
    }

    /** What is known of a sign, by its number. */
    Known known(int sign) {
        return known[sign];
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

    private void noteRuledOut(int candidate) {
        for (Possibilities.Effect effect : possibilities.effectsOf(candidate)) {
            if (isPast(effect, possibilities.candidates().get(candidate))) {
                continue;
            }
            for (int sign : effect.signs) {
                if (known[sign] == Known.SEEN) {
                    linksOf(sign).ruledOut++;
                }
            }
        }
    }

    /** Whether it would have shown in the first run only and the axle has had its second. */
    private boolean isPast(Possibilities.Effect effect, Candidate candidate) {
        return effect.firstRunOnly && evidence.runAgain(candidate.place());
    }

    /** A cause that shows as a whole accounts for nothing where most of its places are without: it does not show. */
    private void link(Suspect suspect) {
        for (Possibilities.Effect effect : possibilities.effectsOf(suspect.number)) {
            int seen = count(effect, Known.SEEN);
            int missed = count(effect, Known.MISSED);
            if (seen + missed > 0 && !isPast(effect, suspect.candidate)) {
                if (effect.asOne && missed > seen) {
                    link(suspect, effect, 0, ifMissed(effect, 0, missed));
                } else {
                    link(suspect, effect, ifSeen(effect, seen), ifMissed(effect, seen, missed));
                }
            }
        }
    }

    private void link(Suspect suspect, Possibilities.Effect effect, double ifSeen, double ifMissed) {
        for (int sign : effect.signs) {
            if (known[sign] == Known.SEEN && ifSeen > 0) {
                linksOf(sign).suspects.add(suspect);
                suspect.seen.put(sign, ifSeen);
            } else if (known[sign] == Known.MISSED) {
                suspect.odds *= 1 - ifMissed;
                suspect.missed.put(sign, ifMissed);
            }
        }
    }

    /** The causes that a seen sign speaks for, by its number. */
    Links linksOf(int sign) {
        Links found = links[sign];
        if (found == null) {
            throw new IllegalArgumentException(
                    possibilities.signs().get(sign) + " was not seen, so it speaks for no cause.");
        }
        return found;
    }

    private int count(Possibilities.Effect effect, Known state) {
        int count = 0;
        for (int sign : effect.signs) {
            count += known[sign] == state ? 1 : 0;
        }
        return count;
    }

    /** Strength with which a link shows at each place where it is seen. */
    private double ifSeen(Possibilities.Effect effect, int seen) {
        return !effect.asOne
                ? effect.strength
                : Math.pow(effect.strength, 1.0 / seen) * model.settings().shownTogether();
    }

    /** Strength with which it would have shown at each place where it was missed. */
    private double ifMissed(Possibilities.Effect effect, int seen, int missed) {
        if (!effect.asOne) {
            return effect.strength;
        }
        double each = model.settings().shownTogether();
        double strength = effect.strength;
        return seen > 0 ? each : 1 - Math.pow(1 - strength + strength * Math.pow(1 - each, missed), 1.0 / missed);
    }

    /** Strength with which a suspect shows at each place where nobody has looked yet; nothing where that has passed. */
    double ifLookedFor(Suspect suspect, Possibilities.Effect effect) {
        if (isPast(effect, suspect.candidate)) {
            return 0;
        }
        return effect.asOne && count(effect, Known.SEEN) > 0 ? model.settings().shownTogether() : effect.strength;
    }

    /** How one cause goes together with others, by number. */
    Ties ties() {
        return possibilities.ties();
    }

    /** Causes that one piece of seen evidence speaks for. */
    static final class Links {
        /** Number of the sign; none where no cause and no check of the layout knows it. */
        final int sign;

        final List<Suspect> suspects = new ArrayList<>();
        int ruledOut;

        Links(int sign) {
            this.sign = sign;
        }
    }

    /** A cause at a place while it is weighed. */
    static final class Suspect implements Comparable<Suspect> {

        private static final int NOT_YET = -1;

        final int index;
        final int number;
        final Candidate candidate;
        final Cause cause;
        final double prior;
        final boolean certain;
        final Strengths seen = new Strengths();
        final Strengths missed = new Strengths();
        boolean explainedAway;
        boolean likelier;
        boolean untold;
        double odds;
        double probability;
        int group = NOT_YET;
        int position;

        Suspect(int index, int number, Candidate candidate, Cause cause, double prior, boolean certain) {
            this.index = index;
            this.number = number;
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
