package org.axlecause.regimes;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Circumstance;
import org.axlecause.facts.DeficiencyClass;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.EffortUnit;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.FindingLimit;
import org.axlecause.facts.ImbalanceFormula;
import org.axlecause.facts.ImbalanceTerms;
import org.axlecause.facts.InspectedItem;
import org.axlecause.facts.Lenience;
import org.axlecause.facts.Limit;
import org.axlecause.facts.MassTerm;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.RegimeGap;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.RoadTerms;
import org.axlecause.facts.Rounding;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** One inspection regime with its dated, sourced limits. */
public final class Regime {

    private static final int VERSION_DIGITS = 12;
    /** Deficiencies that only an inspector can judge where a regime has no figure for them. */
    private static final List<DeficiencyCode> JUDGED_BY_EYE = List.of(
            DeficiencyCode.BINDING,
            DeficiencyCode.FORCE_FLUCTUATION,
            DeficiencyCode.ABNORMAL_LAG,
            DeficiencyCode.GRABBING);

    private final String code;
    private final String name;
    private final String version;
    private final ImbalanceTerms imbalance;
    private final EffortUnit effortUnit;
    private final BigDecimal gravity;
    private final @Nullable BigDecimal frontAxleAddition;
    private final @Nullable Rounding rounding;
    private final RoadTerms road;
    private final List<BuildUp> buildUps;
    private final List<MassEntry> masses;
    private final List<Lenience> lenience;
    private final List<InspectedItem> items;
    private final List<FindingEntry> findingLimits;
    private final List<LimitEntry> limits;

    private Regime(YamlFile file) {
        YamlNode root = file.root()
                .only(
                        "regime",
                        "name",
                        "imbalance",
                        "effort",
                        "rounding",
                        "road-test",
                        "masses",
                        "lenience",
                        "items",
                        "limits",
                        "finding-limits");
        code = root.text("regime");
        if (!code.equals(file.stem())) {
            throw root.member("regime")
                    .wrong(
                            "regime '" + code + "' stands in a file of another name",
                            "name the file " + code + ".yaml or write regime: " + file.stem());
        }
        name = root.text("name");
        version = digest(file.text());
        YamlNode formula = root.member("imbalance").only("formula", "below", "branch-percent", "verified", "source");
        imbalance = new ImbalanceTerms(
                formula.code("formula", ImbalanceFormula.class),
                formula.optionalCode("below", ImbalanceFormula.class),
                ratio(formula.optionalDecimal("branch-percent")));
        if ((imbalance.below() == null) != (imbalance.branch() == null)) {
            throw formula.wrong(
                    "only one of 'below' and 'branch-percent' is written",
                    "write the second formula and the share of the axle load below which it holds, or neither");
        }
        requireGround(formula);
        YamlNode effort =
                root.member("effort").only("unit", "gravity", "front-axle-addition-kilograms", "verified", "source");
        effortUnit = effort.code("unit", EffortUnit.class);
        gravity = effort.decimal("gravity");
        if (gravity.signum() <= 0) {
            throw effort.member("gravity")
                    .wrong("'gravity' " + gravity + " is not positive", "write 9.80665 or the like");
        }
        frontAxleAddition = effort.optionalDecimal("front-axle-addition-kilograms");
        requireGround(effort);
        rounding = roundingOf(root.optional("rounding"));
        road = roadOf(root.member("road-test"));
        buildUps = root.member("road-test").items("build-up").stream()
                .map(BuildUp::of)
                .toList();
        masses = root.member("masses").items().stream().map(MassEntry::of).toList();
        lenience = root.items("lenience").stream().map(Regime::lenienceOf).toList();
        items = itemsOf(root.items("items"), name);
        findingLimits =
                root.items("finding-limits").stream().map(FindingEntry::of).toList();
        limits = root.member("limits").items().stream().map(LimitEntry::of).toList();
    }

    /** Reads a regime; a fault names file, line, what is wrong and what to write instead. */
    static Regime of(YamlFile file) {
        return new Regime(file);
    }

    /** Code of the regime. */
    public String code() {
        return code;
    }

    /** Name of the regime. */
    public String name() {
        return name;
    }

    /** Hash of the file it was read from. */
    public String version() {
        return version;
    }

    /** What the regime asks of a vehicle on a day. */
    public RegimeTerms termsFor(Vehicle vehicle, LocalDate day) {
        Set<Datum> missing = EnumSet.noneOf(Datum.class);
        List<Limit> forVehicle = new ArrayList<>();
        for (LimitEntry entry : limits) {
            forVehicle.addAll(entry.limitsFor(vehicle, day, missing));
        }
        List<FindingLimit> forFindings = new ArrayList<>();
        for (FindingEntry entry : findingLimits) {
            FindingLimit limit = entry.limitFor(vehicle, missing);
            if (limit != null) {
                forFindings.add(limit);
            }
        }
        List<MassTerm> known = masses.stream()
                .map(mass -> mass.termFor(vehicle))
                .filter(Objects::nonNull)
                .toList();
        return new RegimeTerms(
                code,
                version,
                day,
                forVehicle,
                items,
                forFindings,
                imbalance,
                effortUnit,
                gravity,
                known,
                frontAxleAddition,
                lenience,
                rounding,
                roadFor(vehicle),
                gapsOf(vehicle, forVehicle, known, missing));
    }

    private RoadTerms roadFor(Vehicle vehicle) {
        return buildUps.stream()
                .filter(buildUp -> buildUp.when().matches(vehicle, null).certain())
                .findFirst()
                .map(buildUp -> new RoadTerms(
                        road.decelerationCounts(),
                        road.averagingBegins(),
                        road.averagingEnds(),
                        road.stoppingFrom(),
                        road.stoppingTolerance(),
                        buildUp.seconds()))
                .orElse(road);
    }

