package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Questions over a small chain whose answers are counted by hand: eight cases at two sites. */
@QuarkusTest
@TestProfile(WithKeys.class)
class StatisticsApiTest {

    private static final String OVAL = "{\"code\": \"drum-oval\", \"axle\": 2, \"side\": \"right\"}";

    @Inject
    MakeKey makeKey;

    @Inject
    FoldDeltas foldDeltas;

    @Inject
    RenewKept renewKept;

    private final String tenant = Chain.aTenant();
    private Chain chain;
    private String analyst = "";

    @BeforeEach
    void a_chain_with_eight_cases() {
        chain = new Chain(key(Role.ADMIN, null));
        analyst = key(Role.ANALYST, null);
        chain.site("quay-street", "coast");
        chain.site("mill-bridge", "hills");
        for (int day = 1; day <= 3; day++) {
            chain.aCase("QS-0" + day, "quay-street", "2026-03-0" + day + "T08:15:00Z")
                    .presented()
                    .leaking("left")
                    .closed("refused", "")
                    .send();
        }
        chain.aCase("QS-04", "quay-street", "2026-04-04T08:15:00Z")
                .presented()
                .leaking("left")
                .leaking("right")
                .closed("refused", OVAL)
                .send();
        chain.aCase("QS-05", "quay-street", "2026-04-05T08:15:00Z")
                .presented()
                .closed("abandoned", "")
                .send();
        foldDeltas.fold();
        chain.aCase("MB-01", "mill-bridge", "2026-04-06T08:15:00Z")
                .vehicle("Velmar", "Dunlin", "2021-05-20", 31000)
                .presented()
                .closed("cured", OVAL)
                .send();
        chain.aCase("MB-02", "mill-bridge", "2026-04-06T23:30:00Z")
                .vehicle("Velmar", "Dunlin", "2021-05-20", 31000)
                .presented()
                .closed("abandoned", "")
                .send();
        chain.aCase("MB-03", "mill-bridge", "2026-04-07T08:15:00Z")
                .presented()
                .leaking("left")
                .send();
    }

    @Test
    void causes_are_told_with_the_cases_behind_them_and_an_open_case_counts_for_nothing() {
        JsonPath answer = ask("/v1/statistics/causes").jsonPath();

        assertThat(answer.getInt("cases")).isEqualTo(7);
        assertThat(answer.getInt("open")).isEqualTo(1);
        assertThat(answer.getList("shares.cause"))
                .isEqualTo(List.of("wheel-cylinder-leaking", "drum-oval", "undetermined"));
        assertThat(answer.getList("shares.cases.count")).isEqualTo(List.of(4, 2, 2));
        assertThat(answer.getInt("undetermined.count")).isEqualTo(2);
        assertThat(answer.getDouble("shares[0].cases.share")).isCloseTo(0.571428571429, within(1e-6));
        assertThat(answer.getDouble("shares[0].cases.interval.low")).isBetween(0.25, 0.2505);
        assertThat(answer.getString("definitions.find { it.word == 'cause' }.means"))
                .contains("technician confirmed it");
    }

    @Test
    void bands_are_told_from_the_lowest() {
        assertThat(ask("/v1/statistics/causes?by=odometerBand")
                        .jsonPath()
                        .getList("shares.group.odometerBand", String.class)
                        .stream()
                        .distinct())
                .containsExactly("under-50000", "100000-to-149999");
    }

    @Test
    void what_waits_to_be_folded_is_counted_and_folding_changes_no_answer() {
        Map<String, String> before = told();

        foldDeltas.fold();

        assertThat(told()).isEqualTo(before);
        assertThat(before.get("sites?make=Velmar&make=Corvane&measure=undetermined"))
                .contains("site=quay-street, cases=5,");
    }

