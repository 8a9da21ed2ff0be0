package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BinaryOperator;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.pages.NumbersPage.Cell;
import org.axlecause.pages.NumbersPage.Column;
import org.axlecause.pages.NumbersPage.Row;
import org.axlecause.pages.NumbersPage.Table;
import org.jspecify.annotations.Nullable;

/** Puts an answer about numbers into tables and words, as it stands on the wire and no other numbers. */
final class TellNumbers {

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMMM uuuu, HH:mm", Locale.ENGLISH);
    private static final BigDecimal SMALLEST = new BigDecimal("0.001");
    private static final int OF_A_PROBABILITY = 3;
    private static final String GROUP = "Group";
    private static final DecimalFormatSymbols ENGLISH = DecimalFormatSymbols.getInstance(Locale.ENGLISH);

    private static final String UNDETERMINED = "undetermined";
    private static final String WITH_INTERVAL = ", 95\u00a0% interval";

    /** Changes and differences count up to this rate of false ones, common practice. */
    private static final BigDecimal FALSE_ONES = new BigDecimal("0.05");

    private final JsonNode answer;
    private final NumbersWords named;
    private final PlainWords words;
    private final BinaryOperator<String> closer;

    /**
     * Words for an answer.
     *
     * @param answer as it stands on the wire
     * @param named names for codes
     * @param words words for the lines of the scope
     * @param closer the address of the same question with a parameter set to a value
     */
    TellNumbers(JsonNode answer, NumbersWords named, PlainWords words, BinaryOperator<String> closer) {
        this.answer = answer;
        this.named = named;
        this.words = words;
        this.closer = closer;
    }

    static String moment(OffsetDateTime moment) {
        return MOMENT.format(moment.withOffsetSameInstant(ZoneOffset.UTC)) + " UTC";
    }

    /** Whether no case stands behind the answer. */
    boolean isEmpty() {
        return answer.has("cases")
                ? answer.path("cases").asLong() == 0
                : answer.has("all")
                        ? answer.at("/all/of").asLong() == 0
                        : answer.path("groups").isEmpty();
    }

    /** How many cases have ended, where the answer says it. */
    @Nullable
    String cases() {
        return answer.has("cases") ? answer.path("cases").asText() : null;
    }

    /** What holds for the answer as a whole. */
    List<String> statements(NumbersQuestion question, String measured, Compared compared) {
        List<String> statements = new ArrayList<>();
        if (question == NumbersQuestion.GROUPS) {
            statements.add("First group: " + compared.first() + ofGroup("first") + ". Second group: "
                    + compared.second() + ofGroup("second") + ".");
        }
        if (answer.path("open").asLong() > 0) {
            statements.add(
                    answer.path("open").asLong() == 1
                            ? "1 case is still open and is not counted."
                            : answer.path("open").asText() + " cases are still open and are not counted.");
        }
        if (answer.has(UNDETERMINED) && question != NumbersQuestion.GROUPS) {
            statements.add("No cause was confirmed in " + inFull(answer.path(UNDETERMINED), " cases") + ".");
        }
        switch (question) {
            case SITES -> {
                statements.add("Over all sites, " + measured + ": " + inFull(answer.path("all"), "") + ".");
                if (answer.path("overdispersion").isNumber()) {
                    statements.add("The sites differ " + number(answer.path("overdispersion"), 2)
                            + " times as much as chance alone explains (overdispersion; 1 is chance alone). The limits"
                            + " are widened by it.");
                }
                statements.add("Standing out is a reason to look, not a verdict on a site.");
            }
            case GROUPS -> {
                if (answer.has("earlierFrom")) {
                    statements.add("The second group are the cases of the earlier period, presented from "
                            + NumbersWords.day(answer.path("earlierFrom").asText()) + " and before "
                            + NumbersWords.day(answer.path("earlierTo").asText()) + ".");
                }
                statements.addAll(differences());
            }
            case MONTHS -> {
                statements.add("A change counts where its adjusted p is " + orLess()
                        + ". The adjustment is for all causes asked for and the undetermined cases together, so"
                        + " a cause asked for alone has another p.");
                if (trendsOfCauses().size() > 1) {
                    statements.add("Choose one cause to see its months and its chart.");
                }
            }
            case RETURNS -> {
                JsonNode test = answer.path("logRank");
                if (test.isObject()) {
                    statements.add("Whether the groups differ (log-rank): chi-squared "
                            + number(test.path("chiSquared"), 2) + ", "
                            + (test.path("degreesOfFreedom").asInt() == 1
                                    ? "1 degree"
                                    : test.path("degreesOfFreedom").asText() + " degrees")
                            + " of freedom, p " + probability(test.path("pValue")) + ".");
                }
            }
            case CHECKS ->
                answer.path("calibration").forEach(moment -> {
                    String when = moment(moment);
                    if (moment.at("/neverConfirmed/of").asLong() == 0) {
                        statements.add(when + ": none were told in these cases.");
                        return;
                    }
                    statements.add(when + ": in " + inFull(moment.path("neverConfirmed"), " cases")
                            + " nothing was ever confirmed; "
                            + (moment.path("confirmedButNotNamed").asLong() == 1
                                    ? "1 confirmed cause was"
                                    : moment.path("confirmedButNotNamed").asText() + " confirmed causes were")
                            + " not named."
                            + (moment.path("brier").isNumber()
                                    ? " What was told and what came true differ by "
                                            + points(moment.path("expectedCalibrationError"))
                                            + " percentage points on average (expected calibration error). Brier score "
                                            + probability(moment.path("brier")) + " of "
                                            + moment.path("probabilities").asText() + " probabilities (reliability "
                                            + probability(moment.path("reliability")) + ", resolution "
                                            + probability(moment.path("resolution")) + ", uncertainty "
                                            + probability(moment.path("uncertainty")) + ")."
                                    : " Too few cases stand behind its scores."));
                });
            default -> {}
        }
        return statements;
    }

