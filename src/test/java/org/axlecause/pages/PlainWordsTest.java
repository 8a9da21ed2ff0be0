package org.axlecause.pages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.stream.Stream;
import org.axlecause.shared.Json;
import org.axlecause.shared.YamlException;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlainWordsTest {

    private static final PlainWords WORDS = new PlainWords();

    @Test
    void every_clause_of_a_policy_stands_in_a_group() {
        YamlNode baseline = YamlFile.onClassPath("rules/policies/baseline.yaml").root();

        assertThat(Stream.of("thresholds", "clauses")
                        .flatMap(list -> baseline.items(list).stream())
                        .map(clause -> WORDS.clauseGroup(clause.text("code")))
                        .distinct())
                .containsExactlyInAnyOrderElementsOf(WORDS.clauseGroups());
    }

    @Test
    void every_value_that_stands_for_itself_has_its_words_and_no_other() {
        YamlNode words =
                YamlFile.onClassPath("rules/catalogue/plain-words.yaml").root();

        assertThat(words.items("settings").stream().map(setting -> setting.text("code")))
                .containsExactlyInAnyOrderElementsOf(Stream.of(
                                "cause-model/inference", "measurement/trade-values", "statistics/learning")
                        .flatMap(file -> YamlFile.onClassPath("rules/" + file + ".yaml").root().names().stream())
                        .filter(name -> !name.equals("verified") && !name.equals("source"))
                        .toList());
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource({"180, Cel, 180 °C", "8, a, 8 years", "1.50, 1, 1.5", "60000, km, '60,000 km'", "0.1, mm, 0.1 mm"})
    void a_measure_has_its_unit_as_people_write_it(String value, String unit, String said) {
        assertThat(PlainWords.measure(new BigDecimal(value), unit).replace('\u00a0', ' '))
                .isEqualTo(said);
    }

    @ParameterizedTest(name = "{2}")
    @CsvSource({
        "renew,     shoe-set,    'rear axle',              'Renew the brake shoes, rear axle'",
        "fabricate, brake-pipe,  'rear axle, left wheel',  'Make a new brake pipe, rear axle, left wheel'",
        "bleed,     brake-fluid, 'brake circuit 2',        'Let the air out of the brake fluid, brake circuit 2'",
        "measure,   roller-test, '',                       'Check the brakes on the roller tester'"
    })
    void a_line_is_a_sentence(String action, String item, String place, String sentence) {
        assertThat(WORDS.line(action, item, place)).isEqualTo(sentence);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "antilock-data-check, anti-lock data check",
        "disc-run-out,        disc run-out",
        "hold-down-broken,    hold-down broken",
        "hub-seal-leaking,    hub seal leaking"
    })
    void a_compound_within_a_code_keeps_its_hyphen(String code, String words) {
        assertThat(WORDS.named(code)).isEqualTo(words);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "'imbalance of the service brake at axle 2: 63.35 % before, 60.76 % after',"
                + " 'difference between the two wheels of the service brake at axle 2: 63 % before, 61 % after'",
        "'peak of the parking brake at axle 2 left: 590 N before, 1710 N after',"
                + " 'highest force of the parking brake at axle 2 left: 590 N before, 1710 N after'",
        "hub-seal leaking at axle 2 left, hub-seal leaking at axle 2 left"
    })
    void a_comparison_of_two_tests_has_the_words_and_decimals_of_its_figure(String shown, String words) {
        assertThat(WORDS.compared(shown)).isEqualTo(words);
    }

    @ParameterizedTest(name = "{0} of {1} axles")
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"axle\": 1}|2|front axle",
                "{\"axle\": 2, \"side\": \"left\"}|2|rear axle, left wheel",
                "{\"axle\": 2, \"side\": \"left\", \"spot\": \"leading\"}|2|rear axle, left wheel, leading side",
                "{\"axle\": 2}|3|axle 2 from the front",
                "{\"axle\": 3}|2|axle 3 from the front",
                "{\"circuit\": 2}|2|brake circuit\u00a02"
            })
    void a_place_is_named_as_people_name_it(String place, int axles, String name) {
        assertThat(PlainWords.place(json(place), axles)).isEqualTo(name);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "63.354|30|true|63\u00a0%; at most 30\u00a0% is allowed",
                "30.09|30|true|30.09\u00a0%; at most 30\u00a0% is allowed",
                "6.0613|16|false|6\u00a0%; at least 16\u00a0% is required"
            })
    void a_figure_stands_beside_its_limit_and_never_looks_like_it(
            String value, String limit, boolean maximum, String shown) {
        assertThat(PlainWords.against(percent(value), percent(limit), maximum)).isEqualTo(shown);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "6.0613|16|8|false|6\u00a0%; at least 16\u00a0% is required, and less than 8\u00a0% counts as dangerous",
                "7.9|16|8|false|7.9\u00a0%; at least 16\u00a0% is required, and less than 8\u00a0% counts as dangerous",
                "63.354|30|50|true|63\u00a0%; at most 30\u00a0% is allowed, and more than 50\u00a0% counts as dangerous"
            })
    void a_figure_beyond_the_bound_of_a_worse_class_still_tells_what_is_required(
            String value, String required, String bound, boolean maximum, String shown) {
        assertThat(PlainWords.against(percent(value), percent(required), percent(bound), "dangerous", maximum))
                .isEqualTo(shown);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "{\"value\": 1, \"unit\": \"1\", \"of\": \"axle set of four shoes\"}"
                        + "|1\u00a0×\u00a0axle set of four shoes",
                "{\"value\": 0.50, \"unit\": \"L\", \"of\": \"new brake fluid\"}|0.5\u00a0L of new brake fluid",
                "{\"value\": 10, \"unit\": \"1\"}|10\u00a0×\u00a0cable"
            })
    void a_quantity_says_how_much_of_what(String quantity, String shown) {
        assertThat(PlainWords.quantity(json(quantity), "cable")).isEqualTo(shown);
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource({
        "590.4, N, 590\u00a0N",
        "0.3125, s, 0.31\u00a0s",
        "-0.3125, s, -0.31\u00a0s",
        "9.806, m/s2, 9.81\u00a0m/s2",
        "1100, N, 1100\u00a0N",
        "-2.3, N, -2\u00a0N"
    })
    void a_figure_has_its_unit(String value, String unit, String shown) {
        assertThat(PlainWords.figure(json("{\"value\": " + value + ", \"unit\": \"" + unit + "\"}")))
                .isEqualTo(shown);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "clip about every 300 mm to 400 mm.|clip about every 300\u00a0mm to 400\u00a0mm.",
                "the peaks differ by 18 % here|the peaks differ by 18\u00a0% here",
                "2 hoses and 3 mmHg|2 hoses and 3 mmHg",
                "after steps 1 and 2|after steps 1 and 2"
            })
    void a_number_is_not_parted_from_its_unit(String text, String unparted) {
        assertThat(PlainWords.unparted(text)).isEqualTo(unparted);
    }

    @Test
    void what_was_not_measured_says_so() {
        assertThat(PlainWords.figure(json("{}").path("value"))).isEqualTo("not measured");
    }

    @Test
    void a_code_without_its_words_is_named_with_the_remedy() {
        YamlFile file = YamlFile.ofText("plain-words.yaml", """
                verified: common-practice
                actions:
                  - {code: renew, text: "Renew the {item}"}
                """);

        assertThatThrownBy(() -> new PlainWords(file))
                .isInstanceOf(YamlException.class)
                .hasMessageContaining("'fabricate' is missing")
                .hasMessageContaining("add its words");
    }

    private static JsonNode percent(String value) {
        return json("{\"value\": " + value + ", \"unit\": \"%\"}");
    }

    private static JsonNode json(String text) {
        try {
            return Json.mapper().readTree(text);
        } catch (JsonProcessingException broken) {
            throw new AssertionError(broken);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "judge by the mean at a steady pedal, judge by the mean at a steady pedal.",
        "The lamp was lit., The lamp was lit.",
        "Which wheel?, Which wheel?"
    })
    void a_sentence_ends_with_one_stop(String text, String stopped) {
        assertThat(PlainWords.stopped(text)).isEqualTo(stopped);
    }
}