    @Test
    void what_ends_after_an_answer_is_in_the_next_one_and_what_is_withdrawn_is_not() {
        foldDeltas.fold();
        assertThat(casesBySite()).isEqualTo(Map.of("mill-bridge", 2, "quay-street", 5));
        assertThat(casesBySite()).as("kept").isEqualTo(Map.of("mill-bridge", 2, "quay-street", 5));

        Chain.OneCase last = chain.aCase("MB-04", "mill-bridge", "2026-04-08T08:15:00Z")
                .presented()
                .closed("refused", OVAL);
        last.send();
        assertThat(casesBySite()).isEqualTo(Map.of("mill-bridge", 3, "quay-street", 5));
        foldDeltas.fold();
        assertThat(casesBySite()).as("folded").isEqualTo(Map.of("mill-bridge", 3, "quay-street", 5));

        last.withdraw(last.idOf("case.closed")).send();
        assertThat(casesBySite()).isEqualTo(Map.of("mill-bridge", 2, "quay-street", 5));
        foldDeltas.fold();
        renewKept.renew();
        assertThat(renewKept.renew()).isZero();
        assertThat(casesBySite()).as("folded").isEqualTo(Map.of("mill-bridge", 2, "quay-street", 5));
    }

    private Map<String, Integer> casesBySite() {
        JsonPath answer = ask("/v1/statistics/causes?by=site&cause=drum-oval").jsonPath();
        Map<String, Integer> cases = new TreeMap<>();
        List<String> sites = answer.getList("shares.group.site");
        for (int index = 0; index < sites.size(); index++) {
            cases.put(sites.get(index), answer.getInt("shares[" + index + "].cases.of"));
        }
        return cases;
    }

    private Map<String, String> told() {
        Map<String, String> told = new TreeMap<>();
        told.put(
                "causes?by=month",
                ask("/v1/statistics/causes?by=month")
                        .jsonPath()
                        .getList("shares")
                        .toString());
        for (String question : List.of(
                "sites?measure=undetermined",
                "sites?make=Velmar&make=Corvane&measure=undetermined",
                "sites?category=N1&regime=gb-annual&measure=undetermined",
                "sites?model=Dunlin&measure=undetermined",
                "sites?make=Velmar&from=2026-03-02&to=2026-04-05&measure=undetermined")) {
            told.put(
                    question,
                    ask("/v1/statistics/" + question)
                            .jsonPath()
                            .getList("sites")
                            .toString());
        }
        return told;
    }

    @Test
    void a_case_with_the_cause_on_both_sides_is_one_case_and_each_side_counts_for_itself() {
        assertThat(counts("/v1/statistics/causes?cause=wheel-cylinder-leaking&side=right"))
                .containsExactly(2, 1);
        assertThat(counts("/v1/statistics/causes?cause=wheel-cylinder-leaking&by=side"))
                .contains(4, 1);
        assertThat(counts("/v1/statistics/causes?cause=wheel-cylinder-leaking&axle=2"))
                .containsExactly(4, 2);
        assertThat(counts("/v1/statistics/causes?cause=wheel-cylinder-leaking&axle=1"))
                .containsExactly(2);
    }

    @Test
    void every_choice_of_cases_gives_what_the_cases_say_folded_or_not() {
        for (int round = 0; round < 2; round++) {
            assertThat(cases("site=mill-bridge")).isEqualTo(2);
            assertThat(cases("region=coast")).isEqualTo(5);
            assertThat(cases("make=Velmar&model=Dunlin")).isEqualTo(2);
            assertThat(cases("make=Velmar&site=mill-bridge&site=quay-street")).isEqualTo(2);
            assertThat(cases("layout=drum-simplex")).isEqualTo(7);
            assertThat(cases("layout=disc-floating%2Bdrum-simplex&category=N1")).isEqualTo(7);
            assertThat(cases("ageBand=8-to-11")).isEqualTo(5);
            assertThat(cases("ageBand=4-to-7&odometerBand=under-50000")).isEqualTo(2);
            assertThat(cases("season=march-to-may&regime=gb-annual")).isEqualTo(7);
            assertThat(cases("season=june-to-august")).isZero();
            assertThat(cases("from=2026-04-01&to=2026-05-01")).isEqualTo(4);
            assertThat(cases("from=2026-03-02")).isEqualTo(6);
            assertThat(cases("from=2026-03-02&to=2026-04-05")).isEqualTo(3);
            foldDeltas.fold();
        }
    }

