package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.axlecause.diagnosis.Groups.Group;
import org.axlecause.diagnosis.Suspects.Suspect;
import org.axlecause.facts.Because;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.Conclusion;
import org.axlecause.facts.ExplainedAway;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Likelier;
import org.axlecause.facts.Place;
import org.axlecause.facts.Proof;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.UnlookedPart;
import org.axlecause.shared.Decimals;

/** Weighs all causes by what is known of the vehicle: a pure function of its input. */
public final class Diagnose {

    private static final int PROBABILITY_SCALE = 4;
    private static final int DECIBAN_SCALE = 1;
    private static final String EXPLAINED_AWAY = "something certain accounts for what it would show";
    private static final String MADE_LIKELIER = "recent work or a reported circumstance speaks for it";
    private static final String NO_WORK_TOLD = "only work brings it about and none is told of";
    private static final double DECIBANS = 10 / Math.log(10);

    private final CauseModel model;

    public Diagnose(CauseModel model) {
        this.model = model;
    }

    /** Ranks the causes, draws their chains, chooses the next checks and says what stays open. */
    public Diagnosis of(DiagnosisInput input) {
        return of(input, true);
    }

    /** The same with no next check chosen, which is most of the work. */
    public Diagnosis withoutChecks(DiagnosisInput input) {
        return of(input, false);
    }

    private Diagnosis of(DiagnosisInput input, boolean withChecks) {
        if (model.candidates(input.vehicle()).isEmpty()) {
            return Diagnosis.NONE;
        }
        Layout layout = new Layout(input.vehicle());
        Possibilities possibilities = model.possibilities(input.vehicle());
        Evidence evidence = new Evidence(model, layout, input);
        Suspects suspects = new Suspects(model, layout, possibilities, evidence, input);
        List<Group> groups = new Groups(model, suspects).all();
        Chains chains = new Chains(model, layout, possibilities, evidence, suspects);
        LookingOver lookingOver = new LookingOver(model, layout, input);
        return new Diagnosis(
                ranked(input, evidence, suspects, chains),
                withChecks
                        ? new NextChecks(model, layout, possibilities, evidence, suspects, input, chains, lookingOver)
                                .best(groups)
                        : List.of(),
                questions(evidence, suspects, chains),
                lookingOver.unlooked().stream()
                        .map(part -> new UnlookedPart(
                                part.wheel(),
                                part.component(),
                                model.check(part.check()).text()))
                        .toList());
    }

    private List<RankedCause> ranked(DiagnosisInput input, Evidence evidence, Suspects suspects, Chains chains) {
        Map<Candidate, Set<Because>> grounds = Grounds.of(input);
        List<RankedCause> ranked = new ArrayList<>();
        for (Suspect suspect : suspects.all()) {
            boolean suspected = suspect.probability >= model.settings().shownFrom() && !suspect.seen.isEmpty();
            if (suspect.certain || suspected || suspects.contradicted().contains(suspect.candidate)) {
                ranked.add(ranked(suspect, evidence, suspects, chains, grounds));
            }
        }
        ranked.sort(Comparator.comparing(RankedCause::standing)
                .thenComparing(RankedCause::probability, Comparator.reverseOrder())
                .thenComparing(RankedCause::spokenFor, Comparator.reverseOrder())
                .thenComparing(RankedCause::code)
                .thenComparing(RankedCause::place));
        for (Candidate candidate : new TreeSet<>(suspects.ruledOut())) {
            ranked.add(new RankedCause(
                    candidate.code(),
                    candidate.place(),
                    model.cause(candidate.code()).text(),
                    CauseStanding.RULED_OUT,
                    Decimals.rounded(0, PROBABILITY_SCALE),
                    false,
                    List.of(),
                    List.of(),
                    List.copyOf(grounds.getOrDefault(candidate, Set.of()))));
        }
        return ranked;
    }

    private RankedCause ranked(
            Suspect suspect,
            Evidence evidence,
            Suspects suspects,
            Chains chains,
            Map<Candidate, Set<Because>> grounds) {
        List<Because> because = new ArrayList<>(grounds.getOrDefault(suspect.candidate, Set.of()));
        TreeSet<Because> shown = new TreeSet<>();
        Signs signs = suspects.signs();
        for (int at = 0; at < suspect.seen.count(); at++) {
            shown.addAll(evidence.seen().getOrDefault(signs.get(suspect.seen.sign(at)), List.of()));
        }
        because.addAll(shown);
        return new RankedCause(
                suspect.candidate.code(),
                suspect.candidate.place(),
                suspect.cause.text(),
                suspect.certain ? CauseStanding.CONFIRMED : CauseStanding.SUSPECTED,
                Decimals.rounded(suspect.probability, PROBABILITY_SCALE),
                chains.confirmedAbove(suspect).isEmpty(),
                chains.of(suspect),
                weights(suspect, suspects),
                because);
    }

