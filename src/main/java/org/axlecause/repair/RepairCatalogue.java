package org.axlecause.repair;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.GaugeUncertainty;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.Verified;
import org.axlecause.shared.Dimension;
import org.axlecause.shared.Units;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** The steps, cautions and operations of {@code rules/catalogue}. */
public final class RepairCatalogue {

    private static final String FOLDER = "rules/catalogue/";

    private final Map<StepCode, CatalogueStep> steps;
    private final Map<CautionCode, CatalogueCaution> cautions;
    private final Map<Operation.Kind, Operation> operations;
    private final List<GaugeUncertainty> gauges;

    private RepairCatalogue(
            Map<StepCode, CatalogueStep> steps,
            Map<CautionCode, CatalogueCaution> cautions,
            Map<Operation.Kind, Operation> operations,
            List<GaugeUncertainty> gauges) {
        this.steps = steps;
        this.cautions = cautions;
        this.operations = operations;
        this.gauges = gauges;
    }

    /** The catalogue on the class path. */
    public static RepairCatalogue onClassPath() {
        return of(
                YamlFile.onClassPath(FOLDER + "steps.yaml"),
                YamlFile.onClassPath(FOLDER + "cautions.yaml"),
                YamlFile.onClassPath(FOLDER + "operations.yaml"),
                YamlFile.onClassPath(FOLDER + "gauges.yaml"));
    }

    /** A catalogue of four files; a fault in one is named with its line and what to write instead. */
    public static RepairCatalogue of(YamlFile steps, YamlFile cautions, YamlFile operations, YamlFile gauges) {
        return new RepairCatalogue(
                readSteps(steps), readCautions(cautions), readOperations(operations), readGauges(gauges));
    }

    /** All steps, by code. */
    public List<CatalogueStep> steps() {
        return List.copyOf(steps.values());
    }

    /** All cautions, by code. */
    public List<CatalogueCaution> cautions() {
        return List.copyOf(cautions.values());
    }

    /** How far the gauges of the workshop may be off, by quantity. */
    public List<GaugeUncertainty> gauges() {
        return gauges;
    }

    CatalogueStep step(StepCode code) {
        CatalogueStep step = steps.get(code);
        if (step == null) {
            throw new IllegalStateException("The step " + code + " stands in no catalogue; add it to steps.yaml.");
        }
        return step;
    }

    CatalogueCaution caution(CautionCode code) {
        CatalogueCaution caution = cautions.get(code);
        if (caution == null) {
            throw new IllegalStateException(
                    "The caution " + code + " stands in no catalogue; add it to cautions.yaml.");
        }
        return caution;
    }

    /** What is known of that kind of line; a kind that is not listed is one wheel's part with labour of its own. */
    Operation operation(ScopeAction action, ScopeItem item) {
        Operation.Kind kind = new Operation.Kind(action, item);
        Operation operation = operations.get(kind);
        return operation == null ? Operation.unlisted(kind) : operation;
    }

    private static Map<StepCode, CatalogueStep> readSteps(YamlFile file) {
        Map<StepCode, CatalogueStep> read = new EnumMap<>(StepCode.class);
        Map<StepCode, YamlNode> written = new EnumMap<>(StepCode.class);
        for (YamlNode node : file.root().only("steps").items("steps")) {
            node.only(
                    "code",
                    "says",
                    "does",
                    "needs",
                    "keeps-pattern",
                    "verify",
                    "stop",
                    "back-to",
                    "tools",
                    "source",
                    "verified");
            StepCode code = node.code("code", StepCode.class);
            CatalogueStep step = new CatalogueStep(
                    code,
                    node.text("says"),
                    kinds(node, "does"),
                    node.codes("needs", StepCode.class),
                    node.codes("keeps-pattern", StepCode.class),
                    node.text("verify"),
                    node.optionalText("stop"),
                    node.optionalCode("back-to", StepCode.class),
                    node.texts("tools"),
                    source(node));
            if (read.put(code, step) != null) {
                throw node.wrong("step '" + code + "' stands twice", "keep one of the two");
            }
            written.put(code, node);
        }
        read.keySet().forEach(code -> refuseCircle(code, read, written));
        return read;
    }

    private static void refuseCircle(
            StepCode start, Map<StepCode, CatalogueStep> steps, Map<StepCode, YamlNode> written) {
        Set<StepCode> met = EnumSet.noneOf(StepCode.class);
        List<StepCode> open = new ArrayList<>(needs(start, steps));
        while (!open.isEmpty()) {
            StepCode next = open.remove(open.size() - 1);
            YamlNode node = written.get(start);
            if (next == start && node != null) {
                throw node.wrong(
                        "step '" + start + "' needs itself by way of others", "take one need out of the circle");
            }
            if (met.add(next)) {
                open.addAll(needs(next, steps));
            }
        }
    }

    private static List<StepCode> needs(StepCode code, Map<StepCode, CatalogueStep> steps) {
        CatalogueStep step = steps.get(code);
        return step == null ? List.of() : step.needs();
    }