    @Test
    void whole_years_and_the_months_and_days_beside_them_add_up_folded_or_not() {
        for (String day : List.of("2024-11-20", "2025-01-01", "2025-12-31")) {
            chain.aCase("QS-" + day, "quay-street", day + "T08:15:00Z")
                    .presented()
                    .closed("abandoned", "")
                    .send();
        }
        for (int round = 0; round < 2; round++) {
            assertThat(cases("site=quay-street")).isEqualTo(8);
            assertThat(cases("from=2025-01-01&to=2026-01-01")).isEqualTo(2);
            assertThat(cases("from=2025-01-02&to=2025-12-31")).isZero();
            assertThat(cases("from=2024-11-20&to=2026-03-02")).isEqualTo(4);
            assertThat(cases("from=2024-11-21&to=2026-03-01")).isEqualTo(2);
            assertThat(cases("from=2025-01-01")).isEqualTo(9);
            assertThat(cases("to=2026-01-01")).isEqualTo(3);
            assertThat(cases("to=2025-12-31&make=Corvane")).isEqualTo(2);
            assertThat(cases("season=december-to-february")).isEqualTo(2);
            assertThat(cases("site=quay-street&to=2026-04-05")).isEqualTo(7);
            foldDeltas.fold();
        }
    }

    @Test
    void open_cases_are_told_by_site_day_and_vehicle_and_a_new_one_changes_the_tag() {
        assertThat(ask("/v1/statistics/sites").jsonPath().getInt("open")).isEqualTo(1);
        assertThat(ask("/v1/statistics/causes?site=quay-street").jsonPath().getInt("open"))
                .isZero();
        assertThat(ask("/v1/statistics/repairs?make=Corvane&season=march-to-may")
                        .jsonPath()
                        .getInt("open"))
                .isEqualTo(1);
        assertThat(ask("/v1/statistics/returns?to=2026-04-07").jsonPath().getInt("open"))
                .isZero();
        assertThat(ask("/v1/statistics/checks?season=june-to-august").jsonPath().getInt("open"))
                .isZero();
        String tag = ask("/v1/statistics/causes").header("ETag");

        chain.aCase("QS-09", "quay-street", "2026-04-09T08:15:00Z").presented().send();

        Response after = chain.as(analyst).header("If-None-Match", tag).get("/v1/statistics/causes");
        assertThat(after.statusCode()).isEqualTo(200);
        assertThat(after.jsonPath().getInt("open")).isEqualTo(2);
        assertThat(after.jsonPath().getInt("cases")).isEqualTo(7);
    }

    @Test
    void a_day_is_the_day_at_the_site() {
        assertThat(cases("from=2026-04-07&to=2026-04-08")).isEqualTo(1);
        assertThat(cases("from=2026-04-06&to=2026-04-07")).isEqualTo(1);
    }

    @Test
    void small_groups_are_withheld_with_their_size_told() {
        JsonPath answer = ask("/v1/statistics/causes?by=site").jsonPath();

        assertThat(answer.getList("shares.findAll { it.group.site == 'mill-bridge' }.cases.withheld"))
                .isEqualTo(List.of(true, true));
        assertThat(answer.getList("shares.findAll { it.group.site == 'mill-bridge' }.cases.of"))
                .isEqualTo(List.of(2, 2));
        assertThat(answer.getList("shares.findAll { it.group.site == 'mill-bridge' }.cases.share"))
                .isEqualTo(Arrays.asList(null, null));
        assertThat(answer.getList("shares.findAll { it.group.site == 'quay-street' }.cases.withheld"))
                .isEqualTo(List.of(false, false, false));
    }

