package org.axlecause.pages;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.axlecause.shared.Json;
import org.axlecause.statistics.Chain;
import org.jsoup.nodes.Document;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Questions about numbers as an analyst asks them on the pages, of eight cases at two sites. */
@QuarkusTest
@TestProfile(WithKeys.class)
class NumbersPagesTest {

    private static final String OVAL = "{\"code\": \"drum-oval\", \"axle\": 2, \"side\": \"right\"}";

    @Inject
    MakeKey makeKey;

    @Inject
    PlainWords plainWords;

    private final String tenant = Chain.aTenant();
    private final Browser browser = new Browser();
    private Chain chain;
    private String analyst = "";

    @BeforeEach
    void an_analyst_of_a_chain_is_signed_in() {
        chain = new Chain(key(Role.ADMIN, null));
        chain.site("quay-street", "Quay Street", "coast");
        chain.site("mill-bridge", "Mill Bridge", "hills");
        for (int day = 1; day <= 6; day++) {
            chain.aCase("QS-0" + day, "quay-street", "2026-03-0" + day + "T08:15:00Z")
                    .presented()
                    .leaking("left")
                    .closed("refused", day == 1 ? OVAL : "")
                    .send();
        }
        for (int day = 1; day <= 2; day++) {
            chain.aCase("MB-0" + day, "mill-bridge", "2026-04-0" + day + "T08:15:00Z")
                    .vehicle("Velmar", "Dunlin", "2021-05-20", 31000)
                    .presented()
                    .closed("cured", OVAL)
                    .send();
        }
        analyst = key(Role.ANALYST, null);
        signIn(analyst);
    }

    @Test
    void a_question_is_answered_in_words_with_intervals_a_chart_and_what_the_words_mean() {
        Document page = browser.page("/numbers/most?make=&from=2026-03-01&to=2026-05-01");

        assertThat(page.select("section .lead").text())
                .isEqualTo(
                        "Among the 8 cases that have ended: presented from 1 March 2026; presented before 1 May 2026.");
        assertThat(page.select("table tbody tr").eachText())
                .containsExactly("Wheel cylinder leaking 6 66.7 % 66.7 %", "Drum oval 3 33.3 % 100.0 %");
        assertThat(page.select("figure.picture figcaption").text())
                .isEqualTo("Confirmed causes by how often they come");
        assertThat(page.select("details dd").text()).contains("Open cases and entries that were taken back");
        assertThat(page.select("details dt").eachText()).contains("age in years, distance in km");
        assertThat(page.select("input[name=from]").val()).isEqualTo("2026-03-01");
    }

    @Test
    void shares_have_their_intervals_and_small_groups_are_withheld() {
        Document page = browser.page("/numbers/causes?by=site");

        assertThat(page.select("section .lead").text())
                .isEqualTo("Among all 8 cases that have ended. Asked: split by site.");
        assertThat(page.select("table tbody").eachText())
                .satisfiesExactly(
                        hills -> assertThat(hills).isEqualTo("Site: Mill Bridge Drum oval withheld of 2"),
                        coast -> assertThat(coast)
                                .startsWith(
                                        "Site: Quay Street Wheel cylinder leaking 100.0 % 61.0 % to 100.0 %, 6 of 6")
                                .doesNotContain("quay-street"));
    }

    @Test
    void a_change_that_chance_explains_is_called_none() {
        for (int day = 1; day <= 4; day++) {
            chain.aCase("AP-0" + day, "mill-bridge", "2026-04-1" + day + "T08:15:00Z")
                    .presented()
                    .closed("abandoned", "")
                    .send();
        }

        Document page = browser.page("/numbers/months");

        assertThat(page.select("table tr:contains(Drum oval) td").eachText())
                .startsWith("no change beyond chance greatest difference from Apr 2026");
        assertThat(page.select("table tr:contains(Drum oval) td").get(0).className())
                .isEmpty();
        assertThat(page.select("section p").eachText()).contains("Choose one cause to see its months and its chart.");
        assertThat(page.select("details dt").eachText()).contains("p, adjusted");
        Document alone = browser.page("/numbers/months?cause=drum-oval");
        assertThat(alone.select("section p").text()).doesNotContain("Choose one cause");
        assertThat(alone.select("table:contains(Changes of the shares) tbody th")
                        .eachText())
                .containsExactly("Drum oval");
        assertThat(alone.select("details dt").eachText()).contains("limits", "p");
    }

