package org.axlecause.inference;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.axlecause.facts.Agent;
import org.axlecause.facts.Axle;
import org.axlecause.facts.AxleState;
import org.axlecause.facts.Bound;
import org.axlecause.facts.BrakeBuild;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Complaint;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DecidedLine;
import org.axlecause.facts.Decision;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.Departure;
import org.axlecause.facts.Deviation;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.EarlierFigure;
import org.axlecause.facts.EarlierShape;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Exemption;
import org.axlecause.facts.ExpectedForce;
import org.axlecause.facts.Extent;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Finding;
import org.axlecause.facts.FindingLimit;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.FluidRenewed;
import org.axlecause.facts.GaugeUncertainty;
import org.axlecause.facts.InspectedItem;
import org.axlecause.facts.LatelyRenewed;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitRisk;
import org.axlecause.facts.LimitStanding;
import org.axlecause.facts.LineDone;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Measurement;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.NeededEvidence;
import org.axlecause.facts.Obstacle;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Party;
import org.axlecause.facts.PhotoTaken;
import org.axlecause.facts.Place;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.RecentWork;
import org.axlecause.facts.RegimeGap;
import org.axlecause.facts.ReportedCondition;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.RetestComparison;
import org.axlecause.facts.RetestRound;
import org.axlecause.facts.RoadDeviation;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.SettledCause;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.Side;
import org.axlecause.facts.Spot;
import org.axlecause.facts.Stage;
import org.axlecause.facts.StandingDeficiency;
import org.axlecause.facts.StandingSymptom;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.Strength;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.TestedAxle;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.UnlookedPart;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehicleLayout;
import org.axlecause.facts.Verified;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.facts.WorkshopLimit;
import org.axlecause.inference.ComparedRuleBase.Call;
import org.jspecify.annotations.Nullable;

/**
 * Facts drawn without regard to what any vehicle could show, so that rules meet that hardly ever meet in a case: few
 * places, tests and values, every code, and gaps wherever something may be unknown.
 */
public final class DrawnFacts {

    private static final int AXLES = 2;
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    private static final String SOURCE = "drawn";

    private final Random random;
    private final int size;

    private DrawnFacts(long seed) {
        this.random = new Random(seed);
        this.size = 1 + random.nextInt(16);
    }

    /** Facts of the first call: what was measured, found and reported. */
    public static Call first(long seed) {
        return new DrawnFacts(seed).first();
    }

    /** Facts of the second call: what stands, was decided and was done; decisions and work are of these lines too. */
    public static Call second(long seed, List<LineKey> proposed) {
        return new DrawnFacts(seed).second(proposed);
    }

    private Call first() {
        Vehicle vehicle = vehicle();
        List<Object> facts = new ArrayList<>(vehicle.axles());
        facts.add(vehicle);
        addSome(
                facts,
                2,
                number -> new Finding(
                        id("finding", number),
                        one(FindingStage.class),
                        one(Component.class),
                        condition(),
                        place(),
                        maybe(() -> one(CheckCode.class)),
                        maybe(() -> one(Extent.class)),
                        maybe(() -> one(Agent.class)),
                        measurement()));
        addSome(facts, 8, number -> figure());
        addSome(facts, 2, number -> new EarlierFigure(figure()));
        addSome(facts, 1, number -> shape());
        addSome(facts, 1, number -> new EarlierShape(shape()));
        addSome(facts, 1, number -> new TestDoubt(one(DoubtCode.class), place(), test(), "doubt " + number));
        addSome(
                facts,
                1,
                number -> new Exemption(
                        one(FigureKind.class),
                        test(),
                        one(Stage.class),
                        one(BrakeSystem.class),
                        place(),
                        "exempt " + number));
        addSome(
                facts,
                1,
                number -> new RoadDeviation(test(), one(Stage.class), one(BrakeSystem.class), one(Deviation.class)));
        addSome(facts, 1, number -> new LimitRisk(figure(), limit(), share(), maybe(this::share)));
        addSome(
                facts,
                1,
                number -> new ExpectedForce(place(), test(), one(Stage.class), one(BrakeSystem.class), value()));
        addSome(
                facts,
                1,
                number -> new ReportedCondition(one(TestCondition.class), place(), test(), one(BrakeSystem.class)));
        addSome(facts, 1, number -> new RecentWork(one(ScopeItem.class), place(), null, maybe(this::value)));
        addSome(facts, 1, number -> new Complaint(one(ComplaintCode.class)));
        Collections.shuffle(facts, random);
        return new Call(
                List.of(candidates(), thresholds(), workshopLimits(), limits(), findingLimits(), items(), gaps()),
                facts);
    }

    private List<Candidate> candidates() {
        return Stream.of(CauseCode.values())
                .flatMap(code ->
                        Stream.generate(() -> new Candidate(code, place())).limit(random.nextInt(4)))
                .distinct()
                .toList();
    }

