package org.axlecause.pages;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Who may read, write, try and publish policies on their pages, and what the forms say when something is wrong. */
@QuarkusTest
@TestProfile(WithKeys.class)
class PolicyPagesTest {

    private static final String DRAFT = "/policy/named/repairs/draft";
    private final LocalDate today = LocalDate.now(ZoneId.of("Europe/London"));

    private final String tenant = "policy-" + UUID.randomUUID().toString().substring(0, 8);
    private final Browser browser = new Browser();

    @Inject
    MakeKey makeKey;

    @ParameterizedTest
    @EnumSource
    void each_role_reads_policies_and_writes_tries_and_counts_what_the_api_lets_it(Role role) {
        boolean edits = List.of(Role.POLICY, Role.ADMIN).contains(role);
        boolean counts =
                List.of(Role.POLICY, Role.ANALYST, Role.DESK, Role.ADMIN).contains(role);
        signIn(role, null);

        Document list = browser.page("/policy");

        assertThat(browser.last().statusCode()).isEqualTo(200);
        assertThat(list.select("form[action=/policy/new]").isEmpty()).isEqualTo(!edits);
        assertThat(list.select("a[href=/policy/departures]").isEmpty()).isEqualTo(!counts);
        assertThat(browser.open(DRAFT).statusCode()).isEqualTo(edits ? 200 : 403);
        assertThat(browser.open("/policy/departures").statusCode()).isEqualTo(counts ? 200 : 403);
        String token = list.selectFirst("meta[name=form-token]").attr("content");
        for (String address : List.of(
                DRAFT, "/policy/named/repairs/publication", "/policy/named/repairs/trials", "/policy/trials/x/end")) {
            int status = browser.submit(Map.of("token", token), address).statusCode();
            assertThat(status == 403)
                    .as("%s gets %d at %s", role, status, address)
                    .isEqualTo(!edits);
        }
    }

    @Test
    void what_is_wrong_stands_at_its_clause_and_what_was_typed_stays() {
        sitesOf("quay-street");
        signIn(Role.POLICY, null);
        Element form = browser.page(DRAFT).selectFirst("main form[method=post]");
        String ratio = fieldOf(form, "drag-ratio", "value");
        String imbalance = fieldOf(form, "one-wheel-low-imbalance", "value");

        Response answer = browser.submit(form, Map.of("means", "stricter", ratio, "many", imbalance, "15"));

        assertThat(answer.statusCode()).isEqualTo(422);
        Document again = Browser.read(answer);
        assertThat(again.select("details[open]")).hasSize(1);
        assertThat(again.select("details[open] [role=alert]").text())
                .contains("Not saved.", "The value is \"many\"; expected is a number");
        assertThat(again.select("#set ~ details input[name=" + quoted(ratio) + "]")
                        .val())
                .isEqualTo("many");
        assertThat(again.select("input[name=" + quoted(imbalance) + "]").val()).isEqualTo("15");
        assertThat(again.select("#set ~ details.line > summary").eachText())
                .hasSize(2)
                .anySatisfy(words -> assertThat(words).contains(" – not saved: many; holds now: "))
                .anySatisfy(words -> assertThat(words).contains(" – not saved: 15; holds now: "));
        assertThat(again.select("#means").val()).isEqualTo("stricter");
        assertThat(given().header("Authorization", "Bearer " + key(Role.POLICY, null))
                        .get("/v1/policies/repairs/draft")
                        .statusCode())
                .isEqualTo(404);
    }

    @Test
    void a_draft_says_what_each_clause_means_what_holds_above_and_where_it_comes_from() {
        sitesOf("quay-street");
        signIn(Role.POLICY, null);
        write("chain", Map.of("means", "stricter"), "drag-ratio", "value", "3");

        Document site = browser.page(DRAFT + "?layer=site%20quay-street");
        Element clause = site.selectFirst("details.line:has(input[value=drag-ratio])");

        assertThat(clause.select("summary").text())
                .contains("How many times the other wheel's force", "3, set by the chain");
        assertThat(clause.text()).contains("Source of the release's value: workshop value");
        assertThat(site.selectFirst("details.line:has(input[value=workshop-limit])")
                        .text())
                .contains(": nothing set")
                .doesNotContain("Source of the release's value");
        assertThat(site.select("nav[aria-label=Layers] [aria-current]").text()).isEqualTo("Site quay-street");
    }

