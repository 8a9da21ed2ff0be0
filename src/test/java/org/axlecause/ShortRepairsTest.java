package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.Reason;
import org.axlecause.facts.SiteTerms;
import org.axlecause.facts.VerificationOutcome;
import org.axlecause.inference.RuleBench;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.judgement.ShownCheck;
import org.axlecause.policy.PolicyFile;
import org.axlecause.regimes.Regimes;
import org.axlecause.repair.Change;
import org.axlecause.repair.PlanRepair;
import org.axlecause.repair.PlannedCaution;
import org.axlecause.repair.PlannedStep;
import org.axlecause.repair.RepairCatalogue;
import org.axlecause.repair.ScopeLine;
import org.axlecause.shared.YamlFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Repairs in a few words, judged by the whole judge: what each cause, measured value, obstacle and finding makes the
 * scope, the advice on use, the cautions and the proof. What a technician expects stands in the case; beside it the whole
 * scope, fitness, cautions and verification of each are held. {@code -Drepairs.write=true} writes the latter; read it
 * before you keep it.
 */
class ShortRepairsTest {

    private static final Path FOLDER = Path.of("src/test/resources/repairs-in-short");
    private static final Judge JUDGE = new Judge(
            RuleBench.all(), Regimes.released(), CauseModel.load(), new PlanRepair(RepairCatalogue.onClassPath()));
    private static final SiteTerms SITE = new SiteTerms("quay-street", ZoneId.of("Europe/London"), "GBP", "gb-annual");
    private static final Map<String, Judgement> JUDGED = new ConcurrentHashMap<>();

    static Stream<ShortRepair> repairs() throws IOException {
        List<ShortRepair> repairs = new ArrayList<>();
        try (Stream<Path> files = Files.list(FOLDER)) {
            for (Path file : files.filter(one -> one.toString().endsWith(".yaml"))
                    .filter(one -> !one.endsWith("rows.yaml"))
                    .sorted()
                    .toList()) {
                String name = file.getFileName().toString().replace(".yaml", "");
                YamlFile.ofText(file.toString(), Files.readString(file))
                        .root()
                        .items("repairs")
                        .forEach(node -> repairs.add(ShortRepair.of(name, node)));
            }
        }
        return repairs.stream();
    }

    @ParameterizedTest
    @MethodSource("repairs")
    void a_repair_is_as_a_technician_expects(ShortRepair told) {
        Judgement judged = judged(told);
        List<String> lines = judged.scope().stream().map(ShortRepair::words).toList();

        assertThat(told.makes())
                .as("lines of '%s', of %s", told, lines)
                .allMatch(wanted -> lines.stream().anyMatch(line -> meets(line, wanted)));
        assertThat(told.never())
                .as("lines that '%s' must not make, of %s", told, lines)
                .noneMatch(unwanted -> lines.stream().anyMatch(line -> line.startsWith(unwanted + " ")));
        if (!told.adds().isEmpty()) {
            assertThat(judged.scope().stream()
                            .filter(line -> line.sinceAgreement() == Change.ADDED)
                            .map(ShortRepairsTest::added)
                            .toList())
                    .as("lines that the customer has not agreed to in '%s'", told)
                    .containsExactlyInAnyOrderElementsOf(
                            told.adds().equals(List.of("nothing")) ? List.of() : told.adds());
        }
        List<String> cautions = judged.cautions().stream()
                .map(caution -> caution.code().toString())
                .toList();
        assertThat(cautions).as("cautions of '%s'", told).containsAll(told.cautions());
        assertThat(told.cautionsNever())
                .as("cautions that '%s' must not show", told)
                .noneMatch(cautions::contains);
        List<String> asked = judged.questions().stream()
                .map(question -> question.code() + " " + question.place().id())
                .toList();
        assertThat(asked).as("questions of '%s'", told).containsAll(told.asks());
        assertThat(told.asksNever())
                .as("questions that '%s' must not ask, of %s", told, asked)
                .noneMatch(unwanted -> asked.stream().anyMatch(question -> question.startsWith(unwanted)));
        List<String> steps = judged.workPlan().stream().map(PlannedStep::id).toList();
        if (!told.steps().isEmpty()) {
            assertThat(steps).as("steps of '%s'", told).containsSubsequence(told.steps());
        }
        assertThat(told.stepsNever()).as("steps that '%s' must not plan", told).noneMatch(steps::contains);
        if (!told.fitness().isEmpty()) {
            assertThat(fitness(judged)).as("fitness of '%s'", told).containsAll(told.fitness());
        }
        if (!told.verification().isEmpty()) {
            assertThat(verification(judged)).as("verification of '%s'", told).containsAll(told.verification());
        }
    }

    @Test
    void a_verified_repair_is_asked_no_more_checks_and_one_that_failed_is() throws IOException {
        assertThat(repairs()
                        .map(ShortRepairsTest::judged)
                        .filter(judged -> judged.verification().outcome() == VerificationOutcome.VERIFIED))
                .isNotEmpty()
                .allSatisfy(judged -> assertThat(judged.nextChecks()).allMatch(ShownCheck::lookingOver));

        assertThat(checksOf("a front wheel that comes back by itself and a repair that is proven"))
                .isEmpty();
        assertThat(checksOf("a front wheel that comes back by itself and a repair that is not"))
                .isNotEmpty();
    }

    private static List<CheckCode> checksOf(String repair) throws IOException {
        return repairs()
                .filter(told -> told.name().equals(repair))
                .flatMap(told -> judged(told).nextChecks().stream())
                .filter(check -> !check.lookingOver())
                .map(ShownCheck::check)
                .toList();
    }