    @Test
    void sites_are_told_by_what_is_counted_of_them_and_none_is_judged() {
        Document page = browser.page("/numbers/sites?measure=undetermined");

        assertThat(page.select("section p").text()).contains("Over all sites, cases without a confirmed cause: ");
        assertThat(page.select("table caption").text()).isEqualTo("Sites by their cases without a confirmed cause");
        assertThat(page.select("thead th").eachText()).contains("Cases", "Where it lies");
        assertThat(browser.page("/numbers/sites?measure=confirmed-cause&cause=drum-oval")
                        .select("table caption")
                        .text())
                .isEqualTo("Sites by their cases with drum oval");
    }

    @Test
    void a_line_of_work_has_its_money_above_what_it_is_made_of_and_says_where_nothing_was_decided() {
        NumbersPage.Row line = rows(NumbersQuestion.REPAIRS, """
                        {"lines": [{"item": "brake-drum", "action": "renew", "group": {},
                                    "necessities": {"recommended": 3},
                                    "agreed": {"count": 0, "of": 0, "withheld": false},
                                    "money": [{"currency": "EUR", "lines": 1, "total": 90.25, "mean": 90.25},
                                              {"currency": "GBP", "lines": 2, "total": 812.25, "mean": 406.12}]}]}
                        """).get(0);

        assertThat(line.cells())
                .contains(
                        new NumbersPage.Cell("By necessity", "3\u00a0recommended", false, ""),
                        new NumbersPage.Cell("Agreed", "none decided", true, ""),
                        new NumbersPage.Cell(
                                "Net money",
                                "90.25\u00a0EUR; 812.25\u00a0GBP",
                                true,
                                "1\u00a0line, 90.25\u00a0EUR\u00a0each; 2\u00a0lines, 406.12\u00a0GBP\u00a0each"));
    }

    @Test
    void the_item_with_most_repairs_comes_first_and_one_that_never_came_back_has_no_interval() {
        List<NumbersPage.Row> items = rows(NumbersQuestion.RETURNS, """
                {"groups": [
                  {"group": {"item": "brake-drum"}, "repairs": 3, "returns": null, "withheld": true, "curve": null},
                  {"group": {"item": "brake-pads"}, "repairs": 6, "returns": 0, "withheld": false,
                   "curve": [{"day": 40, "withoutReturn": 1, "interval": {"low": 1, "high": 1}}]},
                  {"group": {"item": "brake-shoes"}, "repairs": 22, "returns": 2, "withheld": false,
                   "curve": [{"day": 90, "withoutReturn": 0.909, "interval": {"low": 0.683, "high": 0.976}}]}]}
                """);

        assertThat(items).extracting(item -> item.cells().get(0).text()).containsExactly("22", "6", "3");
        assertThat(items)
                .extracting(item -> item.cells().get(2).under())
                .containsExactly("68.3\u00a0%\u00a0to\u00a097.6\u00a0%", "no interval: none came back", "");
    }