    private static Map<CautionCode, CatalogueCaution> readCautions(YamlFile file) {
        Map<CautionCode, CatalogueCaution> read = new EnumMap<>(CautionCode.class);
        for (YamlNode node : file.root().only("cautions").items("cautions")) {
            node.only("code", "text", "precedes", "source", "verified");
            CautionCode code = node.code("code", CautionCode.class);
            CatalogueCaution caution =
                    new CatalogueCaution(code, node.text("text"), node.codes("precedes", StepCode.class), source(node));
            if (caution.precedes().isEmpty()) {
                throw node.wrong("caution '" + code + "' precedes no step", "name the steps that it belongs before");
            }
            if (read.put(code, caution) != null) {
                throw node.wrong("caution '" + code + "' stands twice", "keep one of the two");
            }
        }
        return read;
    }

    private static Map<Operation.Kind, Operation> readOperations(YamlFile file) {
        Map<Operation.Kind, Operation> read = new HashMap<>();
        for (YamlNode node : file.root().only("operations").items("operations")) {
            node.only(
                    "line",
                    "extent",
                    "quantity",
                    "quantities",
                    "unit",
                    "of",
                    "part",
                    "labour",
                    "hours",
                    "takes-along",
                    "source",
                    "verified");
            Operation.Kind kind = kind(node.member("line"));
            Operation operation = new Operation(
                    kind,
                    node.code("extent", ScopeExtent.class),
                    new Measure(node.decimal("quantity"), unit(node.member("unit")), node.text("of")),
                    others(node),
                    node.optionalCode("part", ScopeItem.class),
                    node.member("labour").flag(),
                    hours(node),
                    kinds(node, "takes-along"));
            source(node);
            if (read.put(kind, operation) != null) {
                throw node.wrong("line '" + kind + "' stands twice", "keep one of the two");
            }
        }
        return read;
    }

    private static List<Operation.OtherQuantity> others(YamlNode node) {
        YamlNode list = node.optional("quantities");
        return list == null
                ? List.of()
                : list.items().stream()
                        .map(other -> other.only("extent", "with", "quantity"))
                        .map(other -> new Operation.OtherQuantity(
                                other.optionalCode("extent", ScopeExtent.class),
                                other.has("with") ? kind(other.member("with")) : null,
                                other.decimal("quantity")))
                        .toList();
    }

    private static @Nullable Span hours(YamlNode node) {
        YamlNode hours = node.optional("hours");
        if (hours == null) {
            return null;
        }
        Span span = new Span(hours.only("from", "to").decimal("from"), hours.decimal("to"));
        if (span.from().compareTo(span.to()) > 0) {
            throw hours.wrong("the hours run from much to little", "write the smaller number as 'from'");
        }
        return span;
    }

    private static List<GaugeUncertainty> readGauges(YamlFile file) {
        Map<MeasuredQuantity, GaugeUncertainty> read = new EnumMap<>(MeasuredQuantity.class);
        for (YamlNode node : file.root().only("gauges").items("gauges")) {
            node.only("quantity", "value", "unit", "with", "source", "verified");
            source(node);
            node.text("with");
            MeasuredQuantity quantity = node.code("quantity", MeasuredQuantity.class);
            String unit = node.text("unit");
            BigDecimal value = Stream.of(Dimension.LENGTH, Dimension.RATIO, Dimension.TEMPERATURE)
                    .filter(dimension -> Units.whatIsWrong(unit, dimension).isEmpty())
                    .findFirst()
                    .map(dimension -> Units.toBase(node.decimal("value"), unit, dimension))
                    .orElseThrow(() ->
                            node.member("unit").wrong("'" + unit + "' is no unit of a gauge", "write mm, % or Cel"));
            if (read.put(quantity, new GaugeUncertainty(quantity, value)) != null) {
                throw node.wrong("the gauge of '" + quantity + "' stands twice", "keep one of the two");
            }
        }
        return List.copyOf(read.values());
    }

    private static String unit(YamlNode node) {
        String unit = node.text();
        for (Dimension dimension : Set.of(Dimension.NUMBER, Dimension.VOLUME, Dimension.LENGTH)) {
            if (Units.whatIsWrong(unit, dimension).isEmpty()) {
                return unit;
            }
        }
        throw node.wrong("'" + unit + "' is no unit of a quantity", "write 1 for a count, L for a fluid, m for a pipe");
    }

    private static String source(YamlNode node) {
        Verified verified = node.code("verified", Verified.class);
        String source = node.optionalText("source");
        if (source == null && verified != Verified.COMMON_PRACTICE && verified != Verified.JUDGEMENT) {
            throw node.wrong(
                    "a value that is " + verified + " lacks its source", "add 'source:' with document and section");
        }
        String words = verified.toString().replace('-', ' ');
        return source == null ? words : source + " (" + words + ")";
    }

    private static List<Operation.Kind> kinds(YamlNode node, String member) {
        YamlNode list = node.optional(member);
        return list == null
                ? List.of()
                : list.items().stream().map(RepairCatalogue::kind).toList();
    }

    private static Operation.Kind kind(YamlNode node) {
        String text = node.text();
        int blank = text.indexOf(' ');
        ScopeAction action = coded(ScopeAction.values(), blank < 0 ? "" : text.substring(0, blank));
        ScopeItem item = coded(ScopeItem.values(), text.substring(blank + 1));
        if (action == null || item == null) {
            throw node.wrong("'" + text + "' is no line", "write action and item, such as 'renew wheel-cylinder'");
        }
        return new Operation.Kind(action, item);
    }

    private static <E extends Enum<E>> @Nullable E coded(E[] constants, String code) {
        return Arrays.stream(constants)
                .filter(constant -> constant.toString().equals(code))
                .findFirst()
                .orElse(null);
    }
}