    @Test
    void another_tenant_sees_nothing_and_a_key_of_one_site_its_site_alone() {
        String stranger = makeKey.make(Chain.aTenant(), new KeyTerms("stranger", Role.ANALYST, null, null), "test");
        String ofOne = key(Role.ANALYST, List.of("quay-street"));

        assertThat(chain.as(stranger).get("/v1/statistics/causes").jsonPath().getInt("cases"))
                .isZero();
        assertThat(chain.as(ofOne).get("/v1/statistics/causes").jsonPath().getInt("cases"))
                .isEqualTo(5);
        Response refused = chain.as(ofOne).get("/v1/statistics/causes?site=mill-bridge");
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.asString()).doesNotContain("such as mill-bridge");
        assertThat(chain.as(key(Role.SENDER, null)).get("/v1/statistics/causes").statusCode())
                .isEqualTo(403);
    }

    @Test
    void wrong_words_are_refused_with_the_nearest_valid_ones() {
        Response refused =
                chain.as(analyst).get("/v1/statistics/causes?make=Vlemar&cause=drum-ovale&by=sight&mkae=x&from=spring");

        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.jsonPath().getList("causes.pointer", String.class))
                .containsExactlyInAnyOrder("/make", "/cause", "/by", "/mkae", "/from");
        assertThat(refused.jsonPath().getString("causes.find { it.pointer == '/make' }.text"))
                .contains("Velmar");
        assertThat(refused.jsonPath().getString("causes.find { it.pointer == '/cause' }.text"))
                .contains("drum-oval");
        assertThat(refused.jsonPath().getString("causes.find { it.pointer == '/mkae' }.text"))
                .contains("make");
    }

    @Test
    void an_answer_has_a_tag_until_the_data_change_and_folding_is_no_change() {
        String tag = ask("/v1/statistics/causes").header("ETag");
        foldDeltas.fold();
        assertThat(chain.as(analyst)
                        .header("If-None-Match", tag)
                        .get("/v1/statistics/causes")
                        .statusCode())
                .isEqualTo(304);

        chain.aCase("MB-03", "mill-bridge", "2026-04-08T08:15:00Z")
                .closed("refused", "")
                .send();

        assertThat(chain.as(analyst)
                        .header("If-None-Match", tag)
                        .get("/v1/statistics/causes")
                        .statusCode())
                .isEqualTo(200);
    }

    @Test
    void pages_follow_each_other_without_gap_or_repeat() {
        Response first = ask("/v1/statistics/causes?limit=2");
        String next = first.header("Link").replaceFirst("^<https?://[^/]+", "").replaceFirst(">.*", "");
        Response second = ask(next);

        assertThat(first.jsonPath().getList("shares.cause")).isEqualTo(List.of("wheel-cylinder-leaking", "drum-oval"));
        assertThat(second.jsonPath().getList("shares.cause")).isEqualTo(List.of("undetermined"));
        assertThat(second.header("Link")).isNull();
    }

    @Test
    void the_other_parts_tell_trend_comparison_pareto_and_what_comes_together() {
        JsonPath pareto = ask("/v1/statistics/causes?part=pareto").jsonPath();
        assertThat(pareto.getList("pareto.cause")).isEqualTo(List.of("wheel-cylinder-leaking", "drum-oval"));
        assertThat(pareto.getDouble("pareto[1].cumulative")).isEqualTo(1);

        JsonPath pairs = ask("/v1/statistics/causes?part=co-occurrence").jsonPath();
        assertThat(pairs.getList("pairs.cases.count")).isEqualTo(List.of(1));
        assertThat(pairs.getDouble("pairs[0].expected")).isCloseTo(1.14285714286, within(1e-6));

        JsonPath compared = ask("/v1/statistics/causes?part=comparison&compare=region&region=coast")
                .jsonPath();
        assertThat(compared.getList("comparisons.second.withheld", Boolean.class))
                .containsOnly(true);

        JsonPath trend = ask("/v1/statistics/causes?part=trend&cause=wheel-cylinder-leaking")
                .jsonPath();
        assertThat(trend.getList("trends.cause")).isEqualTo(List.of("undetermined", "wheel-cylinder-leaking"));
    }

    @Test
    void a_period_is_compared_with_an_earlier_one() {
        five("february", "quay-street", OVAL);

        JsonPath answer = ask("/v1/statistics/causes?part=comparison&compare=period&site=quay-street&cause=drum-oval"
                        + "&from=2026-03-01&to=2026-05-01")
                .jsonPath();
        JsonPath given = ask("/v1/statistics/causes?part=comparison&compare=period&site=quay-street&cause=drum-oval"
                        + "&from=2026-03-01&to=2026-05-01&earlierFrom=2026-02-03&earlierTo=2026-03-01")
                .jsonPath();

        assertThat(answer.getString("earlierFrom")).isEqualTo("2025-12-30");
        assertThat(answer.getString("earlierTo")).isEqualTo("2026-03-01");
        assertThat(answer.getList("comparisons.findAll { it.cause == 'drum-oval' }.first.count"))
                .isEqualTo(List.of(1));
        assertThat(answer.getList("comparisons.findAll { it.cause == 'drum-oval' }.second.count"))
                .isEqualTo(List.of(5));
        assertThat(answer.getDouble("comparisons.find { it.cause == 'drum-oval' }.difference"))
                .isCloseTo(-0.8, within(1e-6));
        assertThat(given.getList("comparisons.second.of", Integer.class)).containsOnly(3);
    }

    @Test
    void periods_that_overlap_or_lack_an_end_are_refused() {
        String question = "/v1/statistics/causes?part=comparison&compare=period";

        assertThat(refused(question).getString("causes[0].text")).contains("with `from` and `to`");
        assertThat(refused(question + "&from=2026-03-01&to=2026-05-01&earlierFrom=2026-02-01&earlierTo=2026-03-02")
                        .getString("causes[0].pointer"))
                .isEqualTo("/earlierTo");
        assertThat(refused("/v1/statistics/causes?earlierFrom=2026-02-01").getString("causes[0].pointer"))
                .isEqualTo("/compare");
    }

    @Test
    void sites_are_compared_by_a_cause_against_what_their_vehicles_lead_to_expect() {
        five("february", "quay-street", OVAL);
        five("winter", "mill-bridge", "");

        JsonPath answer = ask("/v1/statistics/sites?measure=confirmed-cause&cause=drum-oval")
                .jsonPath();

        assertThat(answer.getList("sites.site")).isEqualTo(List.of("mill-bridge", "quay-street"));
        assertThat(answer.getList("sites.cases")).isEqualTo(List.of(7, 10));
        assertThat(answer.getList("sites.observed")).isEqualTo(List.of(1, 6));
        assertThat(answer.getDouble("sites[0].expected")).isCloseTo(3, within(1e-6));
        assertThat(answer.getDouble("sites[1].expected")).isCloseTo(4, within(1e-6));
        assertThat(answer.getInt("all.count")).isEqualTo(7);
        assertThat(refused("/v1/statistics/sites?measure=confirmed-cause").getString("causes[0].pointer"))
                .isEqualTo("/cause");
        assertThat(refused("/v1/statistics/sites?cause=drum-oval").getString("causes[0].pointer"))
                .isEqualTo("/cause");
    }

    /** Five cases in February with the usual vehicle. */
    private void five(String name, String site, String confirmed) {
        for (int day = 1; day <= 5; day++) {
            chain.aCase(name + "-" + day, site, "2026-02-0" + day + "T08:15:00Z")
                    .presented()
                    .closed("refused", confirmed)
                    .send();
        }
    }

    private JsonPath refused(String question) {
        Response answer = chain.as(analyst).get(question);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(422);
        return answer.jsonPath();
    }

    @Test
    void an_answer_comes_as_csv_too_with_its_moment_in_each_row() {
        Response csv = chain.as(analyst).accept("text/csv").get("/v1/statistics/causes?by=category");

        assertThat(csv.contentType()).startsWith("text/csv");
        List<String> lines = csv.asString().lines().toList();
        assertThat(lines.get(0))
                .isEqualTo("\"asOf\",\"group.category\",\"cause\",\"cases.count\",\"cases.of\",\"cases.share\","
                        + "\"cases.interval.low\",\"cases.interval.high\",\"cases.withheld\"");
        assertThat(lines).hasSize(4);
        assertThat(lines.get(1)).contains("\"N1\",\"wheel-cylinder-leaking\",4,7,0.571428571429,");
        assertThat(chain.as(analyst)
                        .accept("image/png")
                        .get("/v1/statistics/causes")
                        .statusCode())
                .isEqualTo(406);
    }

    @Test
    void an_answer_that_can_be_drawn_comes_as_a_chart_by_accept() {
        String pareto = drawn("/v1/statistics/causes?part=pareto");
        String trend = drawn("/v1/statistics/causes?part=trend&cause=wheel-cylinder-leaking");
        String sites = drawn("/v1/statistics/sites?measure=undetermined");

        assertThat(pareto)
                .contains("6 confirmed causes. wheel cylinder leaking 4, 66.7 %, together 66.7 %; drum oval 2")
                .contains("Confirmed causes by how often they come, as of ");
        assertThat(trend).contains("Wheel cylinder leaking by month, as of ");
        assertThat(sites).contains("1 sites").doesNotContain("mill-bridge");
    }

    @Test
    void a_chart_says_so_where_too_few_cases_stand_behind_it_and_shows_no_withheld_number() {
        String few = drawn("/v1/statistics/causes?part=pareto&site=mill-bridge");

        assertThat(few).contains("Nothing to draw").doesNotContain("drum oval");
        assertThat(drawn("/v1/statistics/returns")).contains("Nothing to draw");
        assertThat(drawn("/v1/statistics/checks?moment=arrival&site=mill-bridge"))
                .contains("Nothing to draw");
    }

    @Test
    void what_has_no_chart_or_several_is_refused_as_a_chart() {
        assertThat(refusedAsChart("/v1/statistics/causes").getString("causes[0].pointer"))
                .isEqualTo("/part");
        assertThat(refusedAsChart("/v1/statistics/causes?part=trend").getString("causes[0].text"))
                .contains("one `cause`");
        assertThat(refusedAsChart("/v1/statistics/checks").getString("causes[0].text"))
                .contains("arrival or before-opening");
        assertThat(chain.as(analyst)
                        .accept("image/svg+xml")
                        .get("/v1/statistics/repairs")
                        .statusCode())
                .isEqualTo(406);
    }

    private String drawn(String question) {
        Response answer = chain.as(analyst).accept("image/svg+xml").get(question);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        assertThat(answer.contentType()).startsWith("image/svg+xml");
        assertThat(answer.asString()).startsWith("<svg ").contains("xmlns=\"http://www.w3.org/2000/svg\"");
        return answer.asString();
    }

    private JsonPath refusedAsChart(String question) {
        Response answer = chain.as(analyst)
                .accept("image/svg+xml, application/problem+json")
                .get(question);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(422);
        return answer.jsonPath();
    }

    private List<Integer> counts(String question) {
        return ask(question).jsonPath().getList("shares.cases.count");
    }

    private int cases(String choice) {
        return ask("/v1/statistics/causes?" + choice).jsonPath().getInt("cases");
    }

    private Response ask(String question) {
        Response answer = chain.as(analyst).urlEncodingEnabled(false).get(question);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        return answer;
    }

    private String key(Role role, @Nullable List<String> sites) {
        return makeKey.make(tenant, new KeyTerms(UUID.randomUUID().toString(), role, sites, null), "test");
    }
}