    /** How many cases a group has, as each of its shares says. */
    private String ofGroup(String group) {
        JsonNode share = answer.at("/comparisons/0/" + group);
        return share.has("of") ? ", " + cases(share.path("of")) : "";
    }

    /** In how many cases of both groups no cause was confirmed, and how many causes differ beyond chance. */
    private List<String> differences() {
        List<String> differences = new ArrayList<>();
        items(answer.path("comparisons"))
                .filter(TellNumbers::isUndetermined)
                .forEach(line -> differences.add("No cause was confirmed in " + inFull(line.path("first"), " cases")
                        + " of the first group, and in " + inFull(line.path("second"), " cases") + " of the second."));
        List<BigDecimal> adjusted = items(answer.path("comparisons"))
                .filter(line -> !isUndetermined(line) && line.path("adjusted").isNumber())
                .map(line -> line.path("adjusted").decimalValue())
                .toList();
        if (!adjusted.isEmpty()) {
            long differing =
                    adjusted.stream().filter(p -> p.compareTo(FALSE_ONES) <= 0).count();
            differences.add("More often in one group than chance explains: " + differing + " of "
                    + (adjusted.size() == 1 ? "1 cause" : adjusted.size() + " causes")
                    + ". A difference counts where its adjusted p is " + orLess() + ".");
        }
        return differences;
    }

    private static boolean isUndetermined(JsonNode line) {
        return line.path("cause").asText().equals(UNDETERMINED);
    }

    private static String orLess() {
        return PlainWords.plain(FALSE_ONES.movePointRight(2)) + "\u00a0% or less";
    }

    /** What the words of the answer mean. */
    List<NumbersPage.Definition> definitions() {
        return items(answer.path("definitions"))
                .map(definition -> new NumbersPage.Definition(
                        Stream.of(definition.path("word").asText().split(", "))
                                .map(NumbersWords::word)
                                .collect(Collectors.joining(", ")),
                        definition.path("means").asText()))
                .toList();
    }

    /**
     * What two groups are called.
     *
     * @param first words of the first
     * @param second words of the second
     */
    record Compared(String first, String second) {}

