package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.facts.History;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.SiteTerms;
import org.axlecause.inference.RuleBench;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.policy.PolicyFile;
import org.axlecause.policy.PolicyOfChain;
import org.axlecause.regimes.Regimes;
import org.axlecause.repair.PlanRepair;
import org.axlecause.repair.RepairCatalogue;
import org.axlecause.shared.YamlFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each clause of the vocabulary changes one case, by exactly what a technician would expect, and leaves another alone. */
class ClauseScenariosTest {

    private static final Path FOLDER = Path.of("src/test/resources/clauses-in-short");
    private static final String REGIME = "gb-annual";
    private static final Judge JUDGE = new Judge(
            RuleBench.all(), Regimes.released(), CauseModel.load(), new PlanRepair(RepairCatalogue.onClassPath()));
    private static final SiteTerms SITE = new SiteTerms("quay-street", ZoneId.of("Europe/London"), "GBP", REGIME);
    private static final PriceList PRICES = new PriceList(
            "quay-street",
            1,
            "GBP",
            new BigDecimal("60"),
            new BigDecimal("0.20"),
            Map.of(ScopeItem.SHOE_SET, new BigDecimal("40")),
            Map.of("renew shoe-set", new BigDecimal("1.5")));

    static List<ClauseScenario> scenarios() throws IOException {
        List<ClauseScenario> scenarios = new ArrayList<>();
        try (Stream<Path> files = Files.list(FOLDER)) {
            for (Path file : files.sorted().toList()) {
                YamlFile.ofText(file.toString(), Files.readString(file))
                        .root()
                        .items("clauses")
                        .forEach(node -> scenarios.add(ClauseScenario.of(node)));
            }
        }
        return scenarios;
    }

    @Test
    void every_clause_has_a_case_that_it_changes_and_one_that_it_leaves_alone() throws IOException {
        assertThat(scenarios().stream().map(ClauseScenario::clause))
                .containsExactlyInAnyOrderElementsOf(PolicyOfChain.clauses());
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void a_clause_changes_what_a_technician_expects_and_nothing_else(ClauseScenario told) {
        Judgement before = judged(told, told.changed(), PolicyFile.baseline());
        Judgement after = judged(told, told.changed(), PolicyOfChain.setting(told.set(), REGIME));

        assertThat(told.by()).as("differences of '%s'", told.changed()).isNotEmpty();
        assertThat(ClauseScenario.differences(before, after))
                .as("differences of '%s'", told.changed())
                .containsExactlyInAnyOrderElementsOf(told.by());
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void a_trial_weighs_a_case_once_and_judges_it_as_each_policy_alone_does(ClauseScenario told) throws Exception {
        AtomicReference<Matter> matter = new AtomicReference<>();
        Judgement before = told.changed().judged(history -> {
            matter.set(matter(told, history, PolicyFile.baseline()));
            return JUDGE.judge(matter.get());
        });
        Policy draft = PolicyOfChain.setting(told.set(), REGIME);

        Judge.Compared compared = JUDGE.compare(matter.get(), draft);

        assertThat(allButChecks(compared.before())).isEqualTo(allButChecks(before));
        assertThat(allButChecks(compared.after()))
                .isEqualTo(allButChecks(JUDGE.judge(matter(told, matter.get().history(), draft))));
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void a_clause_that_does_not_bear_on_a_case_leaves_its_judgement_as_it_is(ClauseScenario told) {
        assertThat(judged(told, told.alike(), PolicyOfChain.setting(told.set(), REGIME)))
                .as("judgement of '%s'", told.alike())
                .isEqualTo(judged(told, told.alike(), PolicyFile.baseline()));
    }

    private static Judgement judged(ClauseScenario told, ShortRepair repair, Policy policy) {
        return repair.judged(history -> JUDGE.judge(matter(told, history, policy)));
    }

    private static Matter matter(ClauseScenario told, History history, Policy policy) {
        return new Matter(history, SITE, policy, CauseWeights.BOOK, told.priced() ? PRICES : null, null);
    }

    /** The members of a judgement without the next checks, which a trial does not choose, and the advice to make one. */
    private static List<Object> allButChecks(Judgement judged) throws ReflectiveOperationException {
        List<Object> members = new ArrayList<>();
        for (RecordComponent component : Judgement.class.getRecordComponents()) {
            if (component.getName().equals("questions")) {
                judged.questions()
                        .forEach(asked -> members.add(asked.code() + " " + asked.place() + " " + asked.says()));
            } else if (!component.getName().equals("nextChecks")) {
                members.add(component.getAccessor().invoke(judged));
            }
        }
        return members;
    }
}
