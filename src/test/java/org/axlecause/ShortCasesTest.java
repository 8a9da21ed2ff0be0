package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.diagnosis.ScopeMark;
import org.axlecause.diagnosis.WheelBrake;
import org.axlecause.facts.Axle;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.History;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.SiteTerms;
import org.axlecause.inference.RuleBench;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.judgement.ShownCause;
import org.axlecause.policy.PolicyFile;
import org.axlecause.regimes.Regimes;
import org.axlecause.repair.PlanRepair;
import org.axlecause.repair.RepairCatalogue;
import org.axlecause.repair.ScopeLine;
import org.axlecause.shared.YamlFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Cases in a few words, judged by the whole judge without a database. What a technician would say of each stands in the
 * case itself; beside it causes from five in a hundred up, their chains, the scope and the cautions are held strictly and
 * probabilities to 0.02. {@code -Dshortcases.write=true} writes the latter; read it before you keep it.
 */
class ShortCasesTest {

    private static final Path FOLDER = Path.of("src/test/resources/cases-in-short");
    private static final BigDecimal SHOWN_FROM = new BigDecimal("0.05");
    private static final BigDecimal TOLERANCE = new BigDecimal("0.02");
    private static final CauseModel MODEL = CauseModel.load();
    private static final Judge JUDGE = judge();
    private static final SiteTerms SITE = new SiteTerms("quay-street", ZoneId.of("Europe/London"), "GBP", "gb-annual");