    @Test
    void two_groups_are_told_with_their_cases_and_with_how_many_causes_differ() {
        TellNumbers groups = tell("""
                {"cases": 150, "open": 0, "undetermined": {"count": 15, "of": 150, "withheld": false},
                 "comparisons": [
                  {"cause": "drum-oval", "adjusted": 0.05, "first": {"of": 50}, "second": {"of": 100}},
                  {"cause": "wheel-cylinder-leaking", "adjusted": 0.051, "first": {"of": 50}, "second": {"of": 100}},
                  {"cause": "undetermined", "adjusted": 0.01,
                   "first": {"count": 5, "of": 50, "share": 0.1, "interval": {"low": 0.043, "high": 0.214},
                             "withheld": false},
                   "second": {"count": 10, "of": 100, "share": 0.1, "interval": {"low": 0.055, "high": 0.174},
                              "withheld": false}}]}
                """);

        assertThat(groups.statements(NumbersQuestion.GROUPS, "", new TellNumbers.Compared("Corvane", "Velmar")))
                .containsExactly(
                        "First group: Corvane, 50 cases. Second group: Velmar, 100 cases.",
                        "No cause was confirmed in 5 of 50 cases (10.0\u00a0%, 4.3\u00a0%\u00a0to\u00a021.4\u00a0%)"
                                + " of the first group, and in 10 of 100 cases (10.0\u00a0%,"
                                + " 5.5\u00a0%\u00a0to\u00a017.4\u00a0%) of the second.",
                        "More often in one group than chance explains: 1 of 2 causes. A difference counts where its"
                                + " adjusted p is 5\u00a0% or less.");
    }

    @Test
    void the_columns_and_scores_of_checks_are_explained() {
        assertThat(browser.page("/numbers/checks").select("details dt").eachText())
                .contains(
                        "made unasked",
                        "could be got at",
                        "asked and not made",
                        "Brier score",
                        "resolution",
                        "uncertainty",
                        "expected calibration error");
    }

    @Test
    void probabilities_miss_what_came_true_by_percentage_points() {
        TellNumbers checks = tell("""
                {"cases": 1202, "calibration": [
                  {"moment": "arrival", "confirmedButNotNamed": 7, "probabilities": 90, "brier": 0.1,
                   "reliability": 0.01, "resolution": 0.06, "uncertainty": 0.15, "expectedCalibrationError": 0.036,
                   "neverConfirmed": {"count": 133, "of": 1202, "share": 0.1106,
                                      "interval": {"low": 0.094, "high": 0.13}, "withheld": false}}]}
                """);

        assertThat(checks.statements(NumbersQuestion.CHECKS, "", new TellNumbers.Compared("", "")))
                .singleElement()
                .asString()
                .contains(
                        "in 133 of 1202 cases (11.1\u00a0%, 9.4\u00a0%\u00a0to\u00a013.0\u00a0%)"
                                + " nothing was ever confirmed",
                        "differ by 3.6 percentage points on average");
    }

    @Test
    void what_is_taken_away_is_what_the_contract_answers_to_the_same_question() {
        Document page = browser.page("/numbers/causes?by=site&side=left");
        Response csv = browser.open(page.selectFirst("a[href*=/csv]").attr("href"));
        Response json = browser.open(page.selectFirst("a[href*=/json]").attr("href"));

        String question = "/v1/statistics/causes?by=site&side=left";
        assertThat(csv.contentType()).startsWith("text/csv");
        assertThat(csv.header("Content-Disposition")).matches("attachment; filename=\"causes-[0-9-]{10}\\.csv\"");
        assertThat(withoutMoment(csv.asString()))
                .isEqualTo(withoutMoment(
                        chain.as(analyst).accept("text/csv").get(question).asString()));
        assertThat(withoutMoment(json.asString()))
                .isEqualTo(withoutMoment(chain.as(analyst).get(question).asString()));
        assertThat(page.select("a[href*=/svg]")).isEmpty();

        Document drawn = browser.page("/numbers/months?cause=drum-oval");
        Response svg = browser.open(drawn.selectFirst("a[href*=/svg]").attr("href"));
        assertThat(svg.contentType()).startsWith("image/svg+xml");
        assertThat(svg.asString()).contains("Drum oval by month");
    }

    @Test
    void an_address_that_is_passed_on_asks_the_same_question() {
        String address = "/numbers/groups?compare=region&region=coast&cause=drum-oval";
        String first = browser.page(address).select("section table").text();
        Browser other = new Browser();
        other.submit(
                other.page("/sign-in").selectFirst("form[action=/sign-in]"), Map.of("key", key(Role.ANALYST, null)));

        assertThat(other.page(address).select("section table").text())
                .isEqualTo(first)
                .contains("Drum oval");
    }

