package org.axlecause.pages;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

class ChartsTest {

    private static final String WHEELS = WheelForceChart.of(
            List.of(
                    new WheelForceChart.Bar("left wheel", "on arrival", new BigDecimal("590")),
                    new WheelForceChart.Bar("left wheel", "after the work", new BigDecimal("1590")),
                    new WheelForceChart.Bar("right wheel", "on arrival", new BigDecimal("1610")),
                    new WheelForceChart.Bar("right wheel", "after the work", new BigDecimal("1550"))),
            Lettering.TEXT,
            "wheels",
            "The two wheels of the rear axle <&>",
            "left wheel 590 N on arrival.");

    private static final String TRACE = TraceChart.of(
            List.of(new TraceChart.Line("left wheel", samples(100)), new TraceChart.Line("right wheel", samples(80))),
            20,
            "N",
            Lettering.TEXT,
            "trace",
            "Force over time",
            "Left wheel solid line, right wheel dashed line.");

    @Test
    void every_bar_says_its_force_with_unit_and_its_test() throws Exception {
        assertThat(Svg.texts(WHEELS))
                .contains(
                        "590 N on arrival",
                        "1590 N after the work",
                        "1610 N on arrival",
                        "1550 N after the work",
                        "left wheel",
                        "right wheel",
                        "braking force in N");
    }

    @Test
    void a_chart_says_in_words_what_it_shows() throws Exception {
        for (String svg : List.of(WHEELS, TRACE)) {
            Document document = Svg.parsed(svg);
            String labels = document.getDocumentElement().getAttribute("aria-labelledby");

            assertThat(document.getDocumentElement().getAttribute("role")).isEqualTo("img");
            assertThat(document.getElementsByTagName("title").getLength()).isEqualTo(1);
            assertThat(document.getElementsByTagName("desc").getLength()).isEqualTo(1);
            assertThat(labels.split(" ")).containsExactly(Svg.id(document, "title"), Svg.id(document, "desc"));
        }
        assertThat(Svg.parsed(WHEELS).getElementsByTagName("title").item(0).getTextContent())
                .isEqualTo("The two wheels of the rear axle <&>");
    }

    @Test
    void nothing_is_told_by_colour_alone() {
        assertThat(Svg.colours(WHEELS)).allMatch(Svg::isGrey);
        assertThat(Svg.colours(TRACE)).allMatch(Svg::isGrey);
    }

    @Test
    void the_lines_of_two_wheels_differ_by_their_dashes_and_are_named() throws Exception {
        assertThat(TRACE).contains("stroke-dasharray=\"7,4\"");
        assertThat(Svg.texts(TRACE)).contains("left wheel", "right wheel", "time in s");
    }

    @Test
    void two_charts_on_one_page_share_no_name() {
        Set<String> ids = new TreeSet<>(Svg.ids(WHEELS));
        ids.retainAll(Svg.ids(TRACE));

        assertThat(Svg.ids(WHEELS)).isNotEmpty();
        assertThat(ids).isEmpty();
    }

    @Test
    void on_paper_words_are_outlines_that_need_no_font_of_the_machine() throws Exception {
        String paper = WheelForceChart.of(
                List.of(new WheelForceChart.Bar("left wheel", "on arrival", new BigDecimal("590"))),
                Lettering.OUTLINES,
                "wheels",
                "The left wheel",
                "left wheel 590 N on arrival.");

        assertThat(Svg.texts(paper)).isEmpty();
        assertThat(paper).contains("alt=\"The left wheel. left wheel 590 N on arrival.\"");
    }

    @Test
    void the_same_forces_give_the_same_drawing() {
        String again = TraceChart.of(
                List.of(
                        new TraceChart.Line("left wheel", samples(100)),
                        new TraceChart.Line("right wheel", samples(80))),
                20,
                "N",
                Lettering.TEXT,
                "trace",
                "Force over time",
                "Left wheel solid line, right wheel dashed line.");

        assertThat(again).isEqualTo(TRACE);
    }

    private static List<Double> samples(int highest) {
        List<Double> samples = new ArrayList<>();
        for (int index = 0; index < 50; index++) {
            samples.add(index == 20 ? null : highest * Math.sin(index / 16.0));
        }
        return samples;
    }
}