    private List<Threshold> thresholds() {
        return Stream.of(ThresholdCode.values())
                .filter(code -> random.nextInt(20) > 0)
                .map(code -> new Threshold(code, random.nextBoolean() ? share() : value(), one(Verified.class), SOURCE))
                .toList();
    }

    private List<WorkshopLimit> workshopLimits() {
        return some(
                1,
                number -> new WorkshopLimit(
                        one(FigureKind.class),
                        one(BrakeSystem.class),
                        maybe(this::axle),
                        maybe(() -> one(BrakeBuild.class)),
                        value(),
                        SOURCE));
    }

    private List<Limit> limits() {
        return some(4, number -> limit());
    }

    private Limit limit() {
        return new Limit(
                one(DeficiencyCode.class),
                one(FigureKind.class),
                one(BrakeSystem.class),
                place(),
                one(Bound.class),
                value(),
                maybe(() -> one(DeficiencyClass.class)),
                maybe(() -> "1." + random.nextInt(3)),
                one(LimitStanding.class),
                one(Verified.class),
                SOURCE);
    }

    private List<FindingLimit> findingLimits() {
        return some(
                2,
                number -> new FindingLimit(
                        one(DeficiencyCode.class),
                        some(1, part -> one(Component.class)),
                        some(1, state -> condition()),
                        maybe(() -> one(MeasuredQuantity.class)),
                        random.nextInt(4) > 0 ? null : one(Bound.class),
                        maybe(this::value),
                        random.nextBoolean() ? List.of() : List.of(axle()),
                        random.nextBoolean(),
                        maybe(() -> one(DeficiencyClass.class)),
                        maybe(() -> "2." + number),
                        one(Verified.class),
                        SOURCE));
    }

    private List<InspectedItem> items() {
        return some(
                1,
                number -> new InspectedItem(
                        one(DeficiencyCode.class),
                        one(BrakeSystem.class),
                        maybe(() -> one(DeficiencyClass.class)),
                        maybe(() -> "3." + number),
                        one(Verified.class),
                        SOURCE));
    }

    private List<RegimeGap> gaps() {
        return some(1, number -> new RegimeGap(one(QuestionCode.class), place(), "gap " + number, "tell it"));
    }

    private Call second(List<LineKey> proposed) {
        Set<LineKey> lines = new TreeSet<>(proposed);
        lines.addAll(some(1, number -> new LineKey(one(ScopeAction.class), one(ScopeItem.class), place())));
        List<Object> facts = new ArrayList<>();
        Vehicle vehicle = vehicle();
        facts.add(new VehicleLayout(vehicle, DAY));
        vehicle.axles().forEach(axle -> facts.add(new AxleState(axle, random.nextBoolean(), random.nextBoolean())));
        addSome(
                facts,
                1,
                number -> new SettledCause(
                        one(CauseCode.class),
                        place(),
                        random.nextInt(3) > 0 ? CauseStanding.CONFIRMED : one(CauseStanding.class),
                        random.nextBoolean()));
        addSome(
                facts,
                2,
                number -> new PartState(
                        id("finding", number),
                        one(FindingStage.class),
                        one(Component.class),
                        condition(),
                        place(),
                        maybe(() -> one(Extent.class)),
                        maybe(() -> one(Agent.class)),
                        measurement()));
        addSome(facts, 1, number -> new LatelyRenewed(one(ScopeItem.class), place()));
        addSome(
                facts,
                1,
                number -> new Obstacle(id("obstacle", number), one(Component.class), one(Condition.class), place()));
        addSome(facts, 1, number -> new PhotoTaken(id("photo", number), one(ScopeItem.class), place()));
        addSome(facts, 1, number -> new ReportedStep(one(StepCode.class), place(), one(WorkOutcome.class)));
        addSome(facts, 1, number -> new UnlookedPart(place(), one(Component.class), "look " + number));
        addSome(
                facts,
                1,
                number -> new RetestComparison(
                        one(FigureKind.class),
                        one(BrakeSystem.class),
                        place(),
                        maybe(this::value),
                        maybe(this::value),
                        random.nextBoolean(),
                        random.nextBoolean(),
                        maybe(random::nextBoolean),
                        maybe(this::value),
                        maybe(this::value)));
        addSome(
                facts,
                1,
                number -> new TestedAxle(
                        Place.ofAxle(axle()), one(BrakeSystem.class), one(Stage.class), maybe(this::value)));
        addSome(facts, 1, number -> new RetestRound(Place.ofAxle(axle()), 1 + random.nextInt(3)));
        addSome(
                facts,
                1,
                number -> new StandingDeficiency(
                        one(DeficiencyCode.class),
                        place(),
                        maybe(() -> one(DeficiencyClass.class)),
                        maybe(this::share),
                        "deficiency " + number,
                        random.nextBoolean()));
        addSome(
                facts,
                1,
                number ->
                        new StandingSymptom(one(SymptomCode.class), place(), one(Strength.class), "symptom " + number));
        if (random.nextBoolean()) {
            facts.add(new FluidRenewed(DAY.minusYears(3), value()));
        }
        for (LineKey line : lines) {
            if (random.nextBoolean()) {
                facts.add(new DecidedLine(line, one(Decision.class), one(Party.class)));
            }
            if (random.nextInt(3) == 0) {
                facts.add(new LineDone(line));
            }
            if (random.nextInt(8) == 0) {
                facts.add(new Departure(one(ClauseCode.class), random.nextBoolean() ? line : null));
            }
        }
        Collections.shuffle(facts, random);
        return new Call(List.of(clauses(), needed(), gauges()), facts);
    }