    @Test
    void two_groups_are_chosen_step_by_step() {
        Document first = browser.page("/numbers/groups");
        Document second = browser.page("/numbers/groups?compare=make");
        Document third = browser.page("/numbers/groups?compare=make&make=Corvane&make=Velmar");

        assertThat(first.select("section")).isEmpty();
        assertThat(first.select("[role=status]").text()).contains("what the groups differ in");
        assertThat(second.select("#problem").text()).contains("a member with two values to compare");
        assertThat(second.select("input[name=make]")).hasSize(2);
        assertThat(third.select("section .lead").text())
                .isEqualTo("Among all cases that have ended; make Corvane against Velmar.");
        assertThat(third.select("section table").text()).contains("Corvane", "Velmar", "Drum oval");
        assertThat(third.select("section thead th").eachText()).endsWith("p", "p, adjusted", "Test");
        assertThat(third.select("details dt").eachText()).contains("difference", "p", "p, adjusted");
    }

    @Test
    void a_period_is_compared_with_an_earlier_one() {
        Document page = browser.page("/numbers/groups?compare=period&from=2026-03-04&to=2026-03-07");

        assertThat(page.select("section .lead").text())
                .isEqualTo(
                        "Among the cases that have ended: presented from 4 March 2026; presented before 7 March 2026;"
                                + " this period against an earlier one.");
        assertThat(page.select("section p").text()).contains("presented from 1 March 2026 and before 4 March 2026");
        assertThat(page.select("input[name=earlierFrom], input[name=earlierTo]"))
                .hasSize(2);
        assertThat(page.select("section table").text()).contains("Wheel cylinder leaking withheld of 3");
    }

    @Test
    void a_wrong_word_is_told_with_the_nearest_valid_ones_and_stays_in_the_form() {
        Document page = browser.page("/numbers/causes?make=Vlemar&cause=drum-ovale");

        assertThat(browser.last().statusCode()).isEqualTo(422);
        assertThat(page.select("#problem li").eachText())
                .anySatisfy(text -> assertThat(text).contains("Vlemar", "Velmar"))
                .anySatisfy(text -> assertThat(text).contains("drum-ovale", "drum-oval"));
        assertThat(page.select("input[name=make]").val()).isEqualTo("Vlemar");
        assertThat(page.select("select[name=cause] option[selected]").val()).isEqualTo("drum-ovale");
        assertThat(page.select("section")).isEmpty();
    }

    @Test
    void what_is_wrong_with_a_field_is_said_in_the_words_of_the_form() {
        assertThat(browser.page("/numbers/most?from=yesterday")
                        .select("#problem li")
                        .text())
                .isEqualTo("“Presented from” is “yesterday”; expected is a day such as 2026\u201103\u201102."
                        + " Correct it or leave it out.");
    }

    @Test
    void nothing_is_said_of_no_cases_and_others_may_not_ask() {
        assertThat(browser.page("/numbers/causes?from=2030-01-01")
                        .select("[role=status]")
                        .text())
                .contains("Nothing that has ended fits this question");

        signIn(key(Role.DESK, null));
        Document refused = browser.page("/numbers/most");
        assertThat(browser.last().statusCode()).isEqualTo(403);
        assertThat(refused.select("#problem h1").text()).isEqualTo("This key may not do that");
        assertThat(browser.page("/numbers/most/csv").select("#problem")).isNotEmpty();
    }

    @Test
    void a_key_of_one_site_and_another_tenant_see_only_their_own() {
        signIn(key(Role.ANALYST, List.of("mill-bridge")));
        assertThat(browser.page("/numbers/causes").select("section p").text())
                .contains("Among all 2 cases that have ended");
        assertThat(browser.page("/numbers/causes")
                        .select("select[name=site] option")
                        .eachText())
                .containsExactly("all", "Mill Bridge");

        signIn(makeKey.make(Chain.aTenant(), new KeyTerms("stranger", Role.ANALYST, null, null), "test"));
        assertThat(browser.page("/numbers/causes").select("section p").text())
                .contains("Nothing that has ended fits this question");
    }

