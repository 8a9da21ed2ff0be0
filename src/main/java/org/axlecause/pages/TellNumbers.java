package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BinaryOperator;
import java.util.function.Function;
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
    private static final int DECIMALS = 3;
    private static final String GROUP = "Group";

    private final JsonNode answer;
    private final BinaryOperator<String> closer;

    /**
     * Words for an answer.
     *
     * @param answer as it stands on the wire
     * @param closer the address of the same question with a parameter set to a value
     */
    TellNumbers(JsonNode answer, BinaryOperator<String> closer) {
        this.answer = answer;
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

    /** What holds for the answer as a whole. */
    List<String> statements(NumbersQuestion question) {
        List<String> statements = new ArrayList<>();
        if (answer.has("cases")) {
            statements.add(answer.path("cases").asText() + " cases that have ended.");
        }
        if (answer.path("open").asLong() > 0) {
            statements.add(answer.path("open").asText() + " cases are still open; they count for nothing here.");
        }
        if (answer.has("undetermined")) {
            statements.add("No cause was confirmed in " + share(answer.path("undetermined")) + ".");
        }
        switch (question) {
            case SITES -> {
                statements.add("Over all sites: " + share(answer.path("all")) + ".");
                if (answer.path("overdispersion").isNumber()) {
                    statements.add("Overdispersion " + number(answer.path("overdispersion"))
                            + "; 1 is what chance alone explains. The limits are widened by it.");
                }
                statements.add("Standing out is a reason to look, not a verdict on a site.");
            }
            case GROUPS -> {
                if (answer.has("earlierFrom")) {
                    statements.add("The second group are the cases of the earlier period, presented from "
                            + answer.path("earlierFrom").asText() + " and before "
                            + answer.path("earlierTo").asText() + ".");
                }
            }
            case RETURNS -> {
                JsonNode test = answer.path("logRank");
                if (test.isObject()) {
                    statements.add("Whether the groups differ (log-rank): chi-squared "
                            + number(test.path("chiSquared")) + ", "
                            + test.path("degreesOfFreedom").asText()
                            + " degrees of freedom, p " + probability(test.path("pValue")) + ".");
                }
            }
            case CHECKS ->
                answer.path("calibration").forEach(moment -> {
                    String when = moment(moment);
                    statements.add(when + ": in " + share(moment.path("neverConfirmed"))
                            + " nothing was ever confirmed; "
                            + moment.path("confirmedButNotNamed").asText() + " confirmed causes were not named."
                            + (moment.path("brier").isNumber()
                                    ? " Brier score " + number(moment.path("brier")) + " of "
                                            + moment.path("probabilities").asText() + " probabilities (reliability "
                                            + number(moment.path("reliability")) + ", resolution "
                                            + number(moment.path("resolution")) + ", uncertainty "
                                            + number(moment.path("uncertainty")) + "), expected calibration error "
                                            + percent(moment.path("expectedCalibrationError")) + "."
                                    : " Too few cases stand behind its scores."));
                });
            default -> {}
        }
        return statements;
    }

    /** What the words of the answer mean. */
    List<NumbersPage.Definition> definitions() {
        return items(answer.path("definitions"))
                .map(definition -> new NumbersPage.Definition(
                        definition.path("word").asText(),
                        definition.path("means").asText()))
                .toList();
    }

    /** The lists of the answer; those without rows are left out. */
    List<Table> tables(NumbersQuestion question) {
        Stream<Table> tables =
                switch (question) {
                    case CAUSES ->
                        Stream.of(table(
                                "Cases with each cause",
                                "shares",
                                cause("cause"),
                                group(),
                                shares("Share of the cases, 95 % interval", "cases")));
                    case MOST ->
                        Stream.of(table(
                                "Confirmed causes",
                                "pareto",
                                cause("cause"),
                                numbers("Count", line -> line.path("count").asText()),
                                numbers("Share", line -> percent(line.path("share"))),
                                numbers("Together", line -> percent(line.path("cumulative")))));
                    case MONTHS -> Stream.concat(Stream.of(changes()), months());
                    case TOGETHER ->
                        Stream.of(table(
                                "Causes in the same case",
                                "pairs",
                                cause("cause"),
                                words("With", line -> plain(line.path("other"))),
                                shares("Cases with both", "cases"),
                                numbers("By chance", line -> number(line.path("expected"))),
                                numbers("Times as often", line -> number(line.path("ratio"))),
                                numbers("p, adjusted", line -> probability(line.path("adjusted")))));
                    case GROUPS ->
                        Stream.of(table(
                                "Causes in both groups",
                                "comparisons",
                                cause("cause"),
                                shares("First group", "first"),
                                shares("Second group", "second"),
                                numbers("Difference", TellNumbers::difference),
                                words("Test", line -> plain(line.path("method"))),
                                numbers("p", line -> probability(line.path("pValue"))),
                                numbers("p, adjusted", line -> probability(line.path("adjusted")))));
                    case REPAIRS -> Stream.of(results(), lines());
                    case RETURNS ->
                        Stream.of(table(
                                "Repaired axles",
                                "groups",
                                group(),
                                numbers("Followed", line -> line.path("repairs").asText()),
                                numbers("Came back", line -> text(line.path("returns"))),
                                numbers("Without a return at the end, 95 % interval", TellNumbers::atTheEnd),
                                numbers("After days", line -> text(last(line).path("day")))));
                    case SITES ->
                        Stream.of(table(
                                "Sites",
                                "sites",
                                words("Site", line -> line.path("site").asText()),
                                numbers("Cases", line -> line.path("cases").asText()),
                                numbers("Observed", line -> text(line.path("observed"))),
                                numbers("Expected", line -> number(line.path("expected"))),
                                numbers("Observed by expected", line -> number(line.path("ratio"))),
                                numbers("95 % limits", line -> limits(line.path("limits95"))),
                                numbers("99.8 % limits", line -> limits(line.path("limits998"))),
                                words("Verdict", TellNumbers::verdict)));
                    case CHECKS -> Stream.concat(Stream.of(checks()), bins());
                };
        return tables.filter(table -> !table.rows().isEmpty()).toList();
    }

    private Table changes() {
        return table(
                "When each share changed most",
                "trends",
                cause("cause"),
                words("From month", line -> line.at("/change/month").asText("no change to tell")),
                numbers("Before", line -> share(line.at("/change/before"))),
                numbers("From then on", line -> share(line.at("/change/after"))),
                numbers("p, adjusted", line -> probability(line.at("/change/adjusted"))));
    }

    /** The months of those causes that stand alone; of many they would be many pages. */
    private Stream<Table> months() {
        List<JsonNode> trends = items(answer.path("trends"))
                .filter(trend -> !trend.path("cause").asText().equals("undetermined"))
                .toList();
        return trends.size() != 1
                ? Stream.empty()
                : trends.stream()
                        .map(trend -> table(
                                PlainWords.sentence(plain(trend.path("cause"))) + " by month",
                                items(trend.path("months")).toList(),
                                words("Month", month -> month.path("month").asText()),
                                shares("Share of the cases, 95 % interval", "cases"),
                                numbers("Limits of chance", month -> percents(month.path("limits"))),
                                words(
                                        "Verdict",
                                        month -> month.path("out").asBoolean() ? "beyond a limit" : "within")));
    }

    private Table results() {
        return table(
                "What the tests after the work showed",
                "results",
                group(),
                shares("With a final test", "tested"),
                shares("Proved", "verified"),
                shares("Proved by the first final test", "firstTimeCure"),
                shares("Passed the official test", "official"));
    }

    private Table lines() {
        return table(
                "Lines of the scope",
                "lines",
                words("Item", line -> PlainWords.sentence(plain(line.path("item")))),
                words("Action", line -> plain(line.path("action"))),
                group(),
                shares("Cases with the item", "cases"),
                numbers("Lines", line -> text(line.path("lines"))),
                words("By necessity", TellNumbers::necessities),
                shares("Agreed", "agreed"),
                shares("Refused", "refused"),
                shares("Done", "done"),
                words("Net money", TellNumbers::money));
    }

    private Table checks() {
        return table(
                "Checks",
                "checks",
                words("Check", line -> PlainWords.sentence(plain(line.path("check")))),
                group(),
                numbers("Asked", line -> line.path("asked").asText()),
                numbers("Made", line -> line.path("made").asText()),
                shares("Made unasked", "unasked"),
                shares("Could be got at", "answered"),
                shares("Asked and not made", "notMade"),
                numbers("Bits told", line -> number(line.path("bits"))),
                numbers("Minutes", line -> number(line.path("minutes"))),
                numbers("Bits a minute", line -> number(line.path("bitsPerMinute"))));
    }

    private Stream<Table> bins() {
        return items(answer.path("calibration"))
                .map(moment -> table(
                        moment(moment),
                        items(moment.path("bins")).toList(),
                        words("Probability from", bin -> percent(bin.path("low"))),
                        numbers("to", bin -> percent(bin.path("high"))),
                        numbers("Told on average", bin -> percent(bin.path("meanProbability"))),
                        shares("Came true, 95 % interval", "confirmed")));
    }

    private static String moment(JsonNode calibration) {
        return calibration.path("moment").asText().equals("arrival")
                ? "Probabilities after the arrival test"
                : "Probabilities before the first look with a wheel off";
    }

    /** A column to be, with what stands in it. */
    private record Told(String head, boolean number, Function<JsonNode, String> words) {}

    private static Told words(String head, Function<JsonNode, String> words) {
        return new Told(head, false, words);
    }

    private static Told numbers(String head, Function<JsonNode, String> words) {
        return new Told(head, true, words);
    }

    private static Told shares(String head, String member) {
        return numbers(head, line -> share(line.path(member)));
    }

    private static Told cause(String member) {
        return words("Cause", line -> PlainWords.sentence(plain(line.path(member))));
    }

    private static Told group() {
        return words(GROUP, TellNumbers::group);
    }

    private Table table(String caption, String list, Told... columns) {
        return table(caption, items(answer.path(list)).toList(), columns);
    }

    /** A table of these columns; groups are left out where all cases are one. */
    private Table table(String caption, List<JsonNode> lines, Told... columns) {
        boolean grouped = lines.stream().anyMatch(line -> !line.path("group").isEmpty());
        List<Told> told = Stream.of(columns)
                .filter(column -> grouped || !column.head().equals(GROUP) || column.equals(columns[0]))
                .toList();
        List<Row> rows = lines.stream()
                .map(line -> new Row(
                        told.get(0).words().apply(line),
                        address(line),
                        told.stream()
                                .skip(1)
                                .map(column -> new Cell(column.words().apply(line), column.number()))
                                .toList()))
                .toList();
        return new Table(
                caption,
                told.stream()
                        .map(column -> new Column(column.head(), column.number()))
                        .toList(),
                rows);
    }

    /** Of several trends each can be looked at alone. */
    private @Nullable String address(JsonNode line) {
        String cause = line.path("cause").asText();
        return line.has("months") && answer.path("trends").size() > 2 && !cause.equals("undetermined")
                ? closer.apply("cause", cause)
                : null;
    }

    private static String group(JsonNode line) {
        List<String> words = new ArrayList<>();
        for (Map.Entry<String, JsonNode> member : line.path("group").properties()) {
            words.add(NumbersWords.value(member.getKey(), member.getValue().asText()));
        }
        return words.isEmpty() ? "All" : String.join(", ", words);
    }

    private static String share(JsonNode share) {
        if (share.isMissingNode() || share.isNull()) {
            return "";
        }
        String of = share.path("of").asText();
        return share.path("withheld").asBoolean()
                ? "withheld, " + of + " cases"
                : percent(share.path("share")) + " (" + percents(share.path("interval")) + "), "
                        + share.path("count").asText() + " of " + of;
    }

    private static String difference(JsonNode line) {
        return line.path("difference").isNumber()
                ? percent(line.path("difference")) + " (" + percents(line.path("interval")) + ")"
                : "";
    }

    private static JsonNode last(JsonNode group) {
        JsonNode curve = group.path("curve");
        return curve.path(curve.size() - 1);
    }

    private static String atTheEnd(JsonNode group) {
        if (group.path("withheld").asBoolean()) {
            return "withheld";
        }
        JsonNode last = last(group);
        return percent(last.path("withoutReturn"))
                + (last.path("interval").isObject() ? " (" + percents(last.path("interval")) + ")" : "");
    }

    private static String verdict(JsonNode site) {
        return site.path("withheld").asBoolean()
                ? "withheld"
                : switch (site.path("verdict").asText("")) {
                    case "below-99-8-percent" -> "▼▼ below the 99.8 % limit";
                    case "below-95-percent" -> "▼ below the 95 % limit";
                    case "within" -> "within the limits";
                    case "above-95-percent" -> "▲ above the 95 % limit";
                    case "above-99-8-percent" -> "▲▲ above the 99.8 % limit";
                    default -> "nothing is expected";
                };
    }

    private static String necessities(JsonNode line) {
        List<String> words = new ArrayList<>();
        for (Map.Entry<String, JsonNode> necessity : line.path("necessities").properties()) {
            words.add(necessity.getValue().asText() + " " + necessity.getKey().replace('-', ' '));
        }
        return String.join(", ", words);
    }

    private static String money(JsonNode line) {
        return String.join(
                "; ",
                items(line.path("money"))
                        .map(money -> money.path("total").asText() + " "
                                + money.path("currency").asText() + ", "
                                + money.path("lines").asText() + " lines, "
                                + money.path("mean").asText() + " each")
                        .toList());
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
        return share.isNumber() ? ChartStyle.percent().format(share.doubleValue()) : "";
    }

    private static String percents(JsonNode interval) {
        return interval.isObject() ? percent(interval.path("low")) + " to " + percent(interval.path("high")) : "";
    }

    private static String limits(JsonNode interval) {
        return interval.isObject() ? number(interval.path("low")) + " to " + number(interval.path("high")) : "";
    }

    private static String number(JsonNode number) {
        return number.isNumber()
                ? PlainWords.plain(number.decimalValue().setScale(DECIMALS, RoundingMode.HALF_EVEN))
                : "";
    }

    private static String probability(JsonNode pValue) {
        if (!pValue.isNumber()) {
            return "";
        }
        return pValue.decimalValue().compareTo(SMALLEST) < 0 ? "below 0.001" : number(pValue);
    }
}