    /** The lists of the answer; those without rows are left out. */
    List<Table> tables(NumbersQuestion question, String measured, Compared compared) {
        Stream<Table> tables =
                switch (question) {
                    case CAUSES ->
                        Stream.of(table(
                                "Cases with each cause",
                                "shares",
                                cause("cause"),
                                group(),
                                shares("Share of the cases" + WITH_INTERVAL, "cases")));
                    case MOST ->
                        Stream.of(table(
                                "Confirmed causes",
                                "pareto",
                                cause("cause"),
                                numbers("Count", line -> line.path("count").asText()),
                                numbers("Share of the confirmed causes", line -> percent(line.path("share"))),
                                numbers("Running total", line -> percent(line.path("cumulative")))));
                    case MONTHS -> Stream.concat(Stream.of(changes()), months());
                    case TOGETHER ->
                        Stream.of(table(
                                "Causes in the same case",
                                "pairs",
                                cause("cause"),
                                words("With", line -> PlainWords.sentence(plain(line.path("other")))),
                                shares("Cases with both", "cases"),
                                numbers("Cases expected by chance", line -> number(line.path("expected"), 1)),
                                numbers("Times as often as chance", line -> number(line.path("ratio"), 1)),
                                numbers("p, adjusted", line -> probability(line.path("adjusted")))));
                    case GROUPS ->
                        Stream.of(table(
                                "Causes in both groups",
                                "comparisons",
                                cause("cause"),
                                shares(PlainWords.sentence(compared.first()), "first"),
                                shares(PlainWords.sentence(compared.second()), "second"),
                                new Told(
                                        "Difference in percentage points",
                                        true,
                                        line -> points(line.path("difference")),
                                        line -> line.path("interval").isObject()
                                                ? points(line.at("/interval/low")) + "\u00a0to\u00a0"
                                                        + points(line.at("/interval/high"))
                                                : ""),
                                numbers("p", line -> probability(line.path("pValue"))),
                                numbers("p, adjusted", line -> probability(line.path("adjusted"))),
                                words("Test", TellNumbers::test)));
                    case REPAIRS -> Stream.of(results(), lines());
                    case RETURNS ->
                        Stream.of(table(
                                "Repaired axles",
                                followed(),
                                group(),
                                numbers("Followed", line -> line.path("repairs").asText()),
                                numbers("Came back", line -> text(line.path("returns"))),
                                new Told(
                                        "Without a return at the end" + WITH_INTERVAL,
                                        true,
                                        TellNumbers::atTheEnd,
                                        TellNumbers::intervalAtTheEnd),
                                numbers("Days followed", line -> text(last(line).path("day")))));
                    case SITES ->
                        Stream.of(table(
                                "Sites by their " + measured,
                                "sites",
                                words(
                                        "Site",
                                        line -> named.value(
                                                "site", line.path("site").asText())),
                                numbers(
                                        answer.path("measure").asText().equals("returned") ? "Repaired axles" : "Cases",
                                        line -> line.path("cases").asText()),
                                numbers("Observed", line -> text(line.path("observed"))),
                                numbers("Expected", line -> number(line.path("expected"), 1)),
                                numbers("Observed ÷ expected", line -> number(line.path("ratio"), 2)),
                                words("Where it lies", TellNumbers::whereItLies),
                                numbers("95 % limits", line -> limits(line.path("limits95"))),
                                numbers("99.8 % limits", line -> limits(line.path("limits998")))));
                    case CHECKS -> Stream.concat(Stream.of(checks()), bins());
                };
        return tables.filter(table -> !table.groups().isEmpty()).toList();
    }

    /** Changes, those that chance explains least first; a cause that stands alone has no line beside it. */
    private Table changes() {
        List<JsonNode> causes = trendsOfCauses();
        return table(
                "Changes of the shares",
                (causes.size() == 1 ? causes.stream() : items(answer.path("trends")))
                        .sorted(Comparator.comparingDouble(
                                line -> line.at("/change/adjusted").asDouble(2)))
                        .toList(),
                cause("cause"),
                new Told(
                        "Changed from",
                        false,
                        line -> line.at("/change/adjusted").isNumber()
                                ? counts(line)
                                        ? NumbersWords.month(
                                                line.at("/change/month").asText())
                                        : "no change beyond chance"
                                : "no change to tell",
                        line -> line.at("/change/adjusted").isNumber() && !counts(line)
                                ? "greatest difference from "
                                        + NumbersWords.month(
                                                line.at("/change/month").asText())
                                : ""),
                shares("Before", "/change/before"),
                shares("From then on", "/change/after"),
                numbers("p, adjusted", line -> probability(line.at("/change/adjusted"))));
    }

