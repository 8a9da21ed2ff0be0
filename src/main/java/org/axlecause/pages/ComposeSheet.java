package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.facts.FitnessLevel;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.ScopeAction;
import org.jspecify.annotations.Nullable;

/** Puts a case document into the words of a sheet; what is not in the document is not on the sheet. */
final class ComposeSheet {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.ENGLISH);
    /** Suspects with less behind them are left out of sheets and pages. */
    static final double WORTH_NAMING = 0.05;

    /** A customer needs to hear why once or twice. */
    private static final long MOST_REASONS = 2;

    /** Words that customers may not know, each also the code that explains it. */
    private static final List<String> EXPLAINED_WHERE_PRINTED = List.of("lining", "disc", "drum");

    /** What stands for a source where there is no document. */
    private static final Set<String> NO_DOCUMENT = Set.of("judgement", "common practice", "rule of this project");

    private static final int PERCENT = 100;
    private static final List<String> ACCESS =
            List.of("on its wheels", "vehicle raised", "wheel off", "drum or calliper off", "hydraulics opened");

    private final PlainWords words;
    private final JsonNode document;
    private final Audience audience;
    private final ZoneId zone;
    private final Spoken spoken;
    private final int axles;
    private final Set<String> used = new LinkedHashSet<>();

    ComposeSheet(PlainWords words, JsonNode document, Audience audience, ZoneId zone, Spoken spoken) {
        this.words = words;
        this.document = document;
        this.audience = audience;
        this.zone = zone;
        this.spoken = spoken;
        this.axles = axles(document);
    }

    /** How many axles there are: those of the vehicle, and more where a test measured more. */
    static int axles(JsonNode document) {
        return Math.max(
                document.at("/vehicle/axles").size(),
                stream(document.path("figures"))
                        .mapToInt(figure -> figure.at("/place/axle").asInt())
                        .max()
                        .orElse(0));
    }

    /**
     * The sheet.
     *
     * @param cautions words of cautions by their codes
     */
    Sheet sheet(@Nullable String site, @Nullable String regime, SheetCharts charts, Map<String, String> cautions) {
        List<Sheet.Group> groups = groups();
        List<Sheet.Picture> pictures = charts.wheels(document, axlesOfConcern(), axles);
        List<Sheet.Fault> faults = faults();
        List<Sheet.Reason> causes = causes();
        List<Sheet.Line> declined = declined();
        SheetFigures figures = new SheetFigures(words, document, audience, axles);
        return new Sheet(
                head(site, regime),
                fitness(),
                worked(),
                outOfRange(),
                has("questions", "code", "scope-provisional") || has("questions", "code", "place-not-looked-at"),
                faults,
                causes,
                pictures,
                forCustomer() ? charts.firstAndLastTraces(axlesOfConcern(), axles) : charts.traces(axles),
                declined,
                groups,
                groups.stream().flatMap(group -> group.lines().stream()).anyMatch(Sheet.Line::undecided),
                price(),
                figures.proof(),
                figures.figures(),
                checks(),
                beforeChecks(cautions),
                steps(),
                cautions(),
                stream(document.path("questions"))
                        .map(spoken::question)
                        .distinct()
                        .toList(),
                glossary(!pictures.isEmpty(), printed(faults, causes, groups)));
    }

    /** Whether work was done, so that what was found before it may no longer be so. */
    private boolean worked() {
        return stream(document.path("scope")).anyMatch(line -> is(line, LineStanding.DONE));
    }

    /** Why neither causes nor work are worked out for this vehicle; null where they are. */
    private @Nullable String outOfRange() {
        return stream(document.path("questions"))
                .filter(question -> question.path("code").asText().equals(QuestionCode.OUTSIDE_SCOPE_RANGE.toString()))
                .map(question -> question.path("says").asText() + " "
                        + question.path("resolve").asText())
                .findFirst()
                .orElse(null);
    }

    private boolean forCustomer() {
        return audience == Audience.CUSTOMER;
    }

    private Sheet.Head head(@Nullable String site, @Nullable String regime) {
        JsonNode vehicle = document.path("vehicle");
        List<String> facts = new ArrayList<>();
        String name =
                (vehicle.path("make").asText() + " " + vehicle.path("model").asText()).strip();
        if (!name.isEmpty()) {
            facts.add(name);
        }
        if (vehicle.has("category")) {
            facts.add("category " + vehicle.path("category").asText());
        }
        if (vehicle.has("firstUsed")) {
            facts.add("first used "
                    + DAY.format(LocalDate.parse(vehicle.path("firstUsed").asText())));
        }
        if (vehicle.has("odometer")) {
            facts.add(PlainWords.unparted(NumberFormat.getIntegerInstance(Locale.UK)
                            .format(vehicle.at("/odometer/value").decimalValue())
                    + " " + (vehicle.at("/odometer/unit").asText().equals("[mi_i]") ? "miles" : "km")));
        }
        return new Sheet.Head(
                document.path("reference").asText(),
                site == null ? Sheet.Head.NOT_KNOWN : site,
                facts.isEmpty() ? Sheet.Head.NOT_KNOWN : String.join(", ", facts),
                latest(),
                regime);
    }

    private String latest() {
        OffsetDateTime latest = latestEntry(document);
        return latest == null ? "no entry" : MOMENT.format(latest.atZoneSameInstant(zone));
    }

    /** When what the document shows last changed; null where it has no entry. */
    static @Nullable OffsetDateTime latestEntry(JsonNode document) {
        return stream(document.path("timeline"))
                .map(entry -> OffsetDateTime.parse(entry.path("time").asText()))
                .max(OffsetDateTime.timeLineOrder())
                .orElse(null);
    }

    private Sheet.Fitness fitness() {
        JsonNode fitness = document.path("fitness");
        String level = fitness.path("level").asText("not-established");
        return new Sheet.Fitness(
                words.word("fitness", level, "name"),
                words.word("fitness", level, "advice"),
                words.word("fitness", level, "refused"),
                level.equals(FitnessLevel.NO_RESTRICTION_FOUND.toString()) ? List.of() : says(fitness));
    }

    private List<Sheet.Fault> faults() {
        return stream(document.path("deficiencies"))
                .filter(found -> !found.path("stage").asText().equals("final"))
                .map(this::fault)
                .distinct()
                .toList();
    }

    private Sheet.Fault fault(JsonNode found) {
        String code = found.path("code").asText();
        JsonNode limit = found.at("/limit/value");
        String figure = words.optional("deficiencies", code, "figure");
        String number = null;
        if (found.has("value") && figure != null) {
            number = figure + " " + besideLimit(found, limit)
                    + (found.at("/limit/standing").asText().equals("workshop") ? " by the workshop's own limit" : "");
        }
        return new Sheet.Fault(
                PlainWords.sentence(PlainWords.placeOrVehicle(found.path("place"), axles)),
                words.word("deficiencies", code, "text"),
                number,
                found.has("class") ? found.path("class").asText() : null);
    }

    private static String besideLimit(JsonNode found, JsonNode limit) {
        JsonNode value = found.path("value");
        if (limit.isMissingNode()) {
            return PlainWords.figure(value);
        }
        boolean maximum =
                !Set.of("minimum", "above").contains(found.at("/limit/bound").asText());
        JsonNode required = found.at("/required/value");
        return required.isMissingNode()
                ? PlainWords.against(value, limit, maximum)
                : PlainWords.against(value, required, limit, found.path("class").asText(), maximum);
    }

    private List<Sheet.Reason> causes() {
        Set<String> effects = new TreeSet<>();
        document.path("causes").forEach(cause -> {
            String self = cause.path("code").asText() + cause.path("place");
            stream(cause.path("chain"))
                    .map(node -> node.path("code").asText() + node.path("place"))
                    .filter(node -> !node.equals(self))
                    .forEach(effects::add);
        });
        List<Sheet.Reason> causes = stream(document.path("causes"))
                .filter(cause -> !cause.path("standing").asText().equals("ruled-out"))
                .filter(cause -> cause.path("probability").asDouble() >= WORTH_NAMING)
                .filter(cause ->
                        !forCustomer() || !effects.contains(cause.path("code").asText() + cause.path("place")))
                .map(this::cause)
                .toList();
        return forCustomer() ? bothWheelsTogether(causes) : causes;
    }

    /** What is said alike of the two wheels of an axle is said once. */
    private static List<Sheet.Reason> bothWheelsTogether(List<Sheet.Reason> causes) {
        List<Sheet.Reason> together = new ArrayList<>();
        for (Sheet.Reason cause : causes) {
            Sheet.Reason twin = together.stream()
                    .filter(cause::isOfTheOtherWheel)
                    .findFirst()
                    .orElse(null);
            if (twin == null) {
                together.add(cause);
            } else {
                together.set(together.indexOf(twin), twin.ofEitherWheel());
            }
        }
        return together;
    }

    private Sheet.Reason cause(JsonNode cause) {
        boolean confirmed = cause.path("standing").asText().equals("confirmed");
        long chance = Math.round(cause.path("probability").asDouble() * PERCENT);
        return new Sheet.Reason(
                PlainWords.sentence(PlainWords.placeOrVehicle(cause.path("place"), axles)),
                cause.path("text").asText(),
                confirmed,
                confirmed ? "found" : "suspected, about " + Math.max(1, chance) + " in 100, not proven",
                stream(cause.path("chain")).skip(1).map(this::node).toList());
    }

    private String node(JsonNode node) {
        String text = node.path("text").asText();
        return forCustomer() ? text : text + " (" + node.path("basis").asText() + ")";
    }

    /** Axles at which something was found, suspected or is to be done; all where nothing is. */
    private Set<Integer> axlesOfConcern() {
        Set<Integer> axlesFound = new TreeSet<>();
        Stream.of("deficiencies", "causes", "scope")
                .flatMap(list -> stream(document.path(list)))
                .filter(entry -> !entry.path("standing").asText().equals("ruled-out"))
                .filter(entry -> entry.path("place").has("axle"))
                .forEach(entry -> axlesFound.add(entry.at("/place/axle").asInt()));
        return axlesFound;
    }

    private List<Sheet.Line> declined() {
        return stream(document.path("scope"))
                .filter(line -> is(line, Necessity.REQUIRED) && is(line, LineStanding.REFUSED))
                .map(this::line)
                .toList();
    }

    private List<Sheet.Group> groups() {
        List<Sheet.Group> groups = new ArrayList<>();
        add(groups, Necessity.REQUIRED, "Required work", "Without it the fault is not cured.");
        add(
                groups,
                Necessity.RECOMMENDED,
                "Recommended work",
                "Not needed to cure the fault today, but it keeps it from coming back or saves doing the same work twice.");
        add(groups, Necessity.OPTIONAL, "Optional work", "It may be done at the same time.");
        return groups;
    }

    private void add(List<Sheet.Group> groups, Necessity necessity, String title, String text) {
        List<Sheet.Line> lines = stream(document.path("scope"))
                .filter(line -> is(line, necessity))
                .filter(line -> !forCustomer() || !is(line, LineStanding.NO_LONGER_NEEDED))
                .sorted(Comparator.comparingInt(ComposeSheet::turn))
                .map(this::line)
                .toList();
        if (!lines.isEmpty()) {
            groups.add(new Sheet.Group(
                    title, isAllDone(necessity) ? "All of it is done." : text, necessity == Necessity.REQUIRED, lines));
        }
    }

    private boolean isAllDone(Necessity necessity) {
        List<JsonNode> counting = stream(document.path("scope"))
                .filter(line -> is(line, necessity))
                .filter(line -> !is(line, LineStanding.MERGED_INTO) && !is(line, LineStanding.NO_LONGER_NEEDED))
                .toList();
        return !counting.isEmpty() && counting.stream().allMatch(line -> is(line, LineStanding.DONE));
    }

    /** What is renewed comes first, what is only checked last. */
    private static int turn(JsonNode line) {
        return Stream.of(ScopeAction.values())
                .filter(action -> action.toString().equals(line.path("action").asText()))
                .map(ScopeAction::ordinal)
                .findFirst()
                .orElse(ScopeAction.values().length);
    }

    private static boolean takesSomething(JsonNode line) {
        return Stream.of(ScopeAction.RENEW, ScopeAction.FABRICATE, ScopeAction.BLEED)
                .anyMatch(action -> action.toString().equals(line.path("action").asText()));
    }

    private Sheet.Line line(JsonNode line) {
        String item = line.path("item").asText();
        used.add(item);
        JsonNode estimate = line.path("estimate");
        return new Sheet.Line(
                line.path("id").asText(),
                title(line),
                takesSomething(line)
                        ? PlainWords.quantity(line.path("quantity"), words.word("items", item, "name"))
                        : null,
                says(line).stream()
                        .limit(forCustomer() ? MOST_REASONS : Long.MAX_VALUE)
                        .toList(),
                standing(line),
                is(line, LineStanding.PROPOSED),
                change(line.path("sinceAgreement").asText()),
                estimate.isMissingNode() ? null : priceOf(estimate),
                stream(estimate.path("alternatives"))
                        .map(other -> other.path("name").asText() + ": " + prices(other.path("prices")))
                        .toList());
    }

    private String title(JsonNode line) {
        String place = PlainWords.place(line.path("place"), axles);
        if (line.path("place").has("circuit")) {
            used.add("circuit");
        }
        if (line.path("place").has("side")) {
            used.add("sides");
        }
        return words.line(line.path("action").asText(), line.path("item").asText(), place);
    }

    private String standing(JsonNode line) {
        String by = line.at("/decision/by").asText().equals("workshop")
                ? "the workshop"
                : forCustomer() ? "you" : "the customer";
        return switch (line.path("standing").asText()) {
            case "proposed" -> forCustomer() ? "for you to decide" : "not decided yet";
            case "agreed" -> "agreed by " + by;
            case "refused" -> "declined by " + by;
            case "later" -> "put off by " + by;
            case "done" -> "done";
            case "merged-into" ->
                "included in: " + titleOf(line.path("mergedInto").asText());
            default -> "no longer needed";
        };
    }

    private String titleOf(String id) {
        return stream(document.path("scope"))
                .filter(line -> line.path("id").asText().equals(id))
                .map(this::title)
                .findFirst()
                .orElse("another line");
    }

    private static @Nullable String change(String change) {
        return switch (change) {
            case "added" -> "not among what was decided";
            case "changed" -> "changed since the last decision";
            default -> null;
        };
    }

    private String priceOf(JsonNode estimate) {
        List<String> amounts = new ArrayList<>();
        if (estimate.has("gross")) {
            amounts.add(money(estimate.path("gross")));
        }
        stream(estimate.path("otherCurrencies")).forEach(price -> amounts.add(money(price.path("gross"))));
        boolean missing = !estimate.path("missing").isEmpty();
        if (amounts.isEmpty()) {
            return "price missing";
        }
        if (!missing && estimate.at("/gross/amount").asDouble() == 0 && amounts.size() == 1) {
            return "included";
        }
        return String.join(" and ", amounts) + (missing ? ", and a price that is missing" : "");
    }

    private static String prices(JsonNode prices) {
        return prices.isEmpty()
                ? "price missing"
                : String.join(
                        " and ",
                        stream(prices).map(price -> money(price.path("gross"))).toList());
    }

    private Sheet.@Nullable Price price() {
        JsonNode estimate = document.path("estimate");
        if (estimate.isMissingNode()) {
            return null;
        }
        List<Sheet.Total> totals = new ArrayList<>();
        totals(totals, "Required and agreed work", estimate);
        JsonNode all = estimate.path("withRecommended");
        totals(totals, "With the recommended work as well" + leftOut(), all);
        Set<String> labour = new TreeSet<>();
        Set<String> parts = new TreeSet<>();
        Stream.concat(stream(estimate.path("missing")), stream(all.path("missing")))
                .map(JsonNode::asText)
                .forEach(price -> (isLabour(price) ? labour : parts).add(missing(price)));
        boolean fixed = stream(document.path("scope"))
                .anyMatch(line -> line.at("/decision/by").asText().equals("customer"));
        return new Sheet.Price(
                totals,
                List.copyOf(labour),
                List.copyOf(parts),
                stream(document.path("scope"))
                        .filter(line -> is(line, LineStanding.PROPOSED) && !is(line, Necessity.OPTIONAL))
                        .anyMatch(ComposeSheet::lacksPrice),
                stream(document.path("scope"))
                        .filter(line -> is(line, LineStanding.AGREED) || is(line, LineStanding.DONE))
                        .anyMatch(ComposeSheet::lacksPrice),
                fixed);
    }

    private static boolean lacksPrice(JsonNode line) {
        return !line.at("/estimate/missing").isEmpty();
    }

    /** What the sum with the recommended work leaves out of it; empty where it leaves out nothing. */
    private String leftOut() {
        boolean turnedDown = stream(document.path("scope"))
                .filter(line -> is(line, Necessity.RECOMMENDED))
                .anyMatch(line -> is(line, LineStanding.LATER) || is(line, LineStanding.REFUSED));
        return turnedDown ? " (what was put off or declined is not counted)" : "";
    }

    private static void totals(List<Sheet.Total> totals, String what, JsonNode estimate) {
        String of = estimate.path("missing").isEmpty() ? what : what + ", as far as prices are known";
        if (estimate.has("gross")) {
            totals.add(total(of, estimate));
        } else if (estimate.path("otherCurrencies").isEmpty()) {
            totals.add(new Sheet.Total(of, "missing", "missing", "missing"));
        }
        stream(estimate.path("otherCurrencies")).forEach(price -> totals.add(total(of, price)));
    }

    private static Sheet.Total total(String of, JsonNode price) {
        return new Sheet.Total(of, money(price.path("net")), money(price.path("tax")), money(price.path("gross")));
    }

    private static boolean isLabour(String entry) {
        return entry.startsWith("hours ");
    }

    /** The price list names what it lacks as part and item, or hours and line. */
    private String missing(String entry) {
        String[] named = entry.split(" ", 3);
        if (isLabour(entry) && named.length > 2) {
            return words.line(named[1], named[2], "");
        }
        String other = named.length > 2 ? " " + named[2] : "";
        return words.word("items", named.length > 1 ? named[1] : "", "name") + other;
    }

    private static String money(JsonNode amount) {
        return amount.path("amount").asText()
                + PlainWords.NO_BREAK
                + amount.path("currency").asText();
    }

    private List<Sheet.Check> checks() {
        return stream(document.path("nextChecks"))
                .map(check -> new Sheet.Check(
                        PlainWords.unparted(PlainWords.sentence(check.path("text")
                                .asText(check.path("check").asText().replace('-', ' ')))),
                        PlainWords.sentence(PlainWords.placeOrVehicle(check.path("place"), axles)),
                        effort(check)))
                .toList();
    }

    /** Each caution once, in the order in which the looks need them. */
    private List<String> beforeChecks(Map<String, String> cautions) {
        return stream(document.path("nextChecks"))
                .flatMap(check -> stream(check.path("cautions")))
                .map(JsonNode::asText)
                .distinct()
                .map(code -> PlainWords.unparted(cautions.getOrDefault(code, code)))
                .toList();
    }

    /** How long a check takes, and how far the vehicle is taken apart for it. */
    static String effort(JsonNode check) {
        return PlainWords.unparted(check.path("minutes").asInt() + " min, ")
                + access(check.path("access").asInt());
    }

    /** How far the vehicle is taken apart, in words. */
    static String access(int level) {
        return ACCESS.get(Math.min(level, ACCESS.size() - 1));
    }

    private List<Sheet.Step> steps() {
        List<String> ids = stream(document.path("workPlan"))
                .map(step -> step.path("id").asText())
                .toList();
        List<String> cautions = stream(document.path("cautions"))
                .map(caution -> caution.path("code").asText())
                .toList();
        List<Sheet.Step> steps = new ArrayList<>();
        for (JsonNode step : document.path("workPlan")) {
            steps.add(new Sheet.Step(
                    step.path("id").asText(),
                    steps.size() + 1,
                    PlainWords.unparted(step.path("says").asText()),
                    PlainWords.sentence(PlainWords.placeOrVehicle(step.path("place"), axles)),
                    PlainWords.unparted(step.path("verify").asText()),
                    step.has("stop") ? PlainWords.unparted(step.path("stop").asText()) : null,
                    stream(step.path("tools"))
                            .map(tool -> PlainWords.unparted(tool.asText()))
                            .toList(),
                    numbers(step.path("cautions"), cautions),
                    numbers(step.path("after"), ids),
                    step.has("outcome") ? step.path("outcome").asText().replace('-', ' ') : null));
        }
        return steps;
    }

    private List<Sheet.Caution> cautions() {
        List<Sheet.Caution> cautions = new ArrayList<>();
        for (JsonNode caution : document.path("cautions")) {
            cautions.add(new Sheet.Caution(
                    cautions.size() + 1,
                    PlainWords.unparted(caution.path("text").asText()),
                    source(caution.path("source").asText())));
        }
        return cautions;
    }

    /** The document that a caution is from, without how firmly it is known; null where it is from none. */
    private static @Nullable String source(String written) {
        String source = written.replaceFirst(" \\([a-z ]+\\)$", "");
        return NO_DOCUMENT.contains(source) ? null : source;
    }

    private static List<Integer> numbers(JsonNode codes, List<String> order) {
        return stream(codes)
                .map(code -> order.indexOf(code.asText()) + 1)
                .filter(number -> number > 0)
                .sorted()
                .toList();
    }

    /** What of the sheet may hold a word that is to be explained. */
    private static String printed(List<Sheet.Fault> faults, List<Sheet.Reason> causes, List<Sheet.Group> groups) {
        Stream<String> found = Stream.concat(
                faults.stream().map(Sheet.Fault::text),
                causes.stream().flatMap(cause -> Stream.concat(Stream.of(cause.text()), cause.chain().stream())));
        Stream<String> work = groups.stream()
                .flatMap(group -> group.lines().stream())
                .flatMap(line -> Stream.concat(Stream.of(line.title()), line.reasons().stream()));
        return Stream.concat(found, work).collect(Collectors.joining(" ")).toLowerCase(Locale.ROOT);
    }

    private List<Sheet.Word> glossary(boolean withForces, String printed) {
        EXPLAINED_WHERE_PRINTED.stream()
                .filter(word ->
                        Pattern.compile("\\b" + word + "s?\\b").matcher(printed).find())
                .forEach(used::add);
        if (withForces) {
            used.add("newton");
            used.add("sides");
        }
        List<Sheet.Word> explained = new ArrayList<>();
        for (String code : used) {
            String list = words.optional("items", code, "text") == null ? "glossary" : "items";
            String text = words.optional(list, code, "text");
            if (text != null) {
                String word = words.optional(list, code, "word");
                explained.add(new Sheet.Word(
                        word == null ? words.word(list, code, "name") : word, PlainWords.unparted(text)));
            }
        }
        return explained.stream()
                .sorted(Comparator.comparing(word -> word.name().toLowerCase(Locale.ROOT)))
                .toList();
    }

    private static List<String> says(JsonNode concluded) {
        return stream(concluded.path("because"))
                .map(reason -> PlainWords.unparted(reason.path("says").asText()))
                .distinct()
                .toList();
    }

    private boolean has(String list, String member, String value) {
        return stream(document.path(list))
                .anyMatch(entry -> entry.path(member).asText().equals(value));
    }

    private static boolean is(JsonNode line, Necessity necessity) {
        return line.path("necessity").asText().equals(necessity.toString());
    }

    private static boolean is(JsonNode line, LineStanding standing) {
        return line.path("standing").asText().equals(standing.toString());
    }

    static Stream<JsonNode> stream(JsonNode array) {
        List<JsonNode> items = new ArrayList<>();
        array.forEach(items::add);
        return items.stream();
    }
}
