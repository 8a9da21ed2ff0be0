package org.axlecause;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.axlecause.bench.BenchedCase;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.facts.History;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Policy;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.SiteTerms;
import org.axlecause.fleet.DrawnRepairs;
import org.axlecause.inference.ComparedRuleBase;
import org.axlecause.inference.ComparedRuleBase.Call;
import org.axlecause.inference.Conclusions;
import org.axlecause.inference.DrawnFacts;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.policy.PolicyFile;
import org.axlecause.policy.PolicyOfChain;
import org.axlecause.regimes.Regimes;
import org.axlecause.repair.PlanRepair;
import org.axlecause.repair.RepairCatalogue;

/**
 * Has cases judged and every call of the rule base drawn by plain Java too; the first call with any difference ends it.
 */
final class CompareRuleBase {

    private static final PrintStream OUT = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    private static final String REGIME = "gb-annual";
    private static final SiteTerms SITE = new SiteTerms("quay-street", ZoneId.of("Europe/London"), "GBP", REGIME);
    private static final Path SCENARIOS = Path.of("src/test/resources/scenarios");
    private static final String STORY = "oiled-lining-and-seized-cable-repaired";
    private static final long SEED = 20_260_302L;
    private static final int DRAWN = 300;
    private static final int DRAWN_CALLS = 500;
    private static final int KEPT = 10;

    private final ComparedRuleBase rules = new ComparedRuleBase();
    private final Judge judge =
            new Judge(rules, Regimes.released(), CauseModel.load(), new PlanRepair(RepairCatalogue.onClassPath()));

    /** Every scenario, after each of its events; the calls of the repair from presentation to proof. */
    List<Call> scenarios() throws IOException {
        List<Call> story = new ArrayList<>();
        int calls = 0;
        List<String> scenarios = names();
        for (String scenario : scenarios) {
            BenchedCase.steps(scenario).forEach(judge::judge);
            List<Call> made = rules.takeCalls();
            calls += made.size();
            if (scenario.equals(STORY)) {
                story.addAll(made);
            }
        }
        tell(scenarios.size() + " scenarios after each event", calls);
        return story;
    }

    /** The cases and repairs in short. */
    void toldInShort() throws IOException {
        ShortCasesTest.cases().forEach(told -> judged(new History("QS-1", told.entries()), PolicyFile.baseline()));
        ShortRepairsTest.repairs().forEach(told -> told.judged(history -> judged(history, PolicyFile.baseline())));
        tell("cases and repairs in short", rules.takeCalls().size());
    }

    /** For each clause a case that it changes and one that it leaves alone. */
    void clauses() throws IOException {
        for (ClauseScenario told : ClauseScenariosTest.scenarios()) {
            Policy policy = PolicyOfChain.setting(told.set(), REGIME);
            told.changed().judged(history -> judged(history, policy));
            told.alike().judged(history -> judged(history, policy));
        }
        tell("cases under a clause", rules.takeCalls().size());
    }

    /** Drawn repairs at every step; the calls of the first few. */
    List<Call> drawnRepairs() {
        DrawnRepairs drawn = new DrawnRepairs(rules);
        List<Call> first = new ArrayList<>();
        int calls = 0;
        for (long seed = SEED; seed < SEED + DRAWN; seed++) {
            try {
                drawn.goThrough(seed);
            } catch (IllegalStateException different) {
                throw new IllegalStateException("In the drawn repair of seed " + seed, different);
            }
            List<Call> made = rules.takeCalls();
            calls += made.size();
            if (seed < SEED + KEPT) {
                first.addAll(made);
            }
        }
        tell(DRAWN + " drawn repairs from seed " + SEED + " at every step", calls);
        return first;
    }

    /** Facts drawn without regard to any vehicle. */
    void drawnFacts() {
        for (long seed = SEED; seed < SEED + DRAWN_CALLS; seed++) {
            try {
                concluded(DrawnFacts.first(seed));
                List<LineKey> proposed = concluded(DrawnFacts.second(seed, List.of())).of(ScopeProposal.class).stream()
                        .map(ScopeProposal::line)
                        .toList();
                concluded(DrawnFacts.second(seed, proposed));
            } catch (IllegalStateException different) {
                throw new IllegalStateException("From the facts drawn of seed " + seed, different);
            }
        }
        tell("facts drawn from seed " + SEED, rules.takeCalls().size());
    }

    private Conclusions concluded(Call call) {
        return rules.conclude(call.shared(), call.facts());
    }

    private Judgement judged(History history, Policy policy) {
        return judge.judge(new Matter(history, SITE, policy, CauseWeights.BOOK, null, null));
    }

    private void tell(String what, int calls) {
        OUT.println("rule base and plain Java concluded the same in " + calls + " calls: " + what + "; "
                + rules.drawn().size() + " of " + rules.rules().size() + " rules have drawn something so far");
    }

    private static List<String> names() throws IOException {
        try (Stream<Path> folders = Files.list(SCENARIOS)) {
            return folders.map(folder -> folder.getFileName().toString())
                    .sorted()
                    .toList();
        }
    }
}