    private static boolean counts(JsonNode trend) {
        return trend.at("/change/adjusted").decimalValue().compareTo(FALSE_ONES) <= 0;
    }

    private List<JsonNode> trendsOfCauses() {
        return items(answer.path("trends"))
                .filter(trend -> !isUndetermined(trend))
                .toList();
    }

    /** The months of those causes that stand alone; of many they would be many pages. */
    private Stream<Table> months() {
        List<JsonNode> trends = trendsOfCauses();
        return trends.size() != 1
                ? Stream.empty()
                : trends.stream()
                        .map(trend -> table(
                                PlainWords.sentence(plain(trend.path("cause"))) + " by month",
                                items(trend.path("months")).toList(),
                                words(
                                        "Month",
                                        month -> NumbersWords.month(
                                                month.path("month").asText())),
                                shares("Share of the cases" + WITH_INTERVAL, "cases"),
                                numbers("Limits of chance", month -> percents(month.path("limits"))),
                                words(
                                        "Where it lies",
                                        month -> month.path("out").asBoolean() ? "beyond a limit" : "within")));
    }

    private Table results() {
        return table(
                "What the tests after the work showed",
                "results",
                group(),
                shares("With a final test", "tested"),
                shares("Proved", "verified", "none tested"),
                shares("Proved by the first final test", "firstTimeCure", "none tested"),
                shares("Passed the official test", "official", "none on record"));
    }

    private Table lines() {
        return table(
                "Work lines",
                "lines",
                words(
                        "Work",
                        line -> words.line(
                                line.path("action").asText(), line.path("item").asText(), "")),
                group(),
                shares("Cases with any work on the part", "cases"),
                numbers("Lines", line -> text(line.path("lines"))),
                words("By necessity", TellNumbers::necessities),
                shares("Agreed", "agreed", "none decided"),
                shares("Refused", "refused", "none decided"),
                shares("Done", "done"),
                new Told("Net money", true, TellNumbers::totals, TellNumbers::priced));
    }

    private Table checks() {
        return table(
                "Checks",
                "checks",
                words("Check", line -> PlainWords.sentence(plain(line.path("check")))),
                group(),
                numbers("Asked", line -> line.path("asked").asText()),
                numbers("Made", line -> line.path("made").asText()),
                numbers("Bits told", line -> number(line.path("bits"), 2)),
                numbers("Minutes", line -> number(line.path("minutes"), 1)),
                numbers("Bits per minute", line -> number(line.path("bitsPerMinute"), 2)),
                shares("Made unasked", "unasked", "none made"),
                shares("Could be got at", "answered", "none made"),
                shares("Asked and not made", "notMade", "none asked"));
    }

    private Stream<Table> bins() {
        return items(answer.path("calibration"))
                .map(moment -> table(
                        moment(moment),
                        items(moment.path("bins")).toList(),
                        words("Probability told", bin -> percents(bin)),
                        numbers("On average", bin -> percent(bin.path("meanProbability"))),
                        shares("Came true" + WITH_INTERVAL, "confirmed")));
    }

    private static String moment(JsonNode calibration) {
        return calibration.path("moment").asText().equals("arrival")
                ? "Probabilities after the arrival test"
                : "Probabilities before the first look with a wheel off";
    }

    /** A column to be, with what stands in it and behind it. */
    private record Told(
            String head, boolean number, Function<JsonNode, String> words, Function<JsonNode, String> under) {}

    private static Told words(String head, Function<JsonNode, String> words) {
        return new Told(head, false, words, line -> "");
    }

    private static Told numbers(String head, Function<JsonNode, String> words) {
        return new Told(head, true, words, line -> "");
    }

    private static Told shares(String head, String member) {
        return shares(head, member, "none");
    }

    private static Told shares(String head, String member, String ofNone) {
        String pointer = member.startsWith("/") ? member : "/" + member;
        return new Told(head, true, line -> share(line.at(pointer), ofNone), line -> behind(line.at(pointer)));
    }

    private static Told cause(String member) {
        return words("Cause", line -> PlainWords.sentence(plain(line.path(member))));
    }

    private Told group() {
        return words(GROUP, this::group);
    }

    private Table table(String caption, String list, Told... columns) {
        return table(caption, items(answer.path(list)).toList(), columns);
    }

