package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.qute.RawString;
import jakarta.enterprise.context.ApplicationScoped;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.access.ReadSites;
import org.axlecause.access.Site;
import org.axlecause.catalogue.Catalogue;
import org.axlecause.catalogue.CatalogueKind;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.statistics.AskStatistics;
import org.axlecause.statistics.Asked;
import org.axlecause.statistics.Chart;
import org.axlecause.statistics.Told;
import org.jspecify.annotations.Nullable;

/** Makes a question about numbers of what a form sent, and a page of its answer. */
@ApplicationScoped
class AskNumbers {

    /** More charts than these would be many pages; a closer look shows each alone. */
    private static final int MOST_CHARTS = 2;

    private static final String PART = "part";
    private static final String COMPARE = "compare";
    private static final String PERIOD = "period";
    private static final String CURSOR = "cursor";
    private static final List<String> VEHICLES =
            List.of("category", "make", "model", "layout", "ageBand", "odometerBand");
    private static final List<String> TIMES = List.of("from", "to", "season");
    private static final List<String> PLACES = List.of("region", "site", "regime");
    private static final List<String> EARLIER = List.of("earlierFrom", "earlierTo");
    private static final List<String> WRITTEN = List.of("make", "model");

    /** Problems name a parameter by its code; the form has another word for it. */
    private static final Pattern NAME_OF_A_FIELD = Pattern.compile("`([A-Za-z]+)`");