    @Test
    void an_answer_that_was_kept_tells_the_next_case_too() {
        browser.page("/numbers/causes");
        assertThat(browser.page("/numbers/causes").select("section .lead").text())
                .contains("all 8 cases");

        chain.aCase("QS-09", "quay-street", "2026-03-09T08:15:00Z")
                .presented()
                .closed("refused", OVAL)
                .send();

        assertThat(browser.page("/numbers/causes").select("section .lead").text())
                .contains("all 9 cases");
    }

    @Test
    void an_answer_that_was_kept_is_told_to_nobody_of_another_tenant() {
        List<String> sides = List.of("left", "right");
        List<String> analysts = sides.stream().map(this::anAnalystOfOneCase).toList();

        for (int round = 1; round <= 2; round++) {
            for (String side : sides) {
                signIn(analysts.get(sides.indexOf(side)));
                assertThat(browser.page("/numbers/causes?side=" + side + "&by=month")
                                .select("section")
                                .text())
                        .contains("Wheel cylinder leaking");
                assertThat(browser.page("/numbers/causes?side=" + sides.get(1 - sides.indexOf(side)) + "&by=month")
                                .select("section")
                                .text())
                        .doesNotContain("Wheel cylinder leaking");
            }
        }
    }

    @Test
    void what_is_not_there_is_said_on_a_page() {
        assertThat(browser.page("/numbers/why").select("#problem").text()).contains("There is no question 'why'");
        assertThat(browser.page("/numbers/most/pdf").select("#problem").text()).contains("csv, json or svg");
        assertThat(browser.page("/numbers/repairs/svg").select("#problem").text())
                .contains("no chart");
    }

    @ParameterizedTest
    @EnumSource
    void every_question_has_its_page(NumbersQuestion question) {
        Document page = browser.page("/numbers/" + question);

        assertThat(browser.last().statusCode()).as(page.text()).isEqualTo(200);
        assertThat(page.select("h1").text()).isEqualTo(question.words());
        assertThat(page.select("form.asking legend").eachText()).contains("Among which vehicles", "When", "Where");
    }

    private List<NumbersPage.Row> rows(NumbersQuestion question, String answer) {
        return tell(answer)
                .tables(question, "", new TellNumbers.Compared("", ""))
                .get(0)
                .groups()
                .get(0)
                .rows();
    }

    private TellNumbers tell(String answer) {
        return new TellNumbers(Json.read(answer), new NumbersWords(Map.of()), plainWords, (name, value) -> value);
    }

    private static String withoutMoment(String answer) {
        return answer.replaceAll("20\\d\\d-\\d\\d-\\d\\dT[0-9:.]+Z", "moment");
    }

    /** The key of an analyst whose tenant has one case, leaking on this side. */
    private String anAnalystOfOneCase(String side) {
        String other = Chain.aTenant();
        Chain alone = new Chain(makeKey.make(other, new KeyTerms("admin", Role.ADMIN, null, null), "test"));
        alone.site("quay-street", "Quay Street", "coast");
        alone.aCase("QS-01", "quay-street", "2026-03-01T08:15:00Z")
                .presented()
                .leaking(side)
                .closed("refused", "")
                .send();
        return makeKey.make(other, new KeyTerms("analyst", Role.ANALYST, null, null), "test");
    }

    private void signIn(String key) {
        browser.submit(browser.page("/sign-in").selectFirst("form[action=/sign-in]"), Map.of("key", key));
    }

    private String key(Role role, @Nullable List<String> sites) {
        return makeKey.make(tenant, new KeyTerms(UUID.randomUUID().toString(), role, sites, null), "test");
    }
}
