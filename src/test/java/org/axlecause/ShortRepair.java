package org.axlecause;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Decision;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.History;
import org.axlecause.facts.InspectionResult;
import org.axlecause.facts.InspectionResulted;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.NoticedDeficiency;
import org.axlecause.facts.ObstacleMet;
import org.axlecause.facts.Party;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.ScopeDecided;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.facts.WorkReported;
import org.axlecause.judgement.Judgement;
import org.axlecause.measurement.MeasureTest;
import org.axlecause.repair.PlannedStep;
import org.axlecause.repair.ScopeLine;
import org.axlecause.shared.YamlNode;

/**
 * A repair told in a few words, by the words of {@link ShortCase}, and what a technician would expect of it. What happens
 * stands in {@code happens}, in order: {@code test …}, {@code found …}, {@code during …} and {@code after …} with the words
 * of a test or finding; {@code read …} right after a test with what its trace shows; {@code obstacle pipe-union turns-with-pipe axle-2-left}; {@code agreed LINE}, {@code refused LINE},
 * {@code later LINE}; {@code done STEP}, {@code not-possible STEP}; {@code inspection failed 1.2.1}. {@code customer
 * decides} agrees to every required line that is open and refuses the others; {@code workshop works} reports every open
 * step but the tests.
 */
record ShortRepair(
        String file,
        String name,
        List<String> rows,
        YamlNode told,
        List<String> happens,
        List<String> makes,
        List<String> never,
        List<String> adds,
        List<String> cautions,
        List<String> cautionsNever,
        List<String> asks,
        List<String> asksNever,
        List<String> steps,
        List<String> stepsNever,
        List<String> fitness,
        List<String> verification) {

    private static final OffsetDateTime ARRIVED = OffsetDateTime.parse("2026-03-02T08:15:00Z");

    static ShortRepair of(String file, YamlNode node) {
        node.only(
                "name",
                "rows",
                "vehicle",
                "complaints",
                "work",
                "happens",
                "makes",
                "never",
                "adds",
                "cautions",
                "cautions-never",
                "asks",
                "asks-never",
                "steps",
                "steps-never",
                "fitness",
                "verification");
        return new ShortRepair(
                file,
                node.text("name"),
                node.texts("rows"),
                node,
                node.texts("happens"),
                node.texts("makes"),
                node.texts("never"),
                node.texts("adds"),
                node.texts("cautions"),
                node.texts("cautions-never"),
                node.texts("asks"),
                node.texts("asks-never"),
                node.texts("steps"),
                node.texts("steps-never"),
                node.texts("fitness"),
                node.texts("verification"));
    }

    /** What happens alone, without what is expected of it. */
    static ShortRepair happening(String file, String name, YamlNode told) {
        List<String> none = List.of();
        return new ShortRepair(
                file,
                name,
                none,
                told,
                told.texts("happens"),
                none,
                none,
                none,
                none,
                none,
                none,
                none,
                none,
                none,
                none,
                none);
    }

    /** The judgement once all has happened. */
    Judgement judged(Function<History, Judgement> judge) {
        List<Recorded> entries = new ArrayList<>();
        add(ShortCase.presented(told), entries);
        for (String words : happens) {
            int blank = words.indexOf(' ');
            String what = words.substring(0, blank);
            String rest = words.substring(blank + 1);
            switch (what) {
                case "test" -> add(ShortCase.test(rest), entries);
                case "read" -> entries.add(ShortCase.read(rest, entries.remove(entries.size() - 1)));
                case "found" -> add(ShortCase.found(FindingStage.AS_FOUND, rest), entries);
                case "during" -> add(ShortCase.found(FindingStage.DURING_WORK, rest), entries);
                case "after" -> add(ShortCase.found(FindingStage.AFTER_WORK, rest), entries);
                case "obstacle" -> add(obstacle(rest.split(" ", -1)), entries);
                case "agreed", "refused", "later" ->
                    add(new ScopeDecided(List.of(decision(rest, ShortCase.code(Decision.class, what)))), entries);
                case "done" -> add(new WorkReported(rest, WorkOutcome.DONE, List.of()), entries);
                case "not-possible" -> add(new WorkReported(rest, WorkOutcome.NOT_POSSIBLE, List.of()), entries);
                case "inspection" -> add(inspection(rest.split(" ", -1)), entries);
                case "customer" -> add(decided(judge.apply(history(entries))), entries);
                case "workshop" -> works(judge.apply(history(entries))).forEach(step -> add(step, entries));
                default -> throw new IllegalArgumentException("'" + words + "' in " + this);
            }
        }
        return judge.apply(history(entries));
    }

    private static History history(List<Recorded> entries) {
        return new History("QS-1", entries);
    }

    private static void add(Entry entry, List<Recorded> entries) {
        EntryId id = new EntryId("/bay", "e-" + (100 + entries.size()));
        entries.add(new Recorded(
                id,
                ARRIVED.plusMinutes(entries.size()),
                entry,
                entry instanceof RollerTestRecorded test ? MeasureTest.of(id, test) : null));
    }

    private static ObstacleMet obstacle(String... words) {
        return new ObstacleMet(
                ShortCase.code(Component.class, words[0]),
                ShortCase.code(Condition.class, words[1]),
                ShortCase.place(words[2]),
                null);
    }

    private static InspectionResulted inspection(String... words) {
        List<NoticedDeficiency> items = new ArrayList<>();
        for (int i = 1; i < words.length; i++) {
            items.add(new NoticedDeficiency(words[i], null));
        }
        return new InspectionResulted(ShortCase.code(InspectionResult.class, words[0]), items);
    }

    private static LineDecision decision(String line, Decision decision) {
        return new LineDecision(line, decision, Party.CUSTOMER, null, null, null, null, null);
    }

    private static ScopeDecided decided(Judgement judged) {
        return new ScopeDecided(judged.scope().stream()
                .filter(line -> line.standing() == LineStanding.PROPOSED)
                .map(line -> new LineDecision(
                        line.id(),
                        line.necessity() == Necessity.REQUIRED ? Decision.AGREED : Decision.REFUSED,
                        Party.CUSTOMER,
                        null,
                        line.necessity(),
                        line.quantity().value(),
                        null,
                        null))
                .toList());
    }

    private static List<WorkReported> works(Judgement judged) {
        return judged.workPlan().stream()
                .filter(step -> step.outcome() == null)
                .map(PlannedStep::id)
                .filter(step -> !step.contains("roller-test"))
                .map(step -> new WorkReported(step, WorkOutcome.DONE, List.of()))
                .toList();
    }

    /** A line as the tables tell it: id, necessity, quantity with its unit, and the rules behind it. */
    static String words(ScopeLine line) {
        String unit = line.quantity().unit();
        return line.id() + " " + line.necessity() + " "
                + line.quantity().value().toPlainString()
                + (unit.equals("1") ? "" : " " + unit) + " by "
                + String.join(
                        ",",
                        line.because().stream()
                                .map(reason -> reason.rule())
                                .distinct()
                                .sorted()
                                .toList());
    }

    @Override
    public String toString() {
        return file + ": " + name;
    }
}