    @Test
    void what_is_held_of_each_repair_still_comes_out() throws IOException {
        Map<String, List<ShortRepair>> byFile =
                repairs().collect(Collectors.groupingBy(ShortRepair::file, LinkedHashMap::new, Collectors.toList()));
        for (Map.Entry<String, List<ShortRepair>> file : byFile.entrySet()) {
            List<String> lines = new ArrayList<>();
            for (ShortRepair told : file.getValue()) {
                lines.add("# " + told.name());
                lines.addAll(whole(judged(told)));
                lines.add("");
            }
            Path expected = FOLDER.resolve(file.getKey() + ".expected.txt");
            if (Boolean.getBoolean("repairs.write")) {
                Files.write(expected, lines);
            }
            assertThat(lines).as("repairs of %s", file.getKey()).isEqualTo(Files.readAllLines(expected));
        }
    }

    @Test
    void every_row_of_the_tables_is_held_by_a_repair() throws IOException {
        TreeSet<String> held = new TreeSet<>();
        repairs().forEach(told -> held.addAll(told.rows()));
        TreeSet<String> asked =
                new TreeSet<>(YamlFile.ofText("rows.yaml", Files.readString(FOLDER.resolve("rows.yaml")))
                        .root()
                        .texts("rows"));

        assertThat(asked).isSubsetOf(held);
        assertThat(held).as("rows that nobody knows").isSubsetOf(asked);
    }

    @Test
    void every_caution_is_called_for_by_one_repair_and_not_by_another() throws IOException {
        TreeSet<String> shown = new TreeSet<>();
        TreeSet<String> kept = new TreeSet<>();
        repairs().forEach(told -> {
            shown.addAll(told.cautions());
            kept.addAll(told.cautionsNever());
        });

        assertThat(Stream.of(CautionCode.values()).map(CautionCode::toString))
                .as("cautions that a repair expects")
                .isSubsetOf(shown);
        assertThat(Stream.of(CautionCode.values()).map(CautionCode::toString))
                .as("cautions that a repair forbids")
                .isSubsetOf(kept);
    }

    @Test
    void a_caution_is_read_once_and_before_the_first_of_its_steps() throws IOException {
        repairs().forEach(told -> {
            Judgement judged = judged(told);
            List<String> steps = judged.workPlan().stream().map(PlannedStep::id).toList();
            assertThat(judged.cautions()).as("cautions of '%s'", told).doesNotHaveDuplicates();
            for (PlannedCaution caution : judged.cautions()) {
                List<String> at = judged.workPlan().stream()
                        .filter(step -> step.cautions().contains(caution.code()))
                        .map(PlannedStep::id)
                        .toList();
                assertThat(at)
                        .as("%s in '%s'", caution.code(), told)
                        .containsExactly(caution.before().get(0));
                assertThat(caution.before())
                        .as("%s in '%s'", caution.code(), told)
                        .isSortedAccordingTo((one, other) -> steps.indexOf(one) - steps.indexOf(other));
                assertThat(caution.source()).isNotBlank();
            }
        });
    }

    private static Judgement judged(ShortRepair told) {
        return JUDGED.computeIfAbsent(
                told.toString(),
                key -> told.judged(history ->
                        JUDGE.judge(new Matter(history, SITE, PolicyFile.baseline(), CauseWeights.BOOK, null, null))));
    }

    /** Whether the line is the wanted one: same id, necessity and quantity, and the wanted rules among its own. */
    private static boolean meets(String line, String wanted) {
        String[] have = line.split(" by ", -1);
        String[] want = wanted.split(" by ", -1);
        return have[0].equals(want[0]) && List.of(have[1].split(",", -1)).containsAll(List.of(want[1].split(",", -1)));
    }

    private static String added(ScopeLine line) {
        return line.id() + " " + line.necessity() + " for the " + line.agreementBy()
                + (line.usualHours() == null
                        ? ""
                        : ", " + line.usualHours().from() + " to "
                                + line.usualHours().to() + " h");
    }

    private static List<String> fitness(Judgement judged) {
        List<String> words = new ArrayList<>();
        words.add(judged.fitness().level().toString());
        judged.fitness().because().stream()
                .map(Reason::rule)
                .distinct()
                .sorted()
                .forEach(words::add);
        judged.fitness().refused().forEach(refusal -> words.add(refusal.decision() + " " + refusal.line()));
        return words;
    }

    private static List<String> verification(Judgement judged) {
        List<String> words = new ArrayList<>();
        words.add(judged.verification().outcome().toString());
        judged.verification().because().stream()
                .map(Reason::rule)
                .distinct()
                .sorted()
                .forEach(words::add);
        if (judged.verification().inspection() != null) {
            words.add("inspection " + judged.verification().inspection().result());
        }
        return words;
    }

    private static List<String> whole(Judgement judged) {
        List<String> lines = new ArrayList<>();
        for (ScopeLine line : judged.scope()) {
            lines.add("scope " + ShortRepair.words(line)
                    + (line.standing() == LineStanding.PROPOSED ? "" : ", " + line.standing())
                    + (line.sinceAgreement() == null ? "" : ", " + line.sinceAgreement()));
        }
        lines.add("steps "
                + judged.workPlan().stream()
                        .map(step -> step.id()
                                + (step.outcome() == null ? "" : " (" + step.outcome() + ")")
                                + (step.heldBy().isEmpty() ? "" : " (held)"))
                        .collect(Collectors.joining(", ")));
        lines.add("cautions "
                + judged.cautions().stream()
                        .map(caution -> caution.code().toString())
                        .sorted()
                        .collect(Collectors.joining(", ")));
        lines.add("fitness " + String.join(" ", fitness(judged)));
        lines.add("verification " + String.join(" ", verification(judged)));
        judged.questions().stream()
                .map(question ->
                        "asks " + question.code() + " " + question.place().id())
                .distinct()
                .forEach(lines::add);
        return lines;
    }
}