    @Test
    void a_key_of_one_site_writes_the_layer_of_its_site_alone() {
        sitesOf("quay-street", "mill-bridge");
        signIn(Role.POLICY, null);
        write("chain", Map.of("means", "stricter"), "drag-ratio", "value", "3");
        signIn(Role.POLICY, List.of("quay-street"));

        Document own = browser.page(DRAFT);
        Response chain = browser.open(DRAFT + "?layer=chain");
        Response other = browser.open(DRAFT + "?layer=site%20mill-bridge");
        write("site quay-street", Map.of(), "drag-ratio", "value", "4");

        assertThat(own.select("h1").text()).isEqualTo("Draft of repairs: Site quay-street");
        assertThat(chain.statusCode()).isEqualTo(404);
        assertThat(other.statusCode()).isEqualTo(404);
        assertThat(given().header("Authorization", "Bearer " + key(Role.POLICY, null))
                        .get("/v1/policies/repairs/draft")
                        .jsonPath()
                        .getInt("document.sites.'quay-street'[0].value"))
                .isEqualTo(4);
    }

    @Test
    void what_holds_at_a_site_stands_by_the_layer_that_it_comes_from() {
        sitesOf("quay-street");
        signIn(Role.POLICY, null);
        write("chain", Map.of("means", "stricter"), "drag-ratio", "value", "3");
        publish(today.toString(), "drags were missed");

        Document holds = browser.page("/policy/named/repairs/effective?site=quay-street");

        assertThat(holds.select("section[aria-labelledby=from-chain] tbody tr").eachText())
                .containsExactly(
                        "How many times the other wheel's force with no brake applied counts as dragging 3" + " no");
        assertThat(holds.select("section[aria-labelledby=from-baseline] tbody tr"))
                .hasSizeGreaterThan(50);
    }

    @Test
    void a_day_that_is_past_is_refused_on_the_page_and_what_was_typed_stays() {
        sitesOf("quay-street");
        signIn(Role.POLICY, null);
        write("chain", Map.of("means", "stricter"), "drag-ratio", "value", "3");

        Response answer = publish("2020-01-01", "drags were missed");

        assertThat(answer.statusCode()).isEqualTo(422);
        Document again = Browser.read(answer);
        assertThat(again.select("[role=alert]").text()).contains("Not published.", "2020-01-01 can't be");
        assertThat(again.select("#from").val()).isEqualTo("2020-01-01");
        assertThat(again.select("#reason").val()).isEqualTo("drags were missed");
    }

    @Test
    void who_wrote_on_a_policy_of_two_persons_is_told_to_let_another_one_publish_it() {
        sitesOf("quay-street");
        signIn(Role.POLICY, null);
        write("chain", Map.of("means", "stricter", "twoPersons", "yes"), "drag-ratio", "value", "3");

        Response answer = publish(today.toString(), "drags were missed");

        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(Browser.read(answer).select("[role=alert]").text()).contains("The policy wants two persons");
    }

    @Test
    void a_trial_of_no_case_says_so_and_a_wrong_day_is_named() {
        sitesOf("quay-street");
        signIn(Role.POLICY, null);
        write("chain", Map.of("means", "stricter"), "drag-ratio", "value", "3");
        Element form = browser.page("/policy/named/repairs").selectFirst("form[action$=/trials]");

        Document trial = browser.follow(form, Map.of());
        Response refused = browser.submit(form, Map.of("from", "yesterday"));

        assertThat(trial.select("[role=status]").text()).isEqualTo("Done.");
        assertThat(trial.select(".empty").text()).isEqualTo("No past case is what the trial asks for.");
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(Browser.read(refused).select("#problem").text()).contains("The first day is \"yesterday\"");
    }

    @Test
    void people_and_clauses_are_called_by_their_names() {
        sitesOf("quay-street");
        signIn(makeKey.make(tenant, new KeyTerms("policy office", Role.POLICY, null, null), "test"));
        write("chain", Map.of("means", "stricter"), "drag-ratio", "value", "3");

        Document publication = browser.page("/policy/named/repairs/publication");
        Document draft = browser.page("/policy/named/repairs");
        publish(today.toString(), "drags were missed");
        Document published = browser.page("/policy/named/repairs");

        assertThat(publication.select("main").text()).contains("Written by policy office.");
        assertThat(draft.select("section[aria-labelledby=draft] p").first().text())
                .startsWith("Last written by policy office;");
        assertThat(published.select("td[data-head=\"Published by\"]").eachText())
                .containsExactly("policy office");
    }

