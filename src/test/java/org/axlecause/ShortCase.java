package org.axlecause;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.Agent;
import org.axlecause.facts.Axle;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Drive;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Extent;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.Gearbox;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Measurement;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Place;
import org.axlecause.facts.PresentationReason;
import org.axlecause.facts.RecentWork;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.Stage;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.TestFigures;
import org.axlecause.facts.Tester;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehiclePresented;
import org.axlecause.facts.WheelReading;
import org.axlecause.measurement.MeasureTest;
import org.axlecause.shared.YamlNode;

/**
 * A case told in a few words. A vehicle is one of {@link #vehicle}. A test reads {@code arrival service 1: 2400/2350; 2:
 * 1610/590 drag 62/66 swing 8/9 expected 1600/1600 locks -/yes reported tyre-wet accuracy 2}, left before right, newtons
 * and percent. What only a trace shows is told of the last test as {@code release-time axle-2-right 2.5} or {@code shape
 * offset axle-2-right}. A finding reads {@code shoe-lining soaked axle-2-right with grease by lining-look severe measured
 * hub-play 0.3 limit 0.1}; lengths in millimetres. Recent work reads {@code shoe-set axle-2 100}, kilometres since.
 */
record ShortCase(
        String file,
        String name,
        String why,
        List<String> holds,
        List<Recorded> entries,
        List<String> likeliest,
        List<String> unlikelier,
        List<String> asks,
        List<String> checksFirst,
        List<String> checksNever) {

    private static final OffsetDateTime ARRIVED = OffsetDateTime.parse("2026-03-02T08:15:00Z");

    static ShortCase of(String file, YamlNode node) {
        node.only(
                "name",
                "why",
                "holds",
                "vehicle",
                "complaints",
                "work",
                "tests",
                "read",
                "found",
                "likeliest",
                "unlikelier",
                "asks",
                "checks-first",
                "checks-never");
        List<Recorded> entries = new ArrayList<>();
        add(presented(node), null, entries);
        List<String> tests = node.texts("tests");
        for (int i = 0; i < tests.size(); i++) {
            RollerTestRecorded test = test(tests.get(i));
            EntryId id = new EntryId("/lane", "rt-" + (i + 1));
            TestFigures figures = MeasureTest.of(id, test);
            if (i == tests.size() - 1) {
                figures = withRead(figures, node.texts("read"), id, test);
            }
            entries.add(new Recorded(id, ARRIVED.plusMinutes(entries.size()), test, figures));
        }
        node.texts("found").forEach(words -> add(found(words), null, entries));
        return new ShortCase(
                file,
                node.text("name"),
                node.text("why"),
                node.texts("holds"),
                entries,
                node.texts("likeliest"),
                node.texts("unlikelier"),
                node.texts("asks"),
                node.texts("checks-first"),
                node.texts("checks-never"));
    }

    /** The vehicle that was presented. */
    Vehicle vehicle() {
        return ((VehiclePresented) entries.get(0).entry()).vehicle();
    }

    private static void add(Entry entry, TestFigures figures, List<Recorded> entries) {
        entries.add(new Recorded(
                new EntryId("/bay", "e-" + (100 + entries.size())),
                ARRIVED.plusMinutes(entries.size()),
                entry,
                figures));
    }

    static VehiclePresented presented(YamlNode node) {
        List<RecentWork> work = node.texts("work").stream()
                .map(words -> words.split(" ", -1))
                .map(words -> new RecentWork(
                        code(ScopeItem.class, words[0]),
                        place(words[1]),
                        words.length > 3 ? LocalDate.parse(words[3]) : null,
                        new BigDecimal(words[2]).multiply(new BigDecimal(1000))))
                .toList();
        return new VehiclePresented(
                "quay-street",
                PresentationReason.FAILED_INSPECTION,
                null,
                null,
                vehicle(node.text("vehicle")),
                List.of(),
                node.texts("complaints").stream()
                        .map(word -> code(ComplaintCode.class, word))
                        .toList(),
                work);
    }

    /** The vehicles of the cases. */
    private static Vehicle vehicle(String name) {
        Axle frontDisc = new Axle(1, true, BrakeLayout.DISC_FLOATING, ParkingLayout.NONE);
        Axle simplex = new Axle(2, false, BrakeLayout.DRUM_SIMPLEX, ParkingLayout.CABLE_ON_SERVICE_SHOES);
        return switch (name) {
            case "old van" -> vehicle(2012, CircuitSplit.DIAGONAL, false, frontDisc, simplex);
            case "young van" -> vehicle(2021, CircuitSplit.DIAGONAL, false, frontDisc, simplex);
            case "old van split front and rear" -> vehicle(2012, CircuitSplit.FRONT_REAR, false, frontDisc, simplex);
            case "old van with duo-servo drums" ->
                vehicle(
                        2012,
                        CircuitSplit.FRONT_REAR,
                        false,
                        frontDisc,
                        new Axle(2, false, BrakeLayout.DRUM_DUO_SERVO, ParkingLayout.CABLE_ON_SERVICE_SHOES));
            case "old car with discs" ->
                vehicle(
                        2012,
                        CircuitSplit.DIAGONAL,
                        false,
                        frontDisc,
                        new Axle(2, false, BrakeLayout.DISC_FLOATING, ParkingLayout.CABLE_ON_CALLIPER));
            case "old car with fixed callipers" ->
                vehicle(
                        2012,
                        CircuitSplit.FRONT_REAR,
                        false,
                        new Axle(1, true, BrakeLayout.DISC_FIXED, ParkingLayout.NONE),
                        new Axle(2, false, BrakeLayout.DISC_FLOATING, ParkingLayout.SHOES_IN_DISC));
            case "old van little driven" ->
                littleDriven(vehicle(2012, CircuitSplit.DIAGONAL, false, frontDisc, simplex));
            case "young van little driven" ->
                littleDriven(vehicle(2021, CircuitSplit.DIAGONAL, false, frontDisc, simplex));
            case "very old van" -> vehicle(1994, CircuitSplit.DIAGONAL, false, frontDisc, simplex);
            case "old van without anti-lock" ->
                with(vehicle(2012, CircuitSplit.FRONT_REAR, false, frontDisc, simplex), false, false);
            case "old van on air" -> with(vehicle(2012, CircuitSplit.DIAGONAL, false, frontDisc, simplex), true, true);
            case "young electric car" ->
                vehicle(
                        2021,
                        CircuitSplit.DIAGONAL,
                        true,
                        frontDisc,
                        new Axle(2, false, BrakeLayout.DISC_FLOATING, ParkingLayout.ELECTRIC_ON_CALLIPER));
            default -> throw new IllegalArgumentException("There is no vehicle '" + name + "'.");
        };
    }

    private static Vehicle littleDriven(Vehicle van) {
        return with(van, new BigDecimal("45000000"), true, false);
    }

    private static Vehicle with(Vehicle van, boolean antilock, boolean airSuspension) {
        return with(van, van.odometer(), antilock, airSuspension);
    }

    private static Vehicle with(Vehicle van, BigDecimal odometer, boolean antilock, boolean airSuspension) {
        return new Vehicle(
                van.category(),
                van.make(),
                van.model(),
                van.firstUsed(),
                van.firstRegistered(),
                van.typeApproved(),
                odometer,
                van.maximumMass(),
                van.unladenMass(),
                van.testMass(),
                van.seats(),
                van.drive(),
                van.gearbox(),
                van.regenerative(),
                airSuspension,
                van.circuitSplit(),
                antilock,
                van.serviceFluid(),
                van.axles(),
                null);
    }

    private static Vehicle vehicle(int year, CircuitSplit split, boolean electric, Axle... axles) {
        return new Vehicle(
                electric ? "M1" : "N1",
                "Corvane",
                "Portal",
                LocalDate.of(year, 6, 1),
                LocalDate.of(year, 6, 1),
                null,
                new BigDecimal("148200000"),
                new BigDecimal("2020"),
                new BigDecimal("1310"),
                new BigDecimal("1430"),
                3,
                Drive.FRONT,
                Gearbox.MANUAL,
                electric,
                false,
                split,
                true,
                "DOT 4",
                List.of(axles),
                null);
    }

    static RollerTestRecorded test(String words) {
        String[] parts = words.split(" ", 3);
        List<AxleReading> axles = new ArrayList<>();
        Set<TestCondition> reported = EnumSet.noneOf(TestCondition.class);
        Tester tester = null;
        for (String axle : parts[2].split("; ", -1)) {
            String[] said = axle.split(" ", -1);
            String[] drag = {"-", "-"};
            String[] swing = {"-", "-"};
            String[] expected = {"-", "-"};
            String[] locks = {"-", "-"};
            String load = "-";
            for (int i = 2; i + 1 < said.length; i += 2) {
                switch (said[i]) {
                    case "drag" -> drag = said[i + 1].split("/", -1);
                    case "swing" -> swing = said[i + 1].split("/", -1);
                    case "expected" -> expected = said[i + 1].split("/", -1);
                    case "locks" -> locks = said[i + 1].split("/", -1);
                    case "load" -> load = said[i + 1];
                    case "accuracy" ->
                        tester = new Tester(number(said[i + 1]).movePointLeft(2), Accuracy.READING, null, null, null);
                    case "reported" -> {
                        for (String condition : said[i + 1].split(",", -1)) {
                            reported.add(code(TestCondition.class, condition));
                        }
                    }
                    default -> throw new IllegalArgumentException("'" + said[i] + "' in '" + words + "'");
                }
            }
            String[] peak = said[1].split("/", -1);
            axles.add(new AxleReading(
                    Integer.parseInt(said[0].replace(":", "")),
                    number(load),
                    wheel(peak[0], drag[0], swing[0], locks[0], expected[0]),
                    wheel(peak[1], drag[1], swing[1], locks[1], expected[1]),
                    null));
        }
        return new RollerTestRecorded(
                code(Stage.class, parts[0]),
                code(BrakeSystem.class, parts[1]),
                axles,
                tester,
                null,
                null,
                List.copyOf(reported));
    }

    private static WheelReading wheel(String peak, String drag, String swing, String locks, String expected) {
        BigDecimal percent = number(swing);
        return new WheelReading(
                number(peak),
                number(drag),
                percent == null ? null : percent.movePointLeft(2),
                locks.equals("yes") ? Boolean.TRUE : null,
                number(expected));
    }

    private static BigDecimal number(String word) {
        return word.equals("-") ? null : new BigDecimal(word);
    }

    /** The test with what its trace shows besides. */
    static Recorded read(String words, Recorded recorded) {
        RollerTestRecorded test = (RollerTestRecorded) recorded.entry();
        return new Recorded(
                recorded.id(),
                recorded.time(),
                test,
                withRead(recorded.figures(), List.of(words), recorded.id(), test));
    }

    private static TestFigures withRead(TestFigures measured, List<String> read, EntryId id, RollerTestRecorded test) {
        List<Figure> figures = new ArrayList<>(measured.figures());
        List<ShapeOfLoss> shapes = new ArrayList<>(measured.shapes());
        for (String line : read) {
            String[] words = line.split(" ", -1);
            if (words[0].equals("shape")) {
                shapes.add(new ShapeOfLoss(code(LossShape.class, words[1]), place(words[2]), id, "as its trace shows"));
                continue;
            }
            FigureKind kind = code(FigureKind.class, words[0]);
            Place place = place(words[1]);
            figures.removeIf(figure -> figure.kind() == kind && figure.place().equals(place));
            figures.add(new Figure(
                    kind, id, test.stage(), test.brake(), place, new BigDecimal(words[2]), null, true, null));
        }
        return new TestFigures(id, figures, shapes, measured.doubts());
    }

    private static FindingRecorded found(String text) {
        return found(FindingStage.AS_FOUND, text);
    }

    static FindingRecorded found(FindingStage stage, String text) {
        String[] words = text.split(" ", -1);
        Agent agent = null;
        CheckCode check = null;
        Extent extent = null;
        Measurement measurement = null;
        List<String> photos = List.of();
        for (int i = 3; i < words.length; i++) {
            switch (words[i]) {
                case "with" -> agent = code(Agent.class, words[++i]);
                case "photographed" -> photos = List.of("https://photos.example/1");
                case "by" -> check = code(CheckCode.class, words[++i]);
                case "measured" -> {
                    MeasuredQuantity quantity = code(MeasuredQuantity.class, words[++i]);
                    String value = words[++i];
                    boolean millimetres = quantity != MeasuredQuantity.PEDAL_RESERVE
                            && quantity != MeasuredQuantity.FLUID_BOILING_POINT
                            && quantity != MeasuredQuantity.FLUID_WATER_CONTENT;
                    boolean limited = i + 2 < words.length && words[i + 1].equals("limit");
                    BigDecimal limit = limited ? new BigDecimal(words[i += 2]) : null;
                    int shift = millimetres ? 3 : 0;
                    measurement = new Measurement(
                            quantity,
                            new BigDecimal(value).movePointLeft(shift),
                            limit == null ? null : limit.movePointLeft(shift),
                            value);
                }
                default -> extent = code(Extent.class, words[i]);
            }
        }
        return new FindingRecorded(
                stage,
                code(Component.class, words[0]),
                code(Condition.class, words[1]),
                place(words[2]),
                check,
                extent,
                agent,
                measurement,
                null,
                photos);
    }

    static Place place(String word) {
        Place place = Place.ofId(word);
        if (place == null) {
            throw new IllegalArgumentException("'" + word + "' is no place");
        }
        return place;
    }

    static <E extends Enum<E>> E code(Class<E> codes, String word) {
        for (E constant : codes.getEnumConstants()) {
            if (constant.toString().equals(word)) {
                return constant;
            }
        }
        throw new IllegalArgumentException(String.format(Locale.ROOT, "'%s' is no %s", word, codes.getSimpleName()));
    }

    @Override
    public String toString() {
        return file + ": " + name;
    }
}