    private static final Pattern GIVEN = Pattern.compile("\"([^\"]*)\"");
    private static final Pattern DAY = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})");

    private final AskStatistics askStatistics;
    private final DrawStatistics drawStatistics;
    private final ReadSites readSites;
    private final Map<String, String> regimes;
    private final PlainWords plainWords;
    private final KeptAnswers keptAnswers;

    AskNumbers(
            AskStatistics askStatistics,
            DrawStatistics drawStatistics,
            ReadSites readSites,
            Catalogue catalogue,
            PlainWords plainWords,
            KeptAnswers keptAnswers) {
        this.askStatistics = askStatistics;
        this.drawStatistics = drawStatistics;
        this.readSites = readSites;
        this.regimes = catalogue.written(CatalogueKind.REGIMES).stream()
                .collect(Collectors.toMap(
                        regime -> regime.path("code").asText(),
                        regime -> regime.path("text").asText()));
        this.plainWords = plainWords;
        this.keptAnswers = keptAnswers;
    }

    /** An answer to take away. */
    record Download(String name, String mediaType, String content) {}

    /** The form of a question, filled in as it was sent, with its answer or what is wrong. */
    NumbersPage page(NumbersQuestion question, Map<String, List<String>> parameters, Actor actor) {
        Map<String, List<String>> given = new Asked(parameters).values();
        Map<String, List<String>> words = askStatistics.words(question.subject(), actor);
        NumbersWords named = named(actor);
        List<String> problems = List.of();
        NumbersPage.Answer answer = null;
        if (question != NumbersQuestion.GROUPS || given.containsKey(COMPARE)) {
            try {
                answer = keptAnswers.of(
                        askStatistics.tag(question.toString(), new Asked(given), actor),
                        () -> answer(
                                question,
                                given,
                                named,
                                askStatistics.answer(question.subject(), shown(question, given), actor)));
            } catch (RefusedException refused) {
                problems = problems(refused.problem());
            }
        }
        return new NumbersPage(
                question,
                List.of(NumbersQuestion.values()),
                parts(question, given, named, words),
                !given.isEmpty(),
                problems,
                answer);
    }

    private NumbersWords named(Actor actor) {
        return new NumbersWords(Map.of(
                "site",
                readSites.visible(actor).stream().collect(Collectors.toMap(Site::site, Site::name)),
                "regime",
                regimes));
    }

    /** The answer of a question in one of its forms. */
    Download download(NumbersQuestion question, String form, Map<String, List<String>> parameters, Actor actor) {
        if (!List.of("csv", "json", "svg").contains(form)) {
            throw RefusedException.notFound("Numbers come as csv, json or svg; '" + form + "' is none of these.");
        }
        Told told = askStatistics.answer(question.subject(), asked(question, new Asked(parameters).values()), actor);
        String name = question + "-"
                + told.asOf().withOffsetSameInstant(ZoneOffset.UTC).toLocalDate() + "." + form;
        return switch (form) {
            case "csv" -> new Download(name, "text/csv;charset=UTF-8", told.csv());
            case "json" -> new Download(name, "application/json", told.json());
            default -> new Download(name, "image/svg+xml", askStatistics.svg(question.subject(), told));
        };
    }

    /** As it is asked for a page, which draws curves and tells their ends in words. */
    private static Asked shown(NumbersQuestion question, Map<String, List<String>> given) {
        Asked asked = asked(question, given);
        return question == NumbersQuestion.RETURNS ? new Asked(with(asked.values(), "curve", "end")) : asked;
    }

    private static Asked asked(NumbersQuestion question, Map<String, List<String>> given) {
        Map<String, List<String>> parameters = new TreeMap<>(given);
        parameters.remove(PART);
        if (question.part() != null) {
            parameters.put(PART, List.of(question.part()));
        }
        return new Asked(parameters);
    }

    private static List<String> problems(Problem problem) {
        if (problem.status() != RefusedException.Reason.INVALID_PAYLOAD.status()
                || problem.causes().isEmpty()) {
            throw RefusedException.of(problem);
        }
        return problem.causes().stream()
                .map(cause -> inWordsOfTheForm(cause.text()))
                .toList();
    }

    private static String inWordsOfTheForm(String problem) {
        String labelled = NAME_OF_A_FIELD
                .matcher(problem)
                .replaceAll(name -> Matcher.quoteReplacement("“" + NumbersWords.label(name.group(1)) + "”"));
        String quoted = GIVEN.matcher(labelled).replaceAll("“$1”");
        return DAY.matcher(quoted).replaceAll("$1\u2011$2\u2011$3");
    }

    private NumbersPage.Answer answer(
            NumbersQuestion question, Map<String, List<String>> given, NumbersWords named, Told told) {
        JsonNode answer = Json.read(told.json());
        TellNumbers tell = new TellNumbers(
                answer, named, plainWords, (name, value) -> address(question, with(given, name, value)));
        TellNumbers.Compared compared = compared(given, named);
        boolean drawn = told.charts().size() <= MOST_CHARTS;
        List<NumbersPage.Download> downloads = new ArrayList<>(List.of(
                new NumbersPage.Download("These rows as CSV", address(question + "/csv", given)),
                new NumbersPage.Download("This answer as JSON", address(question + "/json", given))));
        if (told.charts().size() == 1) {
            downloads.add(new NumbersPage.Download("The chart as SVG", address(question + "/svg", given)));
        }
        String next = told.next();
        List<Chart> charts =
                told.charts().stream().map(chart -> named(chart, given, named)).toList();
        return new NumbersPage.Answer(
                among(question, given, named, tell.cases()),
                TellNumbers.moment(told.asOf()),
                tell.statements(question, measured(given), compared),
                tell.isEmpty(),
                drawn
                        ? IntStream.range(0, charts.size())
                                .filter(index -> !charts.get(index).isEmpty())
                                .mapToObj(index -> new NumbersPage.Picture(
                                        DrawStatistics.title(charts.get(index)),
                                        new RawString(drawStatistics.svg(
                                                charts.get(index), told.asOf(), "chart-" + (index + 1)))))
                                .toList()
                        : List.of(),
                tell.tables(question, measured(given), compared),
                next == null ? null : address(question, with(given, CURSOR, next)),
                downloads,
                tell.definitions());
    }

    /** The chart with names in place of the codes of its sites and groups. */
    private Chart named(Chart chart, Map<String, List<String>> given, NumbersWords named) {
        if (chart instanceof Chart.Sites sites) {
            return sites.named(site -> named.value("site", site));
        }
        String by = first(given, "by");
        return chart instanceof Chart.Returns returns && !by.isEmpty()
                ? returns.named(
                        group -> by.equals("item") ? plainWords.word("items", group, "name") : named.value(by, group))
                : chart;
    }

    private static String first(Map<String, List<String>> given, String name) {
        return given.getOrDefault(name, List.of("")).get(0);
    }

    private static String measured(Map<String, List<String>> given) {
        String cause = first(given, "cause");
        return NumbersWords.counted(cause.isEmpty() ? first(given, "measure") : cause);
    }

    private static TellNumbers.Compared compared(Map<String, List<String>> given, NumbersWords named) {
        String by = first(given, COMPARE);
        List<String> values = given.getOrDefault(by, List.of());
        if (by.equals(PERIOD)) {
            return new TellNumbers.Compared("this period", "the earlier period");
        }
        return new TellNumbers.Compared(
                values.isEmpty() ? "all" : named.value(by, values.get(0)),
                values.size() < 2 ? "all others" : named.value(by, values.get(1)));
    }

    private static Map<String, List<String>> with(Map<String, List<String>> given, String name, String value) {
        Map<String, List<String>> changed = new TreeMap<>(given);
        changed.put(name, List.of(value));
        return changed;
    }

    private static String address(Object question, Map<String, List<String>> parameters) {
        String query = parameters.entrySet().stream()
                .flatMap(
                        entry -> entry.getValue().stream().map(value -> written(entry.getKey()) + "=" + written(value)))
                .collect(Collectors.joining("&"));
        return "/numbers/" + question + (query.isEmpty() ? "" : "?" + query);
    }

    private static String written(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    /** The cases that are asked about and what is asked of them, in words. */
    private static String among(
            NumbersQuestion question, Map<String, List<String>> given, NumbersWords named, @Nullable String cases) {
        String compared = first(given, COMPARE);
        List<String> chosen = Stream.of(VEHICLES, TIMES, PLACES)
                .flatMap(List::stream)
                .filter(name -> given.containsKey(name) && !name.equals(compared))
                .map(name -> said(name, given, named))
                .toList();
        List<String> asked = question.asks().stream()
                .filter(name -> given.containsKey(name) && !name.equals(COMPARE))
                .map(name -> said(name, given, named))
                .toList();
        String number = cases == null || question == NumbersQuestion.GROUPS ? "" : cases + " ";
        String among = "Among " + (chosen.isEmpty() ? "all " : "the ") + number
                + (number.equals("1 ") ? "case that has ended" : "cases that have ended")
                + (chosen.isEmpty() ? "" : ": " + String.join("; ", chosen));
        if (compared.equals(PERIOD)) {
            among += "; this period against an earlier one";
        } else if (!compared.isEmpty()) {
            TellNumbers.Compared groups = compared(given, named);
            among += "; " + NumbersWords.named(compared) + " " + groups.first() + " against " + groups.second();
        }
        return among + "." + (asked.isEmpty() ? "" : " Asked: " + String.join("; ", asked) + ".");
    }

    private static String said(String name, Map<String, List<String>> given, NumbersWords named) {
        return NumbersWords.named(name) + " "
                + given.getOrDefault(name, List.of()).stream()
                        .map(value -> named.value(name, value))
                        .collect(Collectors.joining(" or "));
    }

    private static List<NumbersPage.Part> parts(
            NumbersQuestion question,
            Map<String, List<String>> given,
            NumbersWords named,
            Map<String, List<String>> words) {
        String compared = question == NumbersQuestion.GROUPS ? first(given, COMPARE) : "";
        List<NumbersPage.Part> parts = new ArrayList<>();
        List<String> asks =
                question.asks().stream().filter(name -> !name.equals(COMPARE)).toList();
        if (!asks.isEmpty()) {
            parts.add(part("What", asks, given, named, words, compared));
        }
        parts.add(part("Among which vehicles", VEHICLES, given, named, words, compared));
        parts.add(part("When", TIMES, given, named, words, compared));
        parts.add(part("Where", PLACES, given, named, words, compared));
        if (question == NumbersQuestion.GROUPS) {
            List<NumbersPage.Field> fields = new ArrayList<>(fields(COMPARE, given, named, words));
            if (compared.equals(PERIOD)) {
                EARLIER.forEach(name -> fields.addAll(fields(name, given, named, words)));
            } else if (words.getOrDefault(COMPARE, List.of()).contains(compared)) {
                List<String> values = given.getOrDefault(compared, List.of());
                for (int index = 0; index < 2; index++) {
                    fields.add(field(
                            compared,
                            index,
                            index == 0 ? "First group" : "Against",
                            index == 0 ? "choose one" : "all others",
                            index < values.size() ? values.get(index) : "",
                            named,
                            words));
                }
            }
            parts.add(new NumbersPage.Part("Compared with what", fields));
        }
        return parts;
    }

    private static NumbersPage.Part part(
            String title,
            List<String> names,
            Map<String, List<String>> given,
            NumbersWords named,
            Map<String, List<String>> words,
            String compared) {
        return new NumbersPage.Part(
                title,
                names.stream()
                        .filter(name -> !name.equals(compared))
                        .flatMap(name -> fields(name, given, named, words).stream())
                        .toList());
    }

    /** A field for each value that was sent, one at least. */
    private static List<NumbersPage.Field> fields(
            String name, Map<String, List<String>> given, NumbersWords named, Map<String, List<String>> words) {
        List<String> values = given.getOrDefault(name, List.of(""));
        return IntStream.range(0, values.size())
                .mapToObj(index -> field(
                        name,
                        index,
                        index == 0 ? NumbersWords.label(name) : "or " + NumbersWords.label(name),
                        NumbersWords.none(name),
                        values.get(index),
                        named,
                        words))
                .toList();
    }

    private static NumbersPage.Field field(
            String name,
            int index,
            String label,
            String none,
            String value,
            NumbersWords named,
            Map<String, List<String>> words) {
        List<String> valid = new ArrayList<>(words.getOrDefault(name, List.of()));
        boolean written = WRITTEN.contains(name);
        if (!written && !value.isEmpty() && !valid.contains(value)) {
            valid.add(value);
        }
        return new NumbersPage.Field(
                name + "-" + index,
                name,
                label,
                words.containsKey(name) ? written ? "suggestion" : "choice" : "day",
                none,
                valid.stream()
                        .map(word -> new NumbersPage.Option(word, named.value(name, word)))
                        .toList(),
                value);
    }
}
