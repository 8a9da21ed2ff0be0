package org.axlecause.diagnosis;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Place;
import org.axlecause.facts.UnlookedPart;
import org.jspecify.annotations.Nullable;

/**
 * What came out of weighing the causes: the same for every vehicle of which the same is known, whatever its figures.
 *
 * @param causes causes in order, without the rules behind them
 * @param nextChecks checks worth making, best first
 * @param questions what stays open, but for findings whose place is unclear
 * @param unlooked parts of opened wheels that nobody has looked at well enough to tell
 */
record Weighing(
        List<Ranked> causes, List<NextCheck> nextChecks, List<Question> questions, List<UnlookedPart> unlooked) {

    Weighing {
        causes = List.copyOf(causes);
        nextChecks = List.copyOf(nextChecks);
        questions = List.copyOf(questions);
        unlooked = List.copyOf(unlooked);
    }

    /**
     * A cause in its rank.
     *
     * @param cause the cause, without the rules behind it
     * @param seen what was seen that speaks for it
     */
    record Ranked(RankedCause cause, List<Sign> seen) {

        Ranked {
            seen = List.copyOf(seen);
        }
    }

    /**
     * All that a weighing depends on.
     *
     * @param priors odds before anything is seen: the same object for one layout, age and choice of weights, another for
     *     any other
     * @param seen what was seen
     * @param notThere what was looked for and is not there
     * @param closed parts that nobody could get at, with their wheels
     * @param looks what was looked at, and how
     * @param proved causes that are proved
     * @param refuted causes that are ruled out
     * @param explainedAway causes that fall to the background
     * @param likelier causes that circumstances make likelier
     * @param openedAxles axles whose drum or calliper is off
     * @param danger whether driving is barred
     * @param openingBarred whether no wheel is to be opened yet
     * @param withChecks whether next checks are chosen
     */
    record Ground(
            Priors priors,
            Set<Sign> seen,
            Set<Sign> notThere,
            Map<Component, Set<Place>> closed,
            Set<Look> looks,
            Set<Candidate> proved,
            Set<Candidate> refuted,
            Set<Candidate> explainedAway,
            Set<Candidate> likelier,
            Set<Integer> openedAxles,
            boolean danger,
            boolean openingBarred,
            boolean withChecks) {

        Ground {
            seen = Set.copyOf(seen);
            notThere = Set.copyOf(notThere);
            closed = Map.copyOf(closed);
            looks = Set.copyOf(looks);
            proved = Set.copyOf(proved);
            refuted = Set.copyOf(refuted);
            explainedAway = Set.copyOf(explainedAway);
            likelier = Set.copyOf(likelier);
            openedAxles = Set.copyOf(openedAxles);
        }
    }

    /**
     * What of a finding says which checks were made, what they opened and which parts they saw.
     *
     * @param component part looked at
     * @param condition state it was found in
     * @param place where
     * @param check check that found it; null where none is named
     */
    record Look(
            Component component,
            Condition condition,
            Place place,
            @Nullable CheckCode check) {

        static Look of(Finding finding) {
            return new Look(finding.component(), finding.condition(), finding.place(), finding.check());
        }
    }
}