    /** A table of these columns; groups of several rows have a heading, and where all cases are one there are none. */
    private Table table(String caption, List<JsonNode> lines, Told... columns) {
        boolean grouped = lines.stream().anyMatch(line -> !line.path("group").isEmpty());
        boolean first = columns[0].head().equals(GROUP);
        Map<JsonNode, List<JsonNode>> groups = lines.stream()
                .collect(Collectors.groupingBy(
                        line -> grouped && !first ? line.path("group") : answer.path(""),
                        LinkedHashMap::new,
                        Collectors.toList()));
        List<Told> told = Stream.of(columns)
                .filter(column -> !column.head().equals(GROUP) || column.equals(columns[0]))
                .toList();
        return new Table(
                caption,
                told.stream()
                        .map(column -> new Column(column.head(), column.number()))
                        .toList(),
                groups.values().stream()
                        .map(each -> new NumbersPage.Group(
                                grouped && !first ? headed(each.get(0)) : "",
                                each.stream().map(line -> row(line, told)).toList()))
                        .toList());
    }

    private Row row(JsonNode line, List<Told> told) {
        return new Row(
                told.get(0).words().apply(line),
                address(line),
                told.stream()
                        .skip(1)
                        .map(column -> new Cell(
                                column.head().replace(WITH_INTERVAL, ""),
                                column.words().apply(line),
                                column.number(),
                                column.under().apply(line)))
                        .toList());
    }

    /** Of several trends each can be looked at alone. */
    private @Nullable String address(JsonNode line) {
        return line.has("months") && trendsOfCauses().size() > 1 && !isUndetermined(line)
                ? closer.apply("cause", line.path("cause").asText())
                : null;
    }

    private String group(JsonNode line) {
        List<String> words = new ArrayList<>();
        for (Map.Entry<String, JsonNode> member : line.path("group").properties()) {
            words.add(value(member));
        }
        return words.isEmpty() ? "All" : PlainWords.sentence(String.join(", ", words));
    }

    /** A group with what it is told apart by. */
    private String headed(JsonNode line) {
        List<String> words = new ArrayList<>();
        for (Map.Entry<String, JsonNode> member : line.path("group").properties()) {
            words.add(NumbersWords.label(member.getKey()) + ": " + value(member));
        }
        return String.join("; ", words);
    }

    private String value(Map.Entry<String, JsonNode> member) {
        String value = member.getValue().asText();
        return switch (member.getKey()) {
            case "item" -> words.word("items", value, "name");
            case "month" -> NumbersWords.month(value);
            default -> named.value(member.getKey(), value);
        };
    }

    private static String share(JsonNode share, String ofNone) {
        if (share.isMissingNode() || share.isNull()) {
            return "";
        }
        if (share.path("of").asLong() == 0) {
            return ofNone;
        }
        return share.path("withheld").asBoolean() ? "withheld" : percent(share.path("share"));
    }

    /** What stands behind a share: its interval and its cases. */
    private static String behind(JsonNode share) {
        if (share.path("of").asLong() == 0) {
            return "";
        }
        return share.path("withheld").asBoolean()
                ? "of\u00a0" + share.path("of").asText()
                : percents(share.path("interval")) + ", " + share.path("count").asText() + "\u00a0of\u00a0"
                        + share.path("of").asText();
    }

    /** A share with how many of how many, and what is counted. */
    private static String inFull(JsonNode share, String counted) {
        if (share.path("withheld").asBoolean() || share.path("of").asLong() == 0) {
            return "a share that is withheld, of " + cases(share.path("of"));
        }
        return share.path("count").asText() + " of " + share.path("of").asText() + counted + " ("
                + percent(share.path("share")) + ", " + percents(share.path("interval")) + ")";
    }

    private static String cases(JsonNode number) {
        return number.asLong() == 1 ? "1 case" : number.asText() + " cases";
    }

    /** A difference of shares in percentage points. */
    private static String points(JsonNode difference) {
        return difference.isNumber()
                ? new DecimalFormat("0.0", ENGLISH)
                        .format(difference.decimalValue().movePointRight(2))
                        .replace('-', '−')
                : "";
    }

    private static String test(JsonNode line) {
        return switch (line.path("method").asText("")) {
            case "fisher-exact" -> "Fisher’s exact";
            case "chi-squared" -> "chi-squared";
            default -> plain(line.path("method"));
        };
    }