    @Test
    void what_a_policy_is_for_stands_under_its_name_and_in_the_list() {
        sitesOf("quay-street");
        signIn(Role.POLICY, null);
        write("chain", Map.of("means", "stricter"), "drag-ratio", "value", "3");

        Document drafted = browser.page("/policy/named/repairs");
        publish(today.toString(), "drags were missed");
        Document published = browser.page("/policy/named/repairs");
        Document list = browser.page("/policy");

        assertThat(drafted.select("h1 + p").text()).isEqualTo("Stricter.");
        assertThat(published.select("h1 + p").text()).isEqualTo("Stricter.");
        assertThat(list.select(".entries span").text()).startsWith("Stricter. Version 1, in force from ");
    }

    @Test
    void departures_are_counted_by_what_the_clause_means_and_the_name_of_the_site() {
        site("quay-street", "Quay Street");
        given().header("Authorization", "Bearer " + key(Role.SENDER, null))
                .contentType("application/cloudevents-batch+json; charset=UTF-8")
                .body("""
                        [{"specversion": "1.0", "type": "org.axlecause.vehicle.presented.v1", "source": "/sites/quay-street",
                          "id": "presented", "subject": "D-1", "time": "2026-03-02T08:15:00Z",
                          "data": {"site": "quay-street", "reason": "complaint",
                                   "vehicle": {"category": "N1", "axles": [{"number": 1, "brake": "disc-floating"}]}}},
                         {"specversion": "1.0", "type": "org.axlecause.departure.recorded.v1", "source": "/sites/quay-street",
                          "id": "departure", "subject": "D-1", "time": "2026-03-02T08:20:00Z",
                          "data": {"clause": "twin-hydraulic-part", "reason": "renewed last month", "by": "Rowan Ames"}}]
                        """)
                .post("/v1/events")
                .then()
                .statusCode(200);
        signIn(Role.POLICY, null);

        assertThat(browser.page("/policy/departures").select("tbody tr").eachText())
                .containsExactly("How strongly the sound wheel cylinder opposite a failed one is offered, being of the"
                        + " same age and fluid Quay Street 1 1 0");
        assertThat(browser.page("/policy/departures?site=quay-street&from=2001-01-01&to=2001-02-01")
                        .select(".empty")
                        .text())
                .isEqualTo("No departure is on record for cases at Quay Street, presented from 1 January 2001 and"
                        + " before 1 February 2001. Choose another site or other days above.");
    }

    private void write(String layer, Map<String, String> head, String clause, String member, String value) {
        Element form =
                browser.page(DRAFT + "?layer=" + layer.replace(" ", "%20")).selectFirst("main form[method=post]");
        Map<String, String> filled = new HashMap<>(head);
        filled.put(fieldOf(form, clause, member), value);
        browser.follow(form, filled);
    }

    private Response publish(String from, String reason) {
        Element form = browser.page("/policy/named/repairs/publication").selectFirst("main form[method=post]");
        return browser.submit(form, Map.of("from", from, "reason", reason));
    }

    private static String fieldOf(Element form, String clause, String member) {
        return form.selectFirst("details.line:has(input[value=" + clause + "]) [name$=." + member + "]")
                .attr("name");
    }

    private static String quoted(String name) {
        return "\"" + name + "\"";
    }

    private void sitesOf(String... sites) {
        for (String site : sites) {
            site(site, site);
        }
    }

    private void site(String code, String name) {
        given().header("Authorization", "Bearer " + key(Role.ADMIN, null))
                .contentType("application/json")
                .body("{\"name\": \"" + name
                        + "\", \"timeZone\": \"Europe/London\", \"currency\": \"GBP\", \"regime\": \"gb-annual\"}")
                .put("/v1/sites/" + code)
                .then()
                .statusCode(200);
    }

    private String key(Role role, List<String> sites) {
        return makeKey.make(tenant, new KeyTerms(UUID.randomUUID().toString(), role, sites, null), "test");
    }

    private void signIn(Role role, List<String> sites) {
        signIn(key(role, sites));
    }

    private void signIn(String key) {
        Element form = browser.page("/sign-in").selectFirst("form[action=/sign-in]");
        browser.submit(form, Map.of("key", key, "to", "/"));
    }
}
