package org.axlecause.regimes;

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
import java.util.Optional;
import java.util.Set;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.FindingLimit;
import org.axlecause.facts.ImbalanceTerms;
import org.axlecause.facts.InspectedItem;
import org.axlecause.facts.Lenience;
import org.axlecause.facts.Limit;
import org.axlecause.facts.MassTerm;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.Rounding;
import org.axlecause.facts.Vehicle;
import org.axlecause.shared.Recent;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** One inspection regime with its dated, sourced limits. */
public final class Regime {

    private static final int VERSION_DIGITS = 12;
    private static final int MOST_KEPT = 256;

    private final String code;
    private final String name;
    private final String version;
    private final ImbalanceTerms imbalance;
    private final EffortEntry effort;
    private final @Nullable Rounding rounding;
    private final RoadEntry road;
    private final List<MassEntry> masses;
    private final List<Lenience> lenience;
    private final List<InspectedItem> items;
    private final List<FindingEntry> findingLimits;
    private final List<LimitEntry> limits;
    private final YamlNode written;
    /** The terms that were asked for lately: a case is judged again with every entry, and its vehicle stays what it was. */
    private final Recent<Asked, RegimeTerms> kept = new Recent<>(MOST_KEPT);

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
        imbalance = FormulaEntry.imbalance(root.member("imbalance"));
        effort = EffortEntry.of(root.member("effort"));
        rounding = FormulaEntry.rounding(root.optional("rounding"));
        road = RoadEntry.of(root.member("road-test"));
        masses = root.member("masses").items().stream().map(MassEntry::of).toList();
        lenience = root.items("lenience").stream().map(LenienceEntry::of).toList();
        items = ItemEntry.all(root.items("items"), name);
        findingLimits =
                root.items("finding-limits").stream().map(FindingEntry::of).toList();
        written = root;
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

    /** The regime as its file writes it. */
    public YamlNode written() {
        return written;
    }

    /** What the regime asks of a vehicle on a day. */
    public RegimeTerms termsFor(Vehicle vehicle, LocalDate day) {
        Asked asked = new Asked(vehicle, day);
        RegimeTerms known = kept.find(asked);
        return known == null ? kept.keep(asked, worked(vehicle, day)) : known;
    }

    private record Asked(Vehicle vehicle, LocalDate day) {}

    private RegimeTerms worked(Vehicle vehicle, LocalDate day) {
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
                effort.unit(),
                effort.gravity(),
                effort.verified(),
                known,
                effort.frontAxleAddition(),
                lenience,
                rounding,
                road.termsFor(vehicle),
                Gaps.of(code, vehicle, forVehicle, known, masses, missing));
    }

    /**
     * The strictest limit that this regime sets on a day for a figure of cars and light vans, whatever their age.
     *
     * @param axle number of the axle; null for any
     */
    public Optional<LegalBound> strictest(FigureKind figure, BrakeSystem brake, @Nullable Integer axle, LocalDate day) {
        return limits.stream()
                .filter(limit -> limit.isOf(figure, brake, axle) && limit.day().holds(day))
                .flatMap(limit -> limit.bounds(code))
                .reduce(Regime::stricter);
    }

    /** The strictest limit that this regime sets for a measured part of cars and light vans. */
    public Optional<LegalBound> strictest(MeasuredQuantity quantity) {
        return findingLimits.stream()
                .flatMap(limit -> limit.bounds(code, quantity))
                .reduce(Regime::stricter);
    }

    private static LegalBound stricter(LegalBound one, LegalBound other) {
        return one.isStricterThan(other.value()) ? one : other;
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