    /** The groups of items begin with the largest; others keep the order of what they are split by. */
    private List<JsonNode> followed() {
        Stream<JsonNode> groups = items(answer.path("groups"));
        return (answer.at("/groups/0/group").has("item")
                        ? groups.sorted(Comparator.comparingLong(
                                group -> -group.path("repairs").asLong()))
                        : groups)
                .toList();
    }

    private static JsonNode last(JsonNode group) {
        JsonNode curve = group.path("curve");
        return curve.path(curve.size() - 1);
    }

    private static String atTheEnd(JsonNode group) {
        return group.path("withheld").asBoolean()
                ? "withheld"
                : percent(last(group).path("withoutReturn"));
    }

    /** None where nothing came back: the curve then says nothing of how far chance reaches. */
    private static String intervalAtTheEnd(JsonNode group) {
        if (group.path("withheld").asBoolean()) {
            return "";
        }
        return group.path("returns").asLong() == 0
                ? "no interval: none came back"
                : percents(last(group).path("interval"));
    }

    private static String whereItLies(JsonNode site) {
        return site.path("withheld").asBoolean()
                ? "withheld"
                : switch (site.path("verdict").asText("")) {
                    case "below-99-8-percent" -> "▼▼\u00a0below 99.8\u00a0%";
                    case "below-95-percent" -> "▼\u00a0below 95\u00a0%";
                    case "within" -> "within the\u00a0limits";
                    case "above-95-percent" -> "▲\u00a0above 95\u00a0%";
                    case "above-99-8-percent" -> "▲▲\u00a0above 99.8\u00a0%";
                    default -> "nothing is expected";
                };
    }

    private static String necessities(JsonNode line) {
        List<String> words = new ArrayList<>();
        for (Map.Entry<String, JsonNode> necessity : line.path("necessities").properties()) {
            words.add(necessity.getValue().asText() + "\u00a0"
                    + necessity.getKey().replace('-', ' '));
        }
        return String.join(", ", words);
    }

    private static String totals(JsonNode line) {
        return items(line.path("money"))
                .map(money -> money.path("total").asText() + "\u00a0"
                        + money.path("currency").asText())
                .collect(Collectors.joining("; "));
    }

    /** The priced lines behind each total, in the same order. */
    private static String priced(JsonNode line) {
        return items(line.path("money"))
                .map(money -> (money.path("lines").asLong() == 1
                                ? "1\u00a0line, "
                                : money.path("lines").asText() + "\u00a0lines, ")
                        + money.path("mean").asText() + "\u00a0"
                        + money.path("currency").asText() + "\u00a0each")
                .collect(Collectors.joining("; "));
    }

    private static Stream<JsonNode> items(JsonNode list) {
        List<JsonNode> items = new ArrayList<>();
        list.forEach(items::add);
        return items.stream();
    }

    private static String plain(JsonNode code) {
        return text(code).replace('-', ' ');
    }

    private static String text(JsonNode value) {
        return value.isMissingNode() || value.isNull() ? "" : value.asText();
    }

    private static String percent(JsonNode share) {
        return share.isNumber() ? percent(share.doubleValue()) : "";
    }

    /** With one decimal, so that numbers stand below one another, and never parted from its sign. */
    private static String percent(double share) {
        return new DecimalFormat("0.0\u00a0%", ENGLISH).format(share);
    }

    private static String percents(JsonNode interval) {
        return interval.path("low").isNumber()
                ? percent(interval.path("low")) + "\u00a0to\u00a0" + percent(interval.path("high"))
                : "";
    }

    private static String limits(JsonNode interval) {
        return interval.isObject()
                ? number(interval.path("low"), 2) + "\u00a0to\u00a0" + number(interval.path("high"), 2)
                : "";
    }

    private static String number(JsonNode number, int decimals) {
        return number.isNumber()
                ? number.decimalValue()
                        .setScale(decimals, RoundingMode.HALF_EVEN)
                        .toPlainString()
                : "";
    }

    private static String probability(JsonNode probability) {
        if (!probability.isNumber()) {
            return "";
        }
        return probability.decimalValue().compareTo(SMALLEST) < 0
                ? "below 0.001"
                : number(probability, OF_A_PROBABILITY);
    }
}
