package org.axlecause.inference;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every rule file; each ban says why. */
class RulebookTest {

    private static final Pattern RULE =
            Pattern.compile("(?ms)^rule \"(\\S+) ([^\"]+)\"(.*?)^when$(.*?)^then$(.*?)^end$");
    private static final Pattern GROUND = Pattern.compile("because\\(\\s*\"([^\"]+)\"");
    private static final Pattern NUMBER = Pattern.compile("(?:==|!=|>=|<=|>|<)\\s*-?(\\d+(?:\\.\\d+)?)");
    private static final Pattern IMPORT = Pattern.compile("(?m)^import (?:static )?([\\w.*]+?);?$");

    private static final Map<String, String> BANNED = Map.ofEntries(
            Map.entry("salience", "two rules disagree silently"),
            Map.entry("agenda-group", "order comes from layers"),
            Map.entry("ruleflow-group", "order comes from layers"),
            Map.entry("activation-group", "order comes from layers"),
            Map.entry("auto-focus", "order comes from layers"),
            Map.entry("lock-on-active", "a rule changes what it matches"),
            Map.entry("no-loop", "a rule changes what it matches"),
            Map.entry("modify", "facts are immutable"),
            Map.entry("update(", "facts are immutable"),
            Map.entry("delete(", "conclusions go when their grounds go"),
            Map.entry("insert(", "only logical conclusions vanish with their grounds"),
            Map.entry("System.out", "rules have no side effects"),
            Map.entry("global ", "facts are the only input"),
            Map.entry("declare ", "facts are Java records"),
            Map.entry("function ", "arithmetic belongs to the fact"),
            Map.entry("eval(", "it can't be indexed"),
            Map.entry("dialect", "there is one"));

    private static final Set<String> FIRST_CALL_FACTS = Set.of(
            "Figure",
            "ShapeOfLoss",
            "TestDoubt",
            "Limit",
            "LimitRisk",
            "Threshold",
            "WorkshopLimit",
            "Finding",
            "Complaint",
            "RecentWork",
            "Candidate",
            "Axle",
            "Vehicle",
            "Symptom",
            "SymptomObservable",
            "UnsteadyAxle",
            "Deficiency",
            "Proof",
            "Refutation");

    private static final Set<String> SECOND_CALL_FACTS = Set.of(
            "SettledCause",
            "PolicyClause",
            "Obstacle",
            "PartState",
            "VehicleLayout",
            "AxleState",
            "RetestComparison",
            "LatelyRenewed",
            "GaugeUncertainty",
            "NeededEvidence",
            "PhotoTaken",
            "FluidRenewed",
            "Departure",
            "StandingSymptom",
            "StandingDeficiency",
            "ScopeProposal",
            "StepProposal",
            "CautionProposal",
            "FitnessGround",
            "VerificationGround");

    /** Conclusions that a layer may draw; questions may be asked everywhere. */
    private static final Map<Layer, Set<String>> OWN = new EnumMap<>(Map.of(
            Layer.DEFICIENCIES, Set.of("Deficiency"),
            Layer.SYMPTOMS,
                    Set.of("Symptom", "SymptomObservable", "DrivenCheckBarred", "OpeningBarred", "UnsteadyAxle"),
            Layer.CAUSES, Set.of("Proof", "Refutation", "ExplainedAway", "Likelier"),
            Layer.SCOPE,
                    Set.of("ScopeProposal", "FailedPart", "SoiledLining", "DueLine", "StandingLeak", "AwaitedEvidence"),
            Layer.WORK, Set.of("StepProposal", "CautionProposal", "WorkedWheel", "TestBarred", "UnaskedLine"),
            Layer.OUTCOME,
                    Set.of(
                            "FitnessGround",
                            "VerificationGround",
                            "OpenLine",
                            "StandingFault",
                            "StandingCause",
                            "DeficiencyInForce",
                            "BeddingAllowed",
                            "RefusedWork")));

