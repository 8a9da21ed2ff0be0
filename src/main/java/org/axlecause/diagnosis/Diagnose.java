package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
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
import org.axlecause.shared.Recent;

/**
 * Weighs all causes by what is known of the vehicle: a pure function of its input. What was weighed lately is kept, since
 * a case is weighed again with each entry, and what roller tests show is of few kinds.
 */
public final class Diagnose {

    private static final int MOST_KEPT = 1_000;
    private static final int PROBABILITY_SCALE = 4;
    private static final int DECIBAN_SCALE = 1;
    private static final String EXPLAINED_AWAY = "something certain accounts for what it would show";
    private static final String MADE_LIKELIER = "recent work or a reported circumstance speaks for it";
    private static final String NO_WORK_TOLD = "only work brings it about and none is told of";
    private static final double DECIBANS = 10 / Math.log(10);

    private final CauseModel model;
    private final Recent<Weighing.Ground, Weighing> recent = new Recent<>(MOST_KEPT);

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
        if (!model.knows(input.vehicle())) {
            return Diagnosis.NONE;
        }
        Layout layout = new Layout(input.vehicle());
        Possibilities possibilities = model.possibilities(input.vehicle());
        Priors priors = Priors.of(possibilities, model.settings(), input.weights(), layout.age(input.day()));
        Evidence evidence = new Evidence(model, layout, input);
        Weighing.Ground ground = ground(input, priors, evidence, withChecks);
        Weighing weighing = recent.find(ground);
        if (weighing == null) {
            weighing = recent.keep(ground, weighed(input, layout, possibilities, evidence, ground));
        }
        Map<Candidate, Set<Because>> grounds = Grounds.of(input);
        return new Diagnosis(
                weighing.causes().stream()
                        .map(ranked -> ranked.cause().because(because(ranked, evidence, grounds)))
                        .toList(),
                weighing.nextChecks(),
                questions(weighing, evidence),
                weighing.unlooked());
    }

    private static Weighing.Ground ground(DiagnosisInput input, Priors priors, Evidence evidence, boolean withChecks) {
        return new Weighing.Ground(
                priors,
                evidence.seen().keySet(),
                evidence.notThere(),
                evidence.closed(),
                input.findings().stream().map(Weighing.Look::of).collect(Collectors.toSet()),
                candidates(input.proofs(), proof -> new Candidate(proof.code(), proof.place())),
                candidates(input.refutations(), refutation -> new Candidate(refutation.code(), refutation.place())),
                candidates(input.explainedAway(), away -> new Candidate(away.code(), away.place())),
                candidates(input.likelier(), work -> new Candidate(work.code(), work.place())),
                input.openedAxles(),
                input.danger(),
                input.openingBarred(),
                withChecks);
    }

    private static <T> Set<Candidate> candidates(List<T> conclusions, Function<T, Candidate> about) {
        return conclusions.stream().map(about).collect(Collectors.toSet());
    }

    private Weighing weighed(
            DiagnosisInput input,
            Layout layout,
            Possibilities possibilities,
            Evidence evidence,
            Weighing.Ground ground) {
        Suspects suspects = new Suspects(model, possibilities, evidence, ground);
        List<Group> groups = new Groups(model, suspects).all();
        Chains chains = new Chains(model, layout, possibilities, evidence, suspects);
        LookingOver lookingOver = new LookingOver(model, layout, input);
        return new Weighing(
                ranked(suspects, chains),
                ground.withChecks()
                        ? new NextChecks(model, layout, possibilities, evidence, suspects, input, chains, lookingOver)
                                .best(groups)
                        : List.of(),
                questions(suspects, chains),
                lookingOver.unlooked().stream()
                        .map(part -> new UnlookedPart(
                                part.wheel(),
                                part.component(),
                                model.check(part.check()).text()))
                        .toList());
    }

    private List<Weighing.Ranked> ranked(Suspects suspects, Chains chains) {
        List<Weighing.Ranked> ranked = new ArrayList<>();
        for (Suspect suspect : suspects.all()) {
            boolean suspected = suspect.probability >= model.settings().shownFrom() && !suspect.seen.isEmpty();
            if (suspect.certain || suspected || suspects.contradicted().contains(suspect.candidate)) {
                ranked.add(ranked(suspect, suspects, chains));
            }
        }
        ranked.sort(Comparator.comparing(
                Weighing.Ranked::cause,
                Comparator.comparing(RankedCause::standing)
                        .thenComparing(RankedCause::probability, Comparator.reverseOrder())
                        .thenComparing(RankedCause::spokenFor, Comparator.reverseOrder())
                        .thenComparing(RankedCause::code)
                        .thenComparing(RankedCause::place)));
        for (Candidate candidate : new TreeSet<>(suspects.ruledOut())) {
            ranked.add(new Weighing.Ranked(
                    new RankedCause(
                            candidate.code(),
                            candidate.place(),
                            model.cause(candidate.code()).text(),
                            CauseStanding.RULED_OUT,
                            Decimals.rounded(0, PROBABILITY_SCALE),
                            false,
                            List.of(),
                            List.of(),
                            List.of()),
                    List.of()));
        }
        return ranked;
    }

    private Weighing.Ranked ranked(Suspect suspect, Suspects suspects, Chains chains) {
        List<Sign> seen = new ArrayList<>();
        for (int at = 0; at < suspect.seen.count(); at++) {
            seen.add(suspects.signs().get(suspect.seen.sign(at)));
        }
        return new Weighing.Ranked(
                new RankedCause(
                        suspect.candidate.code(),
                        suspect.candidate.place(),
                        suspect.cause.text(),
                        suspect.certain ? CauseStanding.CONFIRMED : CauseStanding.SUSPECTED,
                        Decimals.rounded(suspect.probability, PROBABILITY_SCALE),
                        chains.confirmedAbove(suspect).isEmpty(),
                        chains.of(suspect),
                        weights(suspect, suspects),
                        List.of()),
                seen);
    }

    /** The rules that settle a cause, then those behind what was seen of it. */
    private static List<Because> because(
            Weighing.Ranked ranked, Evidence evidence, Map<Candidate, Set<Because>> grounds) {
        Candidate candidate =
                new Candidate(ranked.cause().code(), ranked.cause().place());
        List<Because> because = new ArrayList<>(grounds.getOrDefault(candidate, Set.of()));
        TreeSet<Because> shown = new TreeSet<>();
        ranked.seen().forEach(sign -> shown.addAll(evidence.seen().getOrDefault(sign, List.of())));
        because.addAll(shown);
        return because;
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

    private static List<Question> questions(Weighing weighing, Evidence evidence) {
        if (evidence.unclear().isEmpty()) {
            return weighing.questions();
        }
        TreeSet<Question> questions = new TreeSet<>(weighing.questions());
        for (Finding finding : evidence.unclear()) {
            questions.add(new Question(
                    QuestionCode.PLACE_UNCLEAR,
                    finding.place(),
                    finding.shown() + " names no wheel",
                    "record the finding again with axle and side"));
        }
        return List.copyOf(questions);
    }

    private List<Question> questions(Suspects suspects, Chains chains) {
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
