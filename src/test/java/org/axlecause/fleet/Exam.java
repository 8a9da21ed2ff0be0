package org.axlecause.fleet;

import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.LongStream;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.facts.Agent;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.History;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Place;
import org.axlecause.facts.Policy;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.Side;
import org.axlecause.facts.SiteTerms;
import org.axlecause.facts.Spot;
import org.axlecause.facts.Vehicle;
import org.axlecause.inference.RuleBase;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.judgement.ShownCheck;
import org.axlecause.measurement.MeasureTest;
import org.axlecause.policy.PolicyFile;
import org.axlecause.regimes.Regimes;
import org.axlecause.repair.PlanRepair;
import org.axlecause.repair.RepairCatalogue;
import org.jspecify.annotations.Nullable;

/** Lets the judge work through invented cases, check by check, until it stops asking. */
final class Exam {

    static final String SITE = "quay-street";
    private static final int MOST_CHECKS = 40;
    private static final int ROUNDS = 3;
    private static final OffsetDateTime ARRIVED = OffsetDateTime.of(2026, 3, 2, 8, 0, 0, 0, ZoneOffset.UTC);

    private final Judge judge;
    private final Policy policy = PolicyFile.baseline();
    private final SiteTerms site = new SiteTerms(SITE, ZoneId.of("Europe/London"), "GBP", "gb-annual");
    private final CaseDraw draw;

    Exam(RuleBase rules, FaultTable faults) {
        this.judge =
                new Judge(rules, Regimes.released(), CauseModel.load(), new PlanRepair(RepairCatalogue.onClassPath()));
        this.draw = CaseDraw.at(SITE, faults);
    }

    /** The results of the cases of these seeds, in their order. */
    List<ExamCase> take(long firstSeed, int cases) {
        return LongStream.range(firstSeed, firstSeed + cases)
                .parallel()
                .mapToObj(seed -> take(draw.of(seed)))
                .toList();
    }

    ExamCase take(DrawnCase drawn) {
        List<Recorded> entries = new ArrayList<>();
        add(drawn.presented(), entries);
        drawn.tests().forEach(test -> add(test, entries));
        Judgement afterRollers = judge(entries);
        Judgement now = afterRollers;
        List<ExamCase.Asked> asked = new ArrayList<>();
        while (!now.nextChecks().isEmpty() && asked.size() < MOST_CHECKS) {
            ShownCheck next = now.nextChecks().get(0);
            int wrongBefore = drawn.technician().wrongAnswers();
            List<Entry> answers = drawn.technician().answer(next.check(), next.place(), offers(next));
            asked.add(new ExamCase.Asked(
                    next.check(),
                    next.place(),
                    next.lookingOver(),
                    drawn.technician().wrongAnswers() > wrongBefore,
                    answers));
            if (answers.isEmpty()) {
                break;
            }
            answers.forEach(answer -> add(answer, entries));
            now = judge(entries);
        }
        return new ExamCase(drawn, afterRollers, now, asked);
    }

    /**
     * A case after everything on its list of checks was looked at, all at a time.
     *
     * @param seed seed of the case
     * @param vehicle the vehicle
     * @param states what was found, as states of parts
     * @param judged the judgement
     */
    record Looked(long seed, Vehicle vehicle, List<PartState> states, Judgement judged) {}

    /** The case of this seed with all checks answered that are asked for in a few rounds. */
    Looked lookedOver(long seed) {
        DrawnCase drawn = draw.of(seed);
        List<Recorded> entries = new ArrayList<>();
        add(drawn.presented(), entries);
        drawn.tests().forEach(test -> add(test, entries));
        Judgement now = judge(entries);
        for (int round = 0; round < ROUNDS && !now.nextChecks().isEmpty(); round++) {
            for (ShownCheck next : now.nextChecks()) {
                drawn.technician()
                        .answer(next.check(), next.place(), offers(next))
                        .forEach(answer -> add(answer, entries));
            }
            now = judge(entries);
        }
        List<PartState> states = entries.stream()
                .filter(recorded -> recorded.entry() instanceof FindingRecorded)
                .map(DrawnRepairsTest::state)
                .toList();
        return new Looked(seed, drawn.presented().vehicle(), states, now);
    }

    private Judgement judge(List<Recorded> entries) {
        return judge.judge(new Matter(new History("EX-1", entries), site, policy, CauseWeights.BOOK, null, null));
    }

    private static void add(Entry entry, List<Recorded> entries) {
        EntryId id = new EntryId("/exam", "e" + (1000 + entries.size()));
        entries.add(new Recorded(
                id,
                ARRIVED.plusMinutes(entries.size()),
                entry,
                entry instanceof RollerTestRecorded test ? MeasureTest.of(id, test) : null));
    }

    private static List<Offer> offers(ShownCheck check) {
        return check.answers().stream().map(answer -> offer(answer, check)).toList();
    }

    /** The template of an event as what it says. */
    private static Offer offer(ShownCheck.ShownAnswer answer, ShownCheck check) {
        Map<String, Object> data = answer.data();
        if (answer.type().equals(EntryType.ROLLER_TEST_RECORDED.toString())) {
            return new Offer(code(BrakeSystem.class, data.get("brake")), null, null, check.place(), null, null);
        }
        Place place = new Place(
                (Integer) data.get("axle"),
                code(Side.class, data.get("side")),
                code(Spot.class, data.get("spot")),
                (Integer) data.get("circuit"));
        Map<?, ?> measurement = (Map<?, ?>) data.get("measurement");
        return new Offer(
                null,
                code(Component.class, data.get("component")),
                code(Condition.class, data.get("condition")),
                place,
                code(Agent.class, data.get("agent")),
                measurement == null ? null : code(MeasuredQuantity.class, measurement.get("quantity")));
    }

    private static <E extends Enum<E>> @Nullable E code(Class<E> codes, @Nullable Object text) {
        if (text == null) {
            return null;
        }
        for (E constant : codes.getEnumConstants()) {
            if (constant.toString().equals(text)) {
                return constant;
            }
        }
        throw new IllegalArgumentException(codes.getSimpleName() + " has no " + text);
    }

    /** Check codes in the order asked, for a report. */
    static String path(List<ExamCase.Asked> asked) {
        return String.join(
                ", ",
                asked.stream()
                        .map(one -> one.check() + "@" + one.place().id() + (one.wrong() ? "!" : ""))
                        .toList());
    }
}