    private List<EvidenceWeight> weights(Suspect suspect, Suspects suspects) {
        List<EvidenceWeight> weights = new ArrayList<>();
        Signs signs = suspects.signs();
        for (int at = 0; at < suspect.seen.count(); at++) {
            int sign = suspect.seen.sign(at);
            double missing = 1 - model.leak(signs.get(sign));
            for (Suspect other : suspects.linksOf(sign).suspects) {
                if (other != suspect) {
                    missing *= 1 - other.probability * other.seen.of(sign);
                }
            }
            double without = 1 - missing;
            double with = 1 - missing * (1 - suspect.seen.value(at));
            weights.add(weight(signs.get(sign), true, DECIBANS * Math.log(with / without)));
        }
        for (int at = 0; at < suspect.missed.count(); at++) {
            Sign sign = signs.get(suspect.missed.sign(at));
            weights.add(weight(sign, false, DECIBANS * Math.log(1 - suspect.missed.value(at))));
        }
        weights.sort(Comparator.comparing(
                        (EvidenceWeight weight) -> weight.decibans().abs())
                .reversed()
                .thenComparing(EvidenceWeight::code)
                .thenComparing(EvidenceWeight::place));
        if (suspect.explainedAway) {
            weights.add(
                    0, circumstance(suspect, "explained-away", model.settings().explainedAway(), EXPLAINED_AWAY));
        }
        if (suspect.likelier) {
            weights.add(
                    0, circumstance(suspect, "made-likelier", model.settings().afterRecentWork(), MADE_LIKELIER));
        }
        if (suspect.untold) {
            weights.add(
                    0, circumstance(suspect, "no-work-told", model.settings().withoutWork(), NO_WORK_TOLD));
        }
        weights.add(
                0,
                new EvidenceWeight(
                        EvidenceWeight.PRIOR,
                        suspect.candidate.place(),
                        true,
                        Decimals.rounded(DECIBANS * Math.log(suspect.prior / (1 - suspect.prior)), DECIBAN_SCALE),
                        "age and layout of the brake, before anything is seen"));
        return weights;
    }

    private static EvidenceWeight circumstance(Suspect suspect, String code, double times, String says) {
        double decibans = DECIBANS * Math.log(times);
        return new EvidenceWeight(
                code, suspect.candidate.place(), true, Decimals.rounded(decibans, DECIBAN_SCALE), says);
    }

    private EvidenceWeight weight(Sign sign, boolean shows, double decibans) {
        String text = sign.finding()
                ? model.finding(sign.code()).text()
                : model.symptomOf(sign.code()).text();
        String says = text + ", " + sign.place() + (shows ? "" : ": looked for and not there");
        return new EvidenceWeight(sign.code(), sign.place(), shows, Decimals.rounded(decibans, DECIBAN_SCALE), says);
    }

    private List<Question> questions(Evidence evidence, Suspects suspects, Chains chains) {
        TreeSet<Question> questions = new TreeSet<>();
        suspects.bySign().forEach((sign, links) -> {
            if (links.suspects.isEmpty() && (!sign.finding() || links.ruledOut > 0)) {
                questions.add(unexplained(sign));
            }
        });
        for (Candidate candidate : suspects.contradicted()) {
            questions.add(new Question(
                    QuestionCode.CONTRADICTION,
                    candidate.place(),
                    candidate.code() + " is both proved and ruled out at " + candidate.place(),
                    "look at the part again and withdraw the finding that was wrong"));
        }
        for (Suspect suspect : suspects.all()) {
            if (suspect.certain
                    && suspect.cause.asksUpstream()
                    && chains.confirmedAbove(suspect).isEmpty()) {
                List<Suspect> above = chains.openAbove(suspect);
                if (!above.isEmpty()) {
                    questions.add(new Question(
                            QuestionCode.UPSTREAM_UNPROVEN,
                            suspect.candidate.place(),
                            "something may have brought about " + suspect.candidate.code()
                                    + " and is neither proved nor ruled out",
                            "look for " + Chains.named(above)));
                }
            }
        }
        for (Finding finding : evidence.unclear()) {
            questions.add(new Question(
                    QuestionCode.PLACE_UNCLEAR,
                    finding.place(),
                    finding.shown() + " names no wheel",
                    "record the finding again with axle and side"));
        }
        return List.copyOf(questions);
    }

    private Question unexplained(Sign sign) {
        String text = sign.finding()
                ? model.finding(sign.code()).text()
                : model.symptomOf(sign.code()).text();
        return new Question(
                QuestionCode.EVIDENCE_UNEXPLAINED,
                sign.place(),
                text + " (" + sign.code() + ", " + sign.place() + "), and every cause that would show it is ruled out",
                "repeat the test or the look; one of the findings that ruled causes out may be wrong");
    }

    /** Rules behind each cause. */
    private static final class Grounds {

        private Grounds() {}

        static Map<Candidate, Set<Because>> of(DiagnosisInput input) {
            Map<Candidate, Set<Because>> grounds = new HashMap<>();
            for (Proof proof : input.proofs()) {
                add(proof.code(), proof.place(), proof, grounds);
            }
            for (Refutation refutation : input.refutations()) {
                add(refutation.code(), refutation.place(), refutation, grounds);
            }
            for (ExplainedAway away : input.explainedAway()) {
                add(away.code(), away.place(), away, grounds);
            }
            for (Likelier work : input.likelier()) {
                add(work.code(), work.place(), work, grounds);
            }
            return grounds;
        }

        private static void add(
                CauseCode code, Place place, Conclusion conclusion, Map<Candidate, Set<Because>> grounds) {
            grounds.computeIfAbsent(new Candidate(code, place), empty -> new TreeSet<>())
                    .add(conclusion.because());
        }
    }
}