    static List<Path> ruleFiles() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("rules"))) {
            return files.filter(file -> file.toString().endsWith(".drl"))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void all_rules_compile_together_and_bear_ids_sources_reasons_and_dates() {
        assertThat(RuleBench.all().rules()).isNotEmpty().allSatisfy(rule -> {
            assertThat(rule.id()).matches(rule.layer().prefix() + "-\\d{3}");
            assertThat(rule.holds()).as("sentence of %s", rule.id()).matches("[a-z0-9].*[^.]");
            assertThat(rule.reason()).as("reason of %s", rule.id()).matches("[a-z0-9].*[^.]");
            assertThat(rule.source()).as("source of %s", rule.id()).doesNotStartWith("\"");
            assertThat(LocalDate.parse(rule.since())).isBefore(LocalDate.of(2100, 1, 1));
        });
    }

    @ParameterizedTest
    @MethodSource("ruleFiles")
    void a_rule_file_bears_the_package_of_its_folder(Path file) throws IOException {
        String folder = file.getParent().toString().replace('/', '.');

        assertThat(Files.readString(file)
                        .lines()
                        .filter(line -> line.startsWith("package "))
                        .toList())
                .containsExactly("package " + folder);
    }

    @ParameterizedTest
    @MethodSource("ruleFiles")
    void a_rule_file_uses_no_banned_word(Path file) throws IOException {
        String text = withoutTexts(Files.readString(file));

        BANNED.forEach((word, why) -> assertThat(text)
                .as("%s uses '%s', banned because %s", file, word, why)
                .doesNotContain(word));
        assertThat(text).as("%s imports by wildcard", file).doesNotContainPattern("(?m)^import .*\\*");
    }

    @ParameterizedTest
    @MethodSource("ruleFiles")
    void a_rule_draws_one_conclusion_of_its_layer_and_names_itself_as_the_ground(Path file) throws IOException {
        Layer layer = Layer.ofPackage("rules." + file.getName(1));
        Matcher rule = RULE.matcher(Files.readString(file));
        int rules = 0;
        while (rule.find()) {
            rules++;
            String id = rule.group(1);
            String then = rule.group(5);
            assertThat(then.split("insertLogical\\(", -1))
                    .as("conclusions of %s", id)
                    .hasSize(2);
            assertThat(then.strip())
                    .as("consequence of %s", id)
                    .startsWith("insertLogical(new ")
                    .endsWith(";");
            assertThat(then.strip()
                            .chars()
                            .filter(character -> character == ';')
                            .count())
                    .as("statements of %s", id)
                    .isEqualTo(1);
            Matcher concluded = Pattern.compile("insertLogical\\(new (\\w+)\\(").matcher(then);
            assertThat(concluded.find()).isTrue();
            Set<String> allowed = new TreeSet<>(OWN.get(layer));
            allowed.add("OpenQuestion");
            assertThat(allowed).as("conclusion of %s", id).contains(concluded.group(1));
            Matcher ground = GROUND.matcher(then);
            assertThat(ground.find()).as("%s has a ground", id).isTrue();
            assertThat(ground.group(1)).as("id in the ground of %s", id).isEqualTo(id);
        }
        assertThat(rules)
                .as("every rule of %s has the house form", file)
                .isEqualTo((int) Files.readString(file)
                        .lines()
                        .filter(line -> line.startsWith("rule "))
                        .count())
                .isPositive();
    }

    @ParameterizedTest
    @MethodSource("ruleFiles")
    void a_rule_holds_no_number_but_none_and_one(Path file) throws IOException {
        Matcher rule = RULE.matcher(Files.readString(file));
        while (rule.find()) {
            Matcher number = NUMBER.matcher(withoutTexts(rule.group(4)));
            while (number.find()) {
                assertThat(number.group(1))
                        .as("number in %s: put it into the data files", rule.group(1))
                        .isIn("0", "1");
            }
        }
    }

    @ParameterizedTest
    @MethodSource("ruleFiles")
    void the_two_calls_of_the_rule_base_do_not_meet(Path file) throws IOException {
        Layer layer = Layer.ofPackage("rules." + file.getName(1));
        boolean first =
                EnumSet.of(Layer.DEFICIENCIES, Layer.SYMPTOMS, Layer.CAUSES).contains(layer);
        Set<String> foreign = first ? SECOND_CALL_FACTS : FIRST_CALL_FACTS;
        Matcher imported = IMPORT.matcher(Files.readString(file));
        List<String> met = new ArrayList<>();
        while (imported.find()) {
            String name = imported.group(1).substring(imported.group(1).lastIndexOf('.') + 1);
            if (foreign.contains(name)) {
                met.add(name);
            }
        }

        assertThat(met).as("facts of the other call in %s", file).isEmpty();
    }

    @Test
    void every_rule_is_named_in_a_test_or_in_what_a_scenario_expects() throws IOException {
        StringBuilder tests = new StringBuilder();
        try (Stream<Path> files = Files.walk(Path.of("src/test"))) {
            for (Path file : files.filter(Files::isRegularFile)
                    .filter(file -> file.toString().endsWith(".java")
                            || file.getFileName().toString().matches("expected.*\\.json")
                            || file.toString().contains("repairs-in-short"))
                    .toList()) {
                tests.append(Files.readString(file));
            }
        }

        assertThat(RuleBench.all().rules().stream().map(RuleText::id).filter(id -> tests.indexOf(id) < 0))
                .as("rules that no test names")
                .isEmpty();
    }

    private static String withoutTexts(String drl) {
        return drl.replaceAll("(?m)^\\s*@.*$", "")
                .replaceAll("(?s)/\\*.*?\\*/", "")
                .replaceAll("(?m)//.*$", "")
                .replaceAll("\"[^\"]*\"", "\"\"");
    }
}