    private List<PolicyClause> clauses() {
        return Stream.of(ClauseCode.values())
                .filter(code -> random.nextInt(12) > 0)
                .map(code -> new PolicyClause(
                        code,
                        code == ClauseCode.OLD_FRICTION_MATERIAL_YEAR
                                ? BigDecimal.valueOf(1980L + random.nextInt(40))
                                : maybe(() -> random.nextBoolean() ? share() : value()),
                        maybe(() -> one(Necessity.class)),
                        maybe(() -> one(ScopeExtent.class)),
                        SOURCE,
                        one(Verified.class),
                        random.nextBoolean()))
                .toList();
    }

    private List<NeededEvidence> needed() {
        return some(
                1,
                number -> new NeededEvidence(
                        one(ScopeAction.class), one(ScopeItem.class), maybe(() -> one(MeasuredQuantity.class))));
    }

    private List<GaugeUncertainty> gauges() {
        return Stream.of(MeasuredQuantity.values())
                .filter(quantity -> random.nextInt(3) > 0)
                .map(quantity -> new GaugeUncertainty(quantity, share()))
                .toList();
    }

    private Vehicle vehicle() {
        return new Vehicle(
                "M1",
                "Make",
                "Model",
                maybe(() -> LocalDate.of(1980 + random.nextInt(46), 5, 4)),
                maybe(() -> LocalDate.of(2000, 1, 1)),
                null,
                maybe(this::value),
                null,
                null,
                null,
                null,
                null,
                null,
                maybe(random::nextBoolean),
                maybe(random::nextBoolean),
                maybe(() -> one(CircuitSplit.class)),
                maybe(random::nextBoolean),
                null,
                IntStream.rangeClosed(1, AXLES).mapToObj(this::axle).toList(),
                null);
    }

    private Axle axle(int number) {
        return new Axle(number, random.nextBoolean(), maybe(() -> one(BrakeLayout.class)), one(ParkingLayout.class));
    }

    private Figure figure() {
        boolean observable = random.nextInt(6) > 0;
        return new Figure(
                one(FigureKind.class),
                test(),
                one(Stage.class),
                one(BrakeSystem.class),
                place(),
                observable ? value() : null,
                null,
                observable,
                null);
    }

    private ShapeOfLoss shape() {
        return new ShapeOfLoss(one(LossShape.class), place(), test(), "drawn");
    }

    private @Nullable Measurement measurement() {
        return random.nextInt(3) > 0
                ? null
                : new Measurement(
                        one(MeasuredQuantity.class),
                        random.nextBoolean() ? share() : value(),
                        maybe(this::share),
                        "drawn");
    }

    /** A part is often sound, as many rules ask. */
    private Condition condition() {
        return random.nextInt(4) == 0 ? Condition.SOUND : one(Condition.class);
    }

    private Place place() {
        return switch (random.nextInt(8)) {
            case 0 -> Place.VEHICLE;
            case 1 -> Place.ofCircuit(1 + random.nextInt(2));
            case 2, 3 -> Place.ofAxle(axle());
            case 4 -> Place.ofSpot(axle(), one(Side.class), one(Spot.class));
            default -> Place.ofWheel(axle(), one(Side.class));
        };
    }

    private int axle() {
        return 1 + random.nextInt(AXLES);
    }

    private EntryId test() {
        return id("test", random.nextInt(2));
    }

    private static EntryId id(String kind, int number) {
        return new EntryId("/drawn", kind + "-" + number);
    }

    /** A force, mass, distance or count. */
    private BigDecimal value() {
        return BigDecimal.valueOf(random.nextInt(40) * 50L);
    }

    /** A share, or a length in metres. */
    private BigDecimal share() {
        return BigDecimal.valueOf(random.nextInt(12), random.nextInt(1, 4));
    }

    private <E extends Enum<E>> E one(Class<E> codes) {
        E[] all = codes.getEnumConstants();
        return all[random.nextInt(all.length)];
    }

    private <T> @Nullable T maybe(Supplier<T> drawn) {
        return random.nextInt(4) == 0 ? null : drawn.get();
    }

    private <T> List<T> some(int times, IntFunction<T> drawn) {
        return IntStream.range(0, random.nextInt(times * size + 1))
                .mapToObj(drawn)
                .toList();
    }

    private void addSome(List<Object> facts, int times, IntFunction<?> drawn) {
        facts.addAll(some(times, drawn));
    }
}
