package org.axlecause.pages;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.axlecause.statistics.Calibration;
import org.axlecause.statistics.Funnel;
import org.axlecause.statistics.KaplanMeier;
import org.axlecause.statistics.Pareto;
import org.axlecause.statistics.Proportion;
import org.axlecause.statistics.SurvivalTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class StatisticsChartsTest {

    static String pareto() {
        Map<String, Long> counts = new LinkedHashMap<>();
        counts.put("lining glazed", 412L);
        counts.put("wheel cylinder leaking", 297L);
        counts.put("wheel cylinder seized", 240L);
        counts.put("automatic adjuster seized", 118L);
        counts.put("drum oval", 77L);
        counts.put("parking brake cable tight", 51L);
        counts.put("flexible hose swollen", 18L);
        return ParetoChart.of(
                Pareto.of(counts), "confirmed causes", Lettering.TEXT, "pareto", "What is confirmed most");
    }

    static String months() {
        int[] counts = {21, 18, 25, 20, 16, 22, 19, 24, 0, 23, 17, 20, 19, 22, 48, 44, 51, 39, 42, 47, 40, 45, 43, 38};
        List<MonthlyChart.Month> months = IntStream.range(0, counts.length)
                .mapToObj(index -> new MonthlyChart.Month(
                        YearMonth.of(2024, 1).plusMonths(index),
                        counts[index] == 0
                                ? new Proportion(0, 0)
                                : new Proportion(counts[index], 380 + 17L * (index % 5))))
                .toList();
        return MonthlyChart.of(
                months, "cases with a leaking wheel cylinder", Lettering.TEXT, "months", "Leaking wheel cylinders");
    }

    static String funnel() {
        List<Funnel.Count> sites = new ArrayList<>();
        for (int site = 0; site < 30; site++) {
            double expected = 3 + site * 2.1;
            double swing = Math.sin(site * 1.7) * Math.sqrt(expected);
            sites.add(new Funnel.Count("site " + site, Math.max(0, Math.round(expected + swing)), expected));
        }
        sites.add(new Funnel.Count("Elmstead", 71, 38));
        sites.add(new Funnel.Count("Northgate", 26, 15.5));
        return FunnelChart.of(
                Funnel.ofRatios(sites),
                "sites",
                "returns by returns expected",
                "returns expected",
                Lettering.TEXT,
                "funnel",
                "Returns by site");
    }

    static String survival() {
        List<SurvivalTime> first = new ArrayList<>();
        List<SurvivalTime> second = new ArrayList<>();
        for (int day = 5; day <= 365; day += 6) {
            first.add(new SurvivalTime(day, 1, 6));
            second.add(new SurvivalTime(day, day % 4 == 1 ? 3 : 1, 3));
        }
        first.add(new SurvivalTime(365, 0, 260));
        second.add(new SurvivalTime(365, 0, 90));
        return SurvivalChart.of(
                List.of(
                        new SurvivalChart.Group("wheel cylinder renewed", KaplanMeier.of(first)),
                        new SurvivalChart.Group("lining renewed", KaplanMeier.of(second))),
                365,
                "a return",
                "days since the proof of the repair",
                Lettering.TEXT,
                "survival",
                "Returns after the repair");
    }

    static String reliability() {
        List<Calibration.Forecasts> told = IntStream.range(0, 50)
                .mapToObj(index -> {
                    double probability = (index + 0.5) / 50;
                    long number = 8 + Math.round(60 * Math.abs(probability - 0.5));
                    double share = 0.1 + 0.8 * probability;
                    return new Calibration.Forecasts(probability, new Proportion(Math.round(share * number), number));
                })
                .toList();
        return ReliabilityChart.of(
                Calibration.of(told, 10), Lettering.TEXT, "reliability", "Probabilities of causes at arrival");
    }

    static Stream<String> charts() {
        return Stream.of(pareto(), months(), funnel(), survival(), reliability());
    }

    @ParameterizedTest
    @MethodSource("charts")
    void a_chart_says_in_words_what_it_shows(String svg) throws Exception {
        Document document = Svg.parsed(svg);
        String labels = document.getDocumentElement().getAttribute("aria-labelledby");

        assertThat(document.getDocumentElement().getAttribute("role")).isEqualTo("img");
        assertThat(document.getElementsByTagName("title").getLength()).isEqualTo(1);
        assertThat(document.getElementsByTagName("desc").item(0).getTextContent())
                .hasSizeGreaterThan(60)
                .endsWith(".");
        assertThat(labels.split(" ")).containsExactly(Svg.id(document, "title"), Svg.id(document, "desc"));
    }

    @ParameterizedTest
    @MethodSource("charts")
    void nothing_is_told_by_colour_alone(String svg) {
        assertThat(Svg.colours(svg)).allMatch(Svg::isGrey);
        assertThat(svg).contains("fill=\"white\"");
    }

    @ParameterizedTest
    @MethodSource("charts")
    void every_chart_shows_its_number(String svg) throws Exception {
        assertThat(Svg.texts(svg)).anyMatch(text -> text.matches(".*n = [1-9]\\d*.*"));
    }

    @ParameterizedTest
    @MethodSource("charts")
    void words_keep_their_width_in_any_type(String svg) throws Exception {
        NodeList texts = Svg.parsed(svg).getElementsByTagName("text");

        for (int index = 0; index < texts.getLength(); index++) {
            Element text = (Element) texts.item(index);
            assertThat(Double.parseDouble(text.getAttribute("textLength")))
                    .as(text.getTextContent())
                    .isBetween(
                            3.0 * text.getTextContent().strip().length(),
                            11.0 * text.getTextContent().length());
            assertThat(text.getAttribute("lengthAdjust")).isEqualTo("spacingAndGlyphs");
        }
    }

    @Test
    void the_same_numbers_give_the_same_drawing_and_charts_share_no_name() {
        assertThat(charts().toList()).isEqualTo(charts().toList());
        assertThat(charts().flatMap(svg -> Svg.ids(svg).stream()).toList()).doesNotHaveDuplicates();
    }

    @Test
    void the_most_comes_first_with_its_share_and_what_is_reached_together() throws Exception {
        assertThat(Svg.texts(pareto()))
                .contains("lining glazed: 412 (34 %)", "flexible hose swollen: 18 (1.5 %)", "100 %")
                .anyMatch(text -> text.contains("n = 1213"));
    }

    @Test
    void months_beyond_a_limit_are_named() throws Exception {
        String told = Svg.parsed(months()).getElementsByTagName("desc").item(0).getTextContent();

        assertThat(told).contains("May 2025: 51 of 397, beyond a limit").doesNotContain("Jan 2024");
        assertThat(Svg.texts(months())).contains("Sep 2024, not told", "beyond a limit", "mean");
    }

    @Test
    void where_no_month_is_beyond_a_limit_the_legend_names_none() throws Exception {
        List<MonthlyChart.Month> steady = IntStream.range(0, 3)
                .mapToObj(index ->
                        new MonthlyChart.Month(YearMonth.of(2024, 1).plusMonths(index), new Proportion(20, 400)))
                .toList();

        assertThat(Svg.texts(MonthlyChart.of(steady, "cases", Lettering.TEXT, "steady", "Steady months")))
                .contains("mean")
                .doesNotContain("beyond a limit");
    }

    @Test
    void sites_beyond_a_limit_are_named_and_the_overdispersion_is_stated() throws Exception {
        String told = Svg.parsed(funnel()).getElementsByTagName("desc").item(0).getTextContent();

        assertThat(Svg.texts(funnel())).contains("Elmstead", "99.8 % limits", "95 % limits", "as expected");
        assertThat(told)
                .contains("Elmstead: 71 at a size of 38, above the 99.8 % limit", "overdispersion")
                .doesNotContain("site 3:");
    }

    @Test
    void those_still_followed_are_numbered_below_the_curves() throws Exception {
        assertThat(Svg.texts(survival()))
                .contains("still followed", "wheel cylinder renewed, n = 687", "687", "267", "96");
    }

    @Test
    void the_band_of_chance_is_drawn_where_one_curve_stands_alone() throws Exception {
        KaplanMeier curve = KaplanMeier.of(List.of(new SurvivalTime(30, 4, 0), new SurvivalTime(365, 0, 60)));
        String alone = SurvivalChart.of(
                List.of(new SurvivalChart.Group("all repairs", curve)),
                365,
                "a return",
                "days since the proof of the repair",
                Lettering.TEXT,
                "alone",
                "Returns after the repair");

        assertThat(Svg.texts(alone)).contains("share without a return, 95 % band");
        assertThat(Svg.texts(survival())).contains("share without a return").noneMatch(text -> text.contains("band"));
    }

    @Test
    void each_bin_shows_its_number() throws Exception {
        Calibration one = Calibration.of(List.of(new Calibration.Forecasts(0.3, new Proportion(37, 123))), 10);

        assertThat(Svg.texts(ReliabilityChart.of(one, Lettering.TEXT, "one", "One bin")))
                .contains("n 123", "as told", "100 %")
                .doesNotContain("110 %");
    }
}