    static Stream<ShortCase> cases() throws IOException {
        List<ShortCase> cases = new ArrayList<>();
        try (Stream<Path> files = Files.list(FOLDER)) {
            for (Path file : files.filter(one -> one.toString().endsWith(".yaml"))
                    .filter(one -> !one.endsWith("subjects.yaml"))
                    .sorted()
                    .toList()) {
                String name = file.getFileName().toString().replace(".yaml", "");
                YamlFile.ofText(file.toString(), Files.readString(file))
                        .root()
                        .items("cases")
                        .forEach(node -> cases.add(ShortCase.of(name, node)));
            }
        }
        return cases.stream();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void a_case_is_judged_as_a_technician_would(ShortCase told) {
        Judgement judged = judged(told);

        List<String> ranked = judged.causes().stream()
                .filter(cause -> cause.standing() != CauseStanding.RULED_OUT)
                .map(cause -> cause.code() + " " + cause.place().id())
                .toList();
        assertThat(ranked.subList(0, Math.min(told.likeliest().size(), ranked.size())))
                .as(
                        "likeliest causes of '%s', of %s",
                        told,
                        judged.causes().stream()
                                .map(cause -> cause.code() + " " + cause.place().id() + " " + cause.probability())
                                .limit(12)
                                .toList())
                .containsExactlyInAnyOrderElementsOf(told.likeliest());
        BigDecimal least = told.likeliest().isEmpty()
                ? BigDecimal.ONE
                : judged.causes().get(told.likeliest().size() - 1).probability();
        for (String unlikelier : told.unlikelier()) {
            BigDecimal probability = judged.causes().stream()
                    .filter(cause -> (cause.code() + " " + cause.place().id()).equals(unlikelier))
                    .map(ShownCause::probability)
                    .findFirst()
                    .orElse(BigDecimal.ZERO);
            assertThat(probability).as("%s in '%s'", unlikelier, told).isLessThan(least.min(new BigDecimal("0.5")));
        }
        assertThat(judged.questions().stream()
                        .map(question ->
                                question.code() + " " + question.place().id())
                        .toList())
                .as("questions of '%s'", told)
                .containsAll(told.asks());
        List<String> checks = judged.nextChecks().stream()
                .map(check -> check.check().toString())
                .distinct()
                .toList();
        assertThat(checks.subList(0, Math.min(checks.size(), told.checksFirst().size())))
                .as("first checks of '%s', of %s", told, checks)
                .containsExactlyInAnyOrderElementsOf(told.checksFirst());
        assertThat(checks).as("checks of '%s'", told).noneMatch(told.checksNever()::contains);
    }

    @Test
    void what_is_held_of_each_case_still_comes_out() throws IOException {
        Map<String, List<ShortCase>> byFile =
                cases().collect(Collectors.groupingBy(ShortCase::file, LinkedHashMap::new, Collectors.toList()));
        for (Map.Entry<String, List<ShortCase>> file : byFile.entrySet()) {
            List<String> lines = new ArrayList<>();
            for (ShortCase told : file.getValue()) {
                lines.add("# " + told.name());
                lines.addAll(lines(judged(told)));
                lines.add("");
            }
            Path expected = FOLDER.resolve(file.getKey() + ".expected.txt");
            if (Boolean.getBoolean("shortcases.write")) {
                Files.write(expected, lines);
            }
            assertThat(Compared.of(lines, Files.readAllLines(expected)))
                    .as("cases of %s", file.getKey())
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("cases")
    void a_confirmed_root_makes_the_scope_that_the_model_says(ShortCase told) {
        Judgement judged = judged(told);
        List<String> missing = new ArrayList<>();
        for (ShownCause cause : judged.causes()) {
            if (cause.standing() == CauseStanding.CONFIRMED && cause.root()) {
                for (ScopeMark mark : signature(cause.code())) {
                    if (holdsAt(mark, cause, told)
                            && judged.scope().stream().noneMatch(line -> makes(line, mark, cause))) {
                        missing.add(cause.code() + ": " + mark.action() + " " + mark.item() + " " + mark.extent());
                    }
                }
            }
        }

        assertThat(missing)
                .as(
                        "missing in the scope of '%s', %s",
                        told, judged.scope().stream().map(ScopeLine::id).toList())
                .isEmpty();
    }

    /**
     * The model decides by these signatures when doubt no longer matters, so no required line may come of a cause
     * unannounced but cleaning and small parts, which go along with the work.
     */
    @ParameterizedTest
    @MethodSource("cases")
    void no_cause_makes_a_scope_that_the_model_does_not_say(ShortCase told) {
        Judgement judged = judged(told);
        List<String> unannounced = new ArrayList<>();
        for (ShownCause cause : judged.causes()) {
            String ground = cause.code() + " " + cause.standing() + " at " + cause.place();
            for (ScopeLine line : judged.scope()) {
                boolean becauseOfIt = line.because().stream()
                        .anyMatch(reason -> reason.facts().contains(ground));
                if (becauseOfIt
                        && line.necessity() == Necessity.REQUIRED
                        && line.action() != ScopeAction.CLEAN
                        && line.item() != ScopeItem.HARDWARE_KIT
                        && signature(cause.code()).stream()
                                .noneMatch(mark -> mark.action() == line.action() && mark.item() == line.item())) {
                    unannounced.add(cause.code() + ": " + line.id());
                }
            }
        }

        assertThat(unannounced)
                .as("lines of '%s' that no signature names", told)
                .isEmpty();
    }

    @Test
    void a_case_is_judged_alike_whatever_was_judged_before_it() throws IOException {
        Judge used = judge();
        List<ShortCase> cases = cases().toList();
        List<Judgement> forwards = new ArrayList<>();
        cases.forEach(told -> forwards.add(judged(told, used)));

        for (int i = cases.size() - 1; i >= 0; i--) {
            ShortCase told = cases.get(i);
            assertThat(judged(told, used)).as("'%s', judged again", told).isEqualTo(forwards.get(i));
            if (i % 10 == 0) {
                assertThat(judged(told, judge()))
                        .as("'%s', judged by a judge who saw nothing else", told)
                        .isEqualTo(forwards.get(i));
            }
        }
    }

    private static List<ScopeMark> signature(CauseCode code) {
        return MODEL.causes().stream()
                .filter(cause -> cause.code() == code)
                .findFirst()
                .orElseThrow()
                .signature();
    }

    /** Whether what the mark is for, drum or disc, is at the place of the cause. */
    private static boolean holdsAt(ScopeMark mark, ShownCause cause, ShortCase told) {
        Integer number = cause.place().axle();
        if (mark.on() == null) {
            return true;
        }
        Axle axle = number == null ? null : told.vehicle().axle(number);
        return axle != null && WheelBrake.of(axle) == mark.on();
    }

    private static boolean makes(ScopeLine line, ScopeMark mark, ShownCause cause) {
        return line.action() == mark.action()
                && line.item() == mark.item()
                && (line.place().axle() == null
                        || cause.place().axle() == null
                        || line.place().meets(cause.place())
                        || line.place().meets(cause.place().axlePlace()));
    }

    @Test
    void every_cause_pattern_rule_key_and_trap_is_held_by_a_case() throws IOException {
        TreeSet<String> held = new TreeSet<>();
        cases().forEach(told -> held.addAll(told.holds()));
        TreeSet<String> asked =
                new TreeSet<>(YamlFile.ofText("subjects.yaml", Files.readString(FOLDER.resolve("subjects.yaml")))
                        .root()
                        .texts("subjects"));
        for (CauseCode cause : CauseCode.values()) {
            asked.add(cause.toString());
        }

        assertThat(asked).isSubsetOf(held);
        assertThat(held).as("subjects that nobody knows").isSubsetOf(asked);
    }

    private static Judge judge() {
        return new Judge(RuleBench.all(), Regimes.released(), MODEL, new PlanRepair(RepairCatalogue.onClassPath()));
    }

    private static Judgement judged(ShortCase told) {
        return judged(told, JUDGE);
    }

    private static Judgement judged(ShortCase told, Judge judge) {
        return judge.judge(new Matter(
                new History("QS-1", told.entries()), SITE, PolicyFile.baseline(), CauseWeights.BOOK, null, null));
    }

    private static List<String> lines(Judgement judged) {
        List<String> causes = new ArrayList<>();
        for (ShownCause cause : judged.causes()) {
            if (cause.standing() != CauseStanding.RULED_OUT
                    && cause.probability().compareTo(SHOWN_FROM) >= 0) {
                causes.add("cause " + cause.code() + " " + cause.place().id() + " " + cause.standing()
                        + (cause.root() ? " root" : "") + ": "
                        + cause.chain().stream()
                                .map(node -> node.code() + (node.basis().equals("seen") ? "" : "?"))
                                .collect(Collectors.joining(" > "))
                        + " = " + cause.probability());
            }
        }
        causes.sort(null);
        List<String> lines = new ArrayList<>(causes);
        judged.scope().stream()
                .map(line -> "scope " + line.id() + " " + line.necessity())
                .sorted()
                .forEach(lines::add);
        lines.add("cautions "
                + judged.cautions().stream()
                        .map(caution -> caution.code().toString())
                        .sorted()
                        .collect(Collectors.joining(", ")));
        return lines;
    }

    /** Two tellings of the same cases, probabilities apart by no more than the tolerance. */
    private static final class Compared {

        private Compared() {}

        static List<String> of(List<String> came, List<String> expected) {
            Map<String, BigDecimal> first = byText(came);
            Map<String, BigDecimal> second = byText(expected);
            List<String> differences = new ArrayList<>();
            first.forEach((text, probability) -> {
                BigDecimal other = second.get(text);
                boolean near = probability.compareTo(SHOWN_FROM.add(TOLERANCE)) < 0;
                if (other == null ? !near : other.subtract(probability).abs().compareTo(TOLERANCE) > 0) {
                    differences.add("came: " + text + " = " + probability + ", expected " + other);
                }
            });
            second.forEach((text, probability) -> {
                if (!first.containsKey(text) && probability.compareTo(SHOWN_FROM.add(TOLERANCE)) >= 0) {
                    differences.add("missing: " + text + " = " + probability);
                }
            });
            return differences;
        }

        private static Map<String, BigDecimal> byText(List<String> lines) {
            Map<String, BigDecimal> byText = new LinkedHashMap<>();
            String about = "";
            for (String line : lines) {
                if (line.startsWith("# ")) {
                    about = line;
                }
                int at = line.lastIndexOf(" = ");
                byText.put(
                        about + " | " + (at < 0 ? line : line.substring(0, at)),
                        at < 0 ? BigDecimal.ONE : new BigDecimal(line.substring(at + 3)));
            }
            return byText;
        }
    }
}