    private List<RegimeGap> gapsOf(Vehicle vehicle, List<Limit> found, List<MassTerm> known, Set<Datum> missing) {
        List<RegimeGap> gaps = new ArrayList<>();
        if (!missing.isEmpty()) {
            String data = missing.stream().map(Datum::words).collect(Collectors.joining(", "));
            gaps.add(new RegimeGap(
                    QuestionCode.LIMIT_MISSING,
                    Place.VEHICLE,
                    "Limits of " + code + " depend on " + data + "; until it is known the most lenient value counts",
                    "Send the vehicle again with " + data));
        }
        if (found.stream()
                .noneMatch(limit ->
                        limit.brake() == BrakeSystem.SERVICE && limit.place().equals(Place.VEHICLE))) {
            gaps.add(new RegimeGap(
                    QuestionCode.LIMIT_MISSING,
                    Place.VEHICLE,
                    code + " gives no service efficiency for category " + vehicle.category(),
                    "Correct the category, or name the regime that covers this vehicle"));
        }
        if (known.isEmpty()) {
            gaps.add(new RegimeGap(
                    QuestionCode.MASS_MISSING,
                    Place.VEHICLE,
                    "The mass to which " + code + " relates the brake forces is not known",
                    "Send " + masses.stream().map(MassEntry::name).distinct().collect(Collectors.joining(", or "))));
        }
        return gaps;
    }

    private static List<InspectedItem> itemsOf(List<YamlNode> nodes, String name) {
        List<InspectedItem> items = new ArrayList<>(nodes.stream()
                .map(node -> {
                    node.only("deficiency", "brake", "class", "item", "verified", "source");
                    BrakeSystem brake = node.optionalCode("brake", BrakeSystem.class);
                    return new InspectedItem(
                            node.code("deficiency", DeficiencyCode.class),
                            brake == null ? BrakeSystem.SERVICE : brake,
                            node.optionalCode("class", DeficiencyClass.class),
                            node.optionalText("item"),
                            node.code("verified", Verified.class),
                            node.text("source"));
                })
                .toList());
        for (DeficiencyCode judged : JUDGED_BY_EYE) {
            if (items.stream().noneMatch(item -> item.deficiency() == judged && item.brake() == BrakeSystem.SERVICE)) {
                items.add(new InspectedItem(judged, BrakeSystem.SERVICE, null, null, Verified.READ, name));
            }
        }
        return List.copyOf(items);
    }

    private static Lenience lenienceOf(YamlNode node) {
        node.only("figure", "brake", "when", "newtons", "newtons-per-kilogram", "verified", "source");
        Circumstance when = node.code("when", Circumstance.class);
        BigDecimal force = node.optionalDecimal("newtons");
        BigDecimal effort = node.optionalDecimal("newtons-per-kilogram");
        if ((when == Circumstance.BOTH_WHEELS_LOW) != (force != null)
                || (when == Circumstance.WET_ROLLERS) != (effort != null)) {
            throw node.wrong(
                    "the value does not fit the circumstance " + when,
                    "write 'newtons' for both-wheels-low, 'newtons-per-kilogram' for wet-rollers and no value otherwise");
        }
        return new Lenience(
                node.code("figure", FigureKind.class),
                node.code("brake", BrakeSystem.class),
                when,
                force == null ? effort : force,
                node.code("verified", Verified.class),
                node.text("source"));
    }

    private static RoadTerms roadOf(YamlNode node) {
        node.only(
                "deceleration-counts",
                "averaging-begins",
                "averaging-ends",
                "stopping-from-metres-per-second",
                "stopping-tolerance-percent",
                "build-up",
                "verified",
                "source");
        requireGround(node);
        BigDecimal begins = node.decimal("averaging-begins");
        BigDecimal ends = node.decimal("averaging-ends");
        if (ends.signum() < 0 || begins.compareTo(ends) <= 0 || begins.compareTo(BigDecimal.ONE) > 0) {
            throw node.member("averaging-begins")
                    .wrong(
                            "averaging from " + begins + " to " + ends + " of the initial speed is no braking",
                            "write shares such as 0.8 and 0.1, the first one greater");
        }
        BigDecimal stoppingFrom = node.optionalDecimal("stopping-from-metres-per-second");
        BigDecimal tolerance = ratio(node.optionalDecimal("stopping-tolerance-percent"));
        if ((stoppingFrom == null) != (tolerance == null)) {
            throw node.wrong(
                    "only one of 'stopping-from-metres-per-second' and 'stopping-tolerance-percent' is written",
                    "write both where the regime has stopping distances, or neither");
        }
        return new RoadTerms(node.member("deceleration-counts").flag(), begins, ends, stoppingFrom, tolerance, null);
    }

    private static @Nullable Rounding roundingOf(@Nullable YamlNode node) {
        if (node == null) {
            return null;
        }
        node.only("decimals", "mode", "verified", "source");
        requireGround(node);
        String mode = node.text("mode");
        RoundingMode found =
                switch (mode) {
                    case "down" -> RoundingMode.DOWN;
                    case "half-up" -> RoundingMode.HALF_UP;
                    case "half-even" -> RoundingMode.HALF_EVEN;
                    default ->
                        throw node.member("mode")
                                .wrong("'" + mode + "' is no rounding", "write down, half-up or half-even");
                };
        return new Rounding(node.whole("decimals"), found);
    }

    private static void requireGround(YamlNode node) {
        node.code("verified", Verified.class);
        node.text("source");
    }

    private static @Nullable BigDecimal ratio(@Nullable BigDecimal percent) {
        return percent == null ? null : percent.movePointLeft(2);
    }

    private static String digest(String text) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(Arrays.copyOf(hash, VERSION_DIGITS / 2));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
