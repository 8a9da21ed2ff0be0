package org.axlecause.pages;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import java.io.IOException;
import java.lang.reflect.Method;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.shared.ForStrangers;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.select.Elements;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The pages as a browser without scripts reads and sends them. */
@QuarkusTest
class CasePagesTest {

    private static final java.nio.file.Path SCENARIOS = java.nio.file.Path.of("src", "test", "resources", "scenarios");
    private static final String FOUND = "oiled-lining-and-seized-cable-found";
    private static final String OVAL = "oval-drum-reads-as-imbalance";
    private static final List<Class<?>> PAGES = List.of(
            StartResource.class,
            SignInResource.class,
            BayResource.class,
            DeskResource.class,
            PolicyResource.class,
            NumbersResource.class,
            RulebookResource.class,
            SheetResource.class);

    private final String site = "pier-" + UUID.randomUUID().toString().substring(0, 8);
    private final String reference = "PG-" + UUID.randomUUID().toString().substring(0, 13);
    private final Browser browser = new Browser();

    @Inject
    TenantTransaction transaction;

    @Inject
    SiteStore sites;

    @BeforeEach
    void the_site_exists() {
        transaction.run(
                "demo",
                () -> sites.save(new Site(site, "Pier Road", null, ZoneId.of("Europe/London"), "GBP", "gb-annual", 1)));
    }

    static Stream<Method> everyFormTarget() {
        return PAGES.stream()
                .flatMap(type -> Stream.of(type.getDeclaredMethods()))
                .filter(method -> method.isAnnotationPresent(POST.class));
    }

    @ParameterizedTest
    @MethodSource("everyFormTarget")
    void a_form_without_its_token_is_refused_everywhere(Method target) {
        String address = (target.getDeclaringClass().getAnnotation(Path.class).value() + "/"
                        + target.getAnnotation(Path.class).value())
                .replaceAll("/+", "/")
                .replaceAll("\\{[a-z]+}", reference);

        browser.open("/bay/new");
        Response without = browser.submit(Map.of("site", site), address);
        Response wrong = browser.submit(Map.of("token", "0".repeat(64)), address);

        assertThat(without.statusCode()).as(address).isEqualTo(403);
        assertThat(wrong.statusCode()).as(address).isEqualTo(403);
        assertThat(Browser.read(wrong).select("#problem").text()).contains("This form belongs to another session");
    }

    @Test
    void a_form_from_another_site_is_refused_even_with_a_good_token() {
        Element form = browser.page("/bay/new").selectFirst("form[action=/bay/new]");
        Map<String, String> fields = Browser.fields(form, Map.of());

        for (Map<String, String> header : List.of(
                Map.of("Sec-Fetch-Site", "cross-site"),
                Map.of("Sec-Fetch-Site", "same-site"),
                Map.of("Origin", "https://elsewhere.example"))) {
            Response answer = given().headers(header)
                    .header("Accept", Browser.HTML)
                    .cookies(browser.last().cookies())
                    .formParams(fields)
                    .post("/bay/new");

            assertThat(answer.statusCode()).as(header.toString()).isEqualTo(403);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/",
                "/bay",
                "/bay/new",
                "/desk",
                "/policy",
                "/policy/departures",
                "/rulebook",
                "/rulebook/causes",
                "/numbers",
                "/numbers/most",
                "/numbers/groups",
                "/numbers/months?make=none",
                "/nowhere",
                "/bay/NONE-1"
            })
    void every_page_runs_nothing_inline_and_loads_nothing_from_elsewhere(String address) {
        Document page = browser.page(address);
        Response answer = browser.last();

        assertThat(answer.contentType()).isEqualTo("text/html;charset=UTF-8");
        assertThat(answer.header("Content-Security-Policy"))
                .contains("default-src 'none'", "script-src 'self'", "style-src 'self'", "frame-ancestors 'none'")
                .doesNotContain("unsafe");
        assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(answer.header("Referrer-Policy")).isEqualTo("same-origin");
        assertThat(answer.header("Cache-Control")).isEqualTo("private, no-store");
        assertThat(page.select("style, [style], script:not([src]), [onclick], [onload], iframe"))
                .isEmpty();
        assertThat(page.select("[src], link[href]").eachAttr("src").stream().filter(source -> !source.isEmpty()))
                .allMatch(source -> source.startsWith("/look/"));
        assertThat(page.select("html").attr("lang")).isEqualTo("en");
        assertThat(page.select("main#content, header, footer, nav[aria-label]")).hasSizeGreaterThanOrEqualTo(4);
        assertThat(page.select("a.skip").attr("href")).isEqualTo("#content");
        assertThat(page.select("h1")).hasSize(1);
        assertThat(answer.asByteArray().length).isLessThan(300_000);
        assertThat(given().get(page.select("link[rel=stylesheet]").attr("href")).statusCode())
                .isEqualTo(200);
        assertThat(given().get(page.select("script").attr("src")).header("X-Content-Type-Options"))
                .isEqualTo("nosniff");
    }

    static Stream<String> scenarios() throws IOException {
        try (Stream<java.nio.file.Path> folders = Files.list(SCENARIOS)) {
            return folders.map(folder -> folder.getFileName().toString()).sorted().toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void a_case_has_its_pages_in_each_of_its_states(String scenario) throws IOException {
        List<String> broken = new ArrayList<>();

        for (ArrayNode entries : byType(events(scenario))) {
            post(entries);
            for (String page : List.of(
                    "/bay/%s",
                    "/desk/%s",
                    "/rulebook/case/%s",
                    "/bay/%s/obstacle",
                    "/sheets/%s/customer",
                    "/sheets/%s/workshop")) {
                String address = page.formatted(reference);
                int status = browser.open(address).statusCode();
                if (status != 200) {
                    broken.add(status + " at " + address + " after " + entries);
                }
            }
        }

        assertThat(broken).isEmpty();
    }

    /** Neighbours of one type together. */
    private static List<ArrayNode> byType(ArrayNode events) {
        List<ArrayNode> parts = new ArrayList<>();
        String latest = "";
        for (JsonNode event : events) {
            if (!event.path("type").asText().equals(latest)) {
                parts.add(Json.mapper().createArrayNode());
                latest = event.path("type").asText();
            }
            parts.get(parts.size() - 1).add(event);
        }
        return parts;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/bay/%00",
                "/bay?q=%00",
                "/bay/%00/obstacle?step=%00",
                "/desk/%00",
                "/desk?q=%00&status=%00&cursor=%00",
                "/desk?status=closed&cursor=%00",
                "/sheets/%00/customer",
                "/sheets/A/%00",
                "/rulebook?q=%00",
                "/rulebook/%00/%00",
                "/rulebook/case/%00",
                "/policy/new?name=%00",
                "/policy/named/%00",
                "/policy/named/%00/draft?layer=%00",
                "/policy/named/%00/effective?site=%00&version=0",
                "/policy/named/%00/comparison?from=%00&to=%00",
                "/policy/named/%00/publication",
                "/policy/trials/%00",
                "/policy/trials/%00/cases/%00",
                "/policy/departures?site=%00&from=%00&to=%00",
                "/numbers/%00",
                "/numbers/%00/%00",
                "/numbers/causes?make=%00&from=%00&cursor=%00",
                "/numbers/causes/csv?make=%00&by=%00",
                "/sign-in?to=%00"
            })
    void an_address_that_nobody_was_given_is_refused_in_words(String address) {
        Response plain = browser.open(address.replace("%00", "none"));
        Response hostile = browser.open(address);

        assertThat(List.of(plain.statusCode(), hostile.statusCode()))
                .as(address)
                .allMatch(status -> status < 500);
        assertThat(hostile.asString()).doesNotContain("Exception");
    }

    @Test
    void a_sheet_is_for_the_customer_or_the_workshop() throws IOException {
        send(FOUND);

        Response unknown = browser.open("/sheets/" + reference + "/everybody");

        assertThat(unknown.statusCode()).isEqualTo(404);
        assertThat(Browser.read(unknown).select("#problem").text())
                .contains("There is no sheet for 'everybody'", "customer", "workshop");
    }

    @Test
    void a_sheet_on_the_screen_leads_back_to_its_case() throws IOException {
        send(FOUND);

        for (String audience : List.of("customer", "workshop")) {
            Document sheet = browser.page("/sheets/" + reference + "/" + audience);

            assertThat(sheet.select("a[href]").eachAttr("href")).containsExactly("/desk/" + reference);
        }
    }

    @Test
    void a_browser_gets_a_page_and_a_program_a_problem_document() {
        Response page = browser.open("/bay/NONE-1");
        Response document = given().get("/bay/NONE-1");
        Response api = given().header("Accept", Browser.HTML).get("/v1/cases/NONE-1/report");
        Response root = given().header("Accept", Browser.HTML).get("/v1");
        Response unknown = given().header("Accept", Browser.HTML).get("/v1/nowhere/at/all");

        assertThat(page.statusCode()).isEqualTo(404);
        assertThat(Browser.read(page).select("#problem h1").text()).isEqualTo("There is nothing at this address");
        assertThat(document.statusCode()).isEqualTo(404);
        assertThat(document.contentType()).startsWith("application/problem+json");
        assertThat(api.contentType()).startsWith("application/problem+json");
        assertThat(root.contentType()).startsWith("application/problem+json");
        assertThat(unknown.statusCode()).isEqualTo(404);
        assertThat(unknown.contentType()).startsWith("application/problem+json");
    }

    @Test
    void a_case_is_opened_and_gets_its_first_verdict_in_the_bay() {
        Element form = browser.page("/bay/new").selectFirst("form[action=/bay/new]");
        Document opened =
                browser.follow(form, Map.of("site", site, "make", "Corvane", "model", "Portal", "testMass", "1430"));

        assertThat(opened.select("h1").text()).contains("Corvane Portal");
        assertThat(opened.select("#saved").text()).startsWith("Saved.");
        assertThat(opened.select("input[name^=service.]:not([type=checkbox]):not([name$=drag])"))
                .hasSize(4);
        assertThat(opened.select("input[name^=parking.]")).hasSize(2);

        Document judged = browser.follow(
                opened.selectFirst("form[action$=/readings]"),
                Map.of(
                        "service.1.left",
                        "2100",
                        "service.1.right",
                        "2050",
                        "service.2.left",
                        "590",
                        "service.2.right",
                        "1610,5",
                        "parking.2.left",
                        "310",
                        "parking.2.right",
                        "900"));

        assertThat(judged.select("section[aria-labelledby=follows]").text())
                .contains("Rear axle", "The two wheels of this axle brake unevenly", "63 %", "Rear axle, left wheel");
        assertThat(judged.select("section[aria-labelledby=next] form button")).isNotEmpty();
        assertThat(judged.select("section[aria-labelledby=next] form button:not([hidden])"))
                .isNotEmpty()
                .allSatisfy(button -> assertThat(button.text()).isNotEmpty());
    }

    @Test
    void an_answer_that_is_tapped_twice_arrives_once() throws IOException {
        send(OVAL);
        Element answer = answersWithoutReading().get(0);
        int before = version();

        Response first = tap(answer);
        Response again = tap(answer);

        assertThat(first.statusCode()).isEqualTo(303);
        assertThat(first.header("Location")).contains("saved=now");
        assertThat(again.statusCode()).isEqualTo(303);
        assertThat(again.header("Location")).contains("saved=before");
        assertThat(version()).isEqualTo(before + 1);
    }

    @Test
    void another_answer_on_a_form_that_was_saved_is_refused_in_words() throws IOException {
        send(OVAL);
        Elements answers = browser.page("/bay/" + reference)
                .select("form[action$=/answer]:not(:has(input[name^=blank])):has(button + button)")
                .get(0)
                .select("button");

        tap(answers.get(0));
        Response refused = tap(answers.get(1));

        assertThat(refused.statusCode()).isEqualTo(409);
        assertThat(Browser.read(refused).select("#problem").text()).contains("was accepted with content");
    }

    @Test
    void a_reading_that_several_answers_need_is_asked_for_once() throws IOException {
        send("trace-of-an-oval-drum");
        Element form = browser.page("/bay/" + reference)
                .selectFirst("form[action$=/answer]:has(input[name=blank.drumOvality])");
        Elements buttons = form.select("button[name=data]");
        Element sound = buttons.stream()
                .filter(button -> button.text().equals("Drum sound"))
                .findFirst()
                .orElseThrow();

        Response saved = browser.submit(form, Map.of("blank.drumOvality", "0,04", "data", sound.val()));

        assertThat(buttons.eachText()).contains("An oval drum");
        assertThat(form.select("input[name^=blank]")).hasSize(1);
        assertThat(form.selectFirst("button").hasAttr("disabled"))
                .as("the key Enter in the reading chooses no answer")
                .isTrue();
        assertThat(saved.statusCode()).isEqualTo(303);
        JsonNode latest = Json.read(
                        given().get("/v1/cases/" + reference + "/events").asString())
                .at("/events/0/event/data");
        assertThat(latest.path("condition").asText()).isEqualTo("sound");
        assertThat(latest.at("/measurement/value").decimalValue()).isEqualByComparingTo("0.04");
    }

    @Test
    void what_waited_for_its_connection_keeps_its_time() throws IOException {
        send(OVAL);
        Element form = browser.page("/bay/" + reference).selectFirst("form[action$=/finding]");

        browser.submit(form, Map.of("component", "tyre", "condition", "worn", "place", "2 left", "ago", "3600"));

        JsonNode timeline = Json.read(
                        given().get("/v1/cases/" + reference + "/events").asString())
                .path("events");
        JsonNode latest = timeline.get(0);
        assertThat(java.time.Duration.between(
                                java.time.OffsetDateTime.parse(
                                        latest.at("/event/time").asText()),
                                java.time.OffsetDateTime.parse(
                                        latest.path("receivedAt").asText()))
                        .toSeconds())
                .isBetween(3599L, 3620L);
        assertThat(latest.at("/event/data/side").asText()).isEqualTo("left");
        assertThat(latest.at("/event/source").asText()).isEqualTo("/pages/bay");
    }

    @Test
    void a_number_that_is_none_is_named_and_nothing_is_stored() throws IOException {
        send(OVAL);
        int before = version();
        Element form = browser.page("/bay/" + reference).selectFirst("form[action$=/readings]");

        Response refused = browser.submit(form, Map.of("service.2.left", "many", "service.2.right", "1.610.0"));

        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(Browser.read(refused).select("#problem li").eachText())
                .contains("The force of axle 2 left is \"many\"; expected is a number such as 1250 or 1.6.");
        assertThat(version()).isEqualTo(before);
    }

    @Test
    void a_trace_is_handed_over_and_drawn() throws IOException {
        send(OVAL);
        StringBuilder trace = new StringBuilder("left;right\n");
        for (int sample = 0; sample < 300; sample++) {
            double effort = sample < 50 ? 0 : Math.min(1, (sample - 50) / 100.0);
            trace.append(Math.round(60 + 1500 * effort))
                    .append(';')
                    .append(Math.round(64 + 900 * effort))
                    .append('\n');
        }
        Element form = browser.page("/bay/" + reference).selectFirst("form[action$=/readings]");

        Document page = browser.follow(form, Map.of("trace.2", trace.toString(), "period.2", "20"));

        assertThat(page.select("figure.picture figcaption").eachText())
                .contains("Force over time, rear axle, foot brake, test during the work");
        assertThat(page.select("figure.picture svg[role=img] > title")).isNotEmpty();
    }

    @Test
    void the_chain_is_a_picture_with_the_same_words() throws IOException {
        send(FOUND);

        Document page = browser.page("/bay/" + reference);

        assertThat(page.select("svg.chain > title").eachText()).contains("How the cause leads to what was measured");
        String words = page.selectFirst("svg.chain > desc").text();
        assertThat(words)
                .contains("A hub or axle seal leaks onto the lining, rear axle, left wheel (seen)")
                .contains("(inferred)");
        assertThat(page.selectFirst("svg.chain").select("g rect")).hasSize(words.split("; then ", -1).length);
    }

    @Test
    void the_desk_decides_line_by_line_and_all_other_required_work_at_once() throws IOException {
        send(FOUND);
        Document desk = browser.page("/desk/" + reference);
        Element form = desk.selectFirst("form[action$=/decisions]");
        String optional = form.select("fieldset").stream()
                .filter(line -> line.select("p").first().text().startsWith("recommended"))
                .map(line -> line.select("input[type=radio]").attr("name"))
                .findFirst()
                .orElseThrow();

        Document decided = browser.follow(form, Map.of(optional, "refused", "all", "required"));

        JsonNode document = Json.read(given().get("/v1/cases/" + reference).asString());
        String refused = optional.substring("decision.".length());
        assertThat(document.path("scope")).anySatisfy(line -> {
            assertThat(line.path("id").asText()).isEqualTo(refused);
            assertThat(line.path("standing").asText()).isEqualTo("refused");
        });
        assertThat(document.path("scope")).allSatisfy(line -> {
            if (line.path("necessity").asText().equals("required")) {
                assertThat(line.path("standing").asText()).isNotEqualTo("proposed");
            }
        });
        assertThat(document.path("status").asText()).isEqualTo("in-work");
        assertThat(decided.select(".title .state").text()).isEqualTo("In work");
    }

    @Test
    void a_decision_that_stands_is_marked_and_saved_once_only() throws IOException {
        send(FOUND);
        Element form = browser.page("/desk/" + reference).selectFirst("form[action$=/decisions]");
        String shoes = "decision.renew-shoe-set-axle-2";

        Document decided = browser.follow(form, Map.of(shoes, "later"));
        Element again = decided.selectFirst("form[action$=/decisions]");
        Response nothing = browser.submit(again, Map.of());
        Response changed = browser.submit(again, Map.of(shoes, "agreed"));

        assertThat(again.select("details input[name=" + shoes + "][checked]").val())
                .isEqualTo("later");
        assertThat(nothing.statusCode()).isEqualTo(422);
        assertThat(changed.statusCode()).isEqualTo(303);
        JsonNode latest = Json.read(
                        given().get("/v1/cases/" + reference + "/events").asString())
                .at("/events/0/event/data/decisions");
        assertThat(latest).hasSize(1);
        assertThat(latest.at("/0/decision").asText()).isEqualTo("agreed");
    }

    @Test
    void a_closed_case_asks_for_no_decision_and_no_look() throws IOException {
        send("second-cure-after-a-failed-re-test");

        Document desk = browser.page("/desk/" + reference);
        Document bay = browser.page("/bay/" + reference);

        assertThat(desk.select("form[action$=/decisions], form[action$=/closing]"))
                .isEmpty();
        assertThat(desk.select("section[aria-labelledby=decisions]").text()).contains("The case is closed.");
        assertThat(bay.select("section[aria-labelledby=next]").text()).contains("The case is closed.");
        assertThat(bay.select("#follows").text()).isEqualTo("Found before the work");
    }

    @Test
    void a_case_without_a_vehicle_leads_to_its_entry() throws IOException {
        sendFirst("findings-before-the-vehicle", 1);

        Document bay = browser.page("/bay/" + reference);
        String address = bay.select("section[aria-labelledby=vehicle] a").attr("href");
        Document entry = browser.page(address);
        Document entered =
                browser.follow(entry.selectFirst("form[action=/bay/new]"), Map.of("site", site, "make", "Corvane"));

        assertThat(bay.select("main").text())
                .contains("First enter the vehicle")
                .doesNotContain("Key in the roller test", "vehicle.presented", "/sites/");
        assertThat(browser.page("/desk/" + reference).select("main").text()).doesNotContain("vehicle.presented");
        assertThat(entry.select("h1").text()).contains(reference);
        assertThat(entered.select("h1").text()).contains("Corvane");
        assertThat(entered.select(".title + p").text()).contains(reference);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "second-cure-after-a-failed-re-test|13"
                        + "|waits for decisions on work that is not decided yet, and for the bay: do the agreed work",
                "second-cure-after-a-failed-re-test|50|waits for the bay: the last test was not passed, find out why",
                "heavy-vehicle-gets-figures-only|99|waits for the workshop's own judgement",
                "withdrawn-finding-changes-the-answer|99"
                        + "|waits for the customer's decisions on the work, which may still change"
            },
            quoteCharacter = '"')
    void a_case_says_what_it_waits_for_beyond_its_status(String scenario, int first, String waits) throws IOException {
        sendFirst(scenario, first);

        for (String page : List.of("/bay/", "/desk/")) {
            assertThat(browser.page(page + reference).select(".title + p").text())
                    .contains("; " + waits + ".");
        }
    }

    @Test
    void what_is_still_to_be_looked_at_is_named_with_its_place_before_the_work_is_decided() throws IOException {
        send("withdrawn-finding-changes-the-answer");

        assertThat(browser.page("/desk/" + reference)
                        .select("section[aria-labelledby=decisions] > ul > li")
                        .eachText())
                .contains("Rear axle, left wheel: The hub seal was not looked at well enough to tell.")
                .doesNotHaveDuplicates();
    }

    @Test
    void a_reason_read_at_another_wheel_than_that_of_its_cause_names_that_wheel() throws IOException {
        send(OVAL);
        String low = "The peak of the wheel falls short of that of its partner by more than the workshop accepts.";

        Element oval =
                browser.page("/bay/" + reference).selectFirst("section[aria-labelledby=follows] > details:has(> ul)");

        assertThat(oval.selectFirst("summary").text()).startsWith("Rear axle, right wheel: A drum is oval");
        assertThat(oval.select("> ul > li").eachText())
                .contains("An oval drum swings the force twice a turn.", "Rear axle, left wheel: " + low)
                .doesNotContain(low);
    }

    @Test
    void causes_that_a_missed_last_test_leaves_stand_under_a_heading_of_their_own() throws IOException {
        sendFirst("second-cure-after-a-failed-re-test", 50);

        Document bay = browser.page("/bay/" + reference);

        assertThat(bay.select("#follows").text()).isEqualTo("Found before the work");
        assertThat(bay.select("section[aria-labelledby=follows] > h3").eachText())
                .containsExactly("Causes now, after the last test");
    }

    @Test
    void what_keeps_the_cure_from_being_proven_is_said_once_and_in_words() throws IOException {
        send(FOUND);

        assertThat(browser.page("/bay/" + reference)
                        .select("details:has(> summary:contains(What is still open)) li")
                        .eachText())
                .contains(
                        "Renew the brake shoes, rear axle",
                        "Hub seal leaking, rear axle, left wheel",
                        "The last roller test")
                .noneMatch(open -> open.matches(".*(Open:|axle [0-9]|vehicle$|confirmed).*"))
                .doesNotHaveDuplicates();
    }

    @Test
    void after_the_work_it_is_said_what_nobody_has_looked_at_since_and_that_no_leak_was_looked_for()
            throws IOException {
        sendFirst("oiled-lining-and-seized-cable-repaired", 44);

        Document bay = browser.page("/bay/" + reference);

        assertThat(bay.select("details:has(> summary:contains(What is still open)) li")
                        .eachText())
                .contains(
                        "Hub seal leaking, rear axle, left wheel – not looked at since the work",
                        "The last roller test")
                .anyMatch(open -> open.contains("no look for leaks after the work is on record"));
        assertThat(bay.select("section[aria-labelledby=scope]").text()).doesNotContain("no look for leaks");
        assertThat(bay.select(".title + p").text())
                .contains("waits for decisions on work that is not decided yet, and for the bay: the proof");
    }

    @Test
    void a_vehicle_out_of_range_is_told_so_in_place_of_its_causes() throws IOException {
        send("heavy-vehicle-gets-figures-only");

        for (String page : List.of("/bay/", "/desk/")) {
            assertThat(browser.page(page + reference)
                            .select("section[aria-labelledby=follows]")
                            .text())
                    .contains("M1 and N1 only; this one is N2.")
                    .doesNotContain("asks for one");
        }
    }

    @Test
    void a_step_is_ticked_and_an_obstacle_is_told_in_two_taps() throws IOException {
        send(FOUND);
        Document bay = browser.page("/bay/" + reference);
        Element step = bay.select("ol.steps form").stream()
                .filter(form -> form.select("[name=step]").val().contains("axle-2"))
                .findFirst()
                .orElseThrow();
        String id = step.select("[name=step]").val();

        Document ticked = browser.follow(step, Map.of("outcome", "done"));
        Element link = ticked.select("ol.steps a[href*=obstacle]").stream()
                .filter(way -> way.attr("href").contains("axle-2"))
                .findFirst()
                .orElseThrow();
        Document way = browser.page(link.attr("href"));
        Document met =
                browser.follow(way.selectFirst("form[action$=/obstacle]"), Map.of("obstacle", "bleed-nipple sheared"));

        JsonNode document = Json.read(given().get("/v1/cases/" + reference).asString());
        assertThat(document.path("workPlan")).anySatisfy(planned -> {
            assertThat(planned.path("id").asText()).isEqualTo(id);
            assertThat(planned.path("outcome").asText()).isEqualTo("done");
        });
        assertThat(document.path("timeline"))
                .anyMatch(entry -> entry.path("type").asText().equals("org.axlecause.obstacle.met.v1"));
        assertThat(met.select("#saved").text()).startsWith("Saved.");
        assertThat(way.select("form button").eachText())
                .contains("The bleed nipple is sheared off", "The drum does not come off")
                .doesNotContain("A slide pin does not move");
    }

    @Test
    void an_obstacle_is_not_saved_before_its_place_is_chosen() throws IOException {
        send(FOUND);
        String step = planned(planned -> !planned.path("place").has("side")).get(0);

        Document way = browser.page("/bay/" + reference + "/obstacle?step=" + step);

        assertThat(way.select("input[type=radio][name=place]")).hasSizeGreaterThan(2);
        assertThat(way.select("input[type=radio][name=place][checked]")).isEmpty();
        assertThat(way.select("input[type=radio][name=place][required]")).hasSize(1);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"oiled-lining-and-seized-cable-found, 1", "oiled-lining-and-seized-cable-repaired, 0"})
    void the_bay_says_that_required_work_is_not_decided_yet_until_it_is(String scenario, int said) throws IOException {
        send(scenario);

        assertThat(browser.page("/bay/" + reference)
                        .select("section[aria-labelledby=work] > p:contains(Begin only after the decision on it)"))
                .hasSize(said);
    }

    @Test
    void only_steps_whose_turn_it_is_stand_open_and_say_in_full_what_they_can_hurt() throws IOException {
        send(FOUND);
        List<String> beforeAnything = planned(step -> step.path("after").isEmpty());

        Document bay = browser.page("/bay/" + reference);
        Element first = bay.selectFirst("section[aria-labelledby=work] > ol.steps form");
        String id = first.select("[name=step]").val();
        Document ticked = browser.follow(first, Map.of("outcome", "done"));

        assertThat(bay.select("section[aria-labelledby=work] > ol.steps [name=step]")
                        .eachAttr("value"))
                .isEqualTo(beforeAnything);
        assertThat(bay.select("section[aria-labelledby=work] > ol.steps > li:first-child .note li")
                        .eachText())
                .isNotEmpty()
                .isSubsetOf(bay.select("#caution-1, #caution-2").eachText());
        assertThat(bay.select("section[aria-labelledby=work] > details:has(ol.steps)")
                        .select("[name=step]")
                        .eachAttr("value"))
                .isEqualTo(planned(step -> !step.path("after").isEmpty()));
        assertThat(ticked.select("section[aria-labelledby=work] > details:has(.done) > summary")
                        .eachText())
                .containsExactly("One step reported");
        assertThat(ticked.select("section[aria-labelledby=work] > ol.steps [name=step]")
                        .eachAttr("value"))
                .isEqualTo(planned(step -> !step.path("id").asText().equals(id)
                        && ComposeSheet.stream(step.path("after"))
                                .allMatch(earlier -> earlier.asText().equals(id))));
    }

    private List<String> planned(Predicate<JsonNode> which) throws IOException {
        return ComposeSheet.stream(
                        Json.read(given().get("/v1/cases/" + reference).asString())
                                .path("workPlan"))
                .filter(which)
                .map(step -> step.path("id").asText())
                .toList();
    }

    @Test
    void a_proven_repair_shows_before_and_after_and_its_verdict() throws IOException {
        send("oiled-lining-and-seized-cable-repaired");

        Document page = browser.page("/bay/" + reference);

        assertThat(page.select("#verdict").text()).contains("The repair is proven");
        assertThat(page.select("table caption").eachText()).contains("Before and after");
        assertThat(page.select(".title .state").text()).isEqualTo("Cure proven");
        assertThat(page.select("#fitness").hasClass("strong")).isFalse();
    }

    @Test
    void cases_are_listed_by_whom_they_wait_for_and_found_by_their_words() throws IOException {
        send(FOUND);

        Document all = browser.page("/desk?q=" + reference);
        Document none = browser.page("/desk?q=nothing-of-that-name");
        Document one = browser.page("/desk?status=scoped&q=" + reference);

        assertThat(all.select("#group-scoped").text()).isEqualTo("Work proposed");
        assertThat(all.select("main > p").eachText()).contains("Cases with “" + reference + "”.");
        assertThat(all.select("section[aria-labelledby=group-scoped] .sentence").text())
                .isEqualTo("waits for the customer's decisions on the work.");
        assertThat(all.select("section[aria-labelledby=group-scoped] a").eachAttr("href"))
                .containsExactly("/desk/" + reference);
        assertThat(all.select("section[aria-labelledby=group-scoped] li span").eachText())
                .containsExactly("Corvane Portal, Pier Road, 2 Mar 2026");
        assertThat(one.select("ul.entries a").eachText()).containsExactly(reference);
        assertThat(none.select(".empty").text()).contains("No case has “nothing-of-that-name”");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/bay/", "/desk/", "/rulebook/case/"})
    void hostile_words_in_a_case_stay_words(String page) throws IOException {
        String hostile = "\"><script>alert(1)</script><img src=x onerror=alert(1)>{7*7}";
        send(FOUND, "Corvane", hostile);

        Document shown = browser.page(page + reference);

        assertThat(shown.select("script:not([src]), img[onerror]")).isEmpty();
        if (!page.startsWith("/rulebook")) {
            assertThat(shown.select("h1").text()).contains("<script>alert(1)</script>", "{7*7}");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"/bay?q=", "/desk?q=", "/rulebook?q=", "/rulebook/causes?q="})
    void hostile_words_in_a_search_stay_words(String address) {
        Document shown = browser.page(
                address + java.net.URLEncoder.encode("\"><script>alert(1)</script>", StandardCharsets.UTF_8));

        assertThat(browser.last().statusCode()).isEqualTo(200);
        assertThat(shown.select("script:not([src])")).isEmpty();
        assertThat(shown.select("input[name=q]").val()).isEqualTo("\"><script>alert(1)</script>");
    }

    @Test
    void a_cause_leads_to_its_findings_its_signs_and_the_work_that_follows() {
        Document cause = browser.page("/rulebook/causes/hub-seal-leaking");

        assertThat(cause.select("h1").text()).isEqualTo("Hub seal leaking");
        assertThat(cause.select(".facts dt").eachText()).contains("How firmly it is known", "Source");
        assertThat(cause.select("section h2").eachText())
                .contains("Proved by any of", "What it shows or leaves", "Work that follows");
        assertThat(cause.select("section a[href^=/rulebook/symptoms/]")).isNotEmpty();
        for (String address : cause.select("section a").eachAttr("href")) {
            assertThat(browser.open(address).statusCode()).as(address).isEqualTo(200);
        }
    }

    @Test
    void a_caution_leads_to_the_steps_and_the_checks_that_it_is_told_with() {
        Document dust = browser.page("/rulebook/cautions/dust");

        assertThat(dust.select("section:has(h2:contains(To be read before)) a").eachAttr("href"))
                .containsExactly("/rulebook/steps/control-dust");
        assertThat(dust.select("section:has(h2:contains(Checks that it is told with)) a")
                        .eachAttr("href"))
                .contains("/rulebook/checks/drum-measurement", "/rulebook/checks/lining-look")
                .doesNotContain("/rulebook/checks/effort-sweep");
        assertThat(browser.page("/rulebook/cautions/local-law")
                        .select("section h2")
                        .eachText())
                .contains("To be read before")
                .doesNotContain("Checks that it is told with");
    }

    @Test
    void every_entry_of_the_rulebook_has_a_page() {
        List<String> broken = new ArrayList<>();
        int seen = 0;
        for (String kind :
                browser.page("/rulebook").select("ul.tabs a[href^=/rulebook/]").eachAttr("href")) {
            for (String address : browser.page(kind).select("ul.entries a").eachAttr("href")) {
                seen++;
                if (seen % 7 == 0 && browser.open(address).statusCode() != 200) {
                    broken.add(address);
                }
            }
        }

        assertThat(broken).isEmpty();
        assertThat(seen).isGreaterThan(300);
    }

    @Test
    void regimes_are_told_in_words_and_every_limit_with_its_number() {
        for (String address :
                browser.page("/rulebook/regimes").select("ul.entries a").eachAttr("href")) {
            Document regime = browser.page(address);

            assertThat(regime.select("section:has(h2:contains(What it asks)) li")
                            .eachText())
                    .as(address)
                    .isNotEmpty()
                    .noneMatch(text -> text.matches(".*(bound (minimum|maximum)|deficiency |counts (true|false)).*"));
            assertThat(regime.select(".facts").text())
                    .containsPattern("Code " + address.substring(address.lastIndexOf('/') + 1) + "$");
        }
    }

    @Test
    void the_rulebook_is_searched_and_says_when_nothing_is_found() {
        Document found = browser.page("/rulebook?q=hub%20seal");
        Document none = browser.page("/rulebook?q=zzzzzz");

        assertThat(found.select("ul.entries a").eachAttr("href"))
                .contains(
                        "/rulebook/causes/hub-seal-leaking",
                        "/rulebook/checks/hub-seal-look",
                        "/rulebook/steps/renew-hub-seal");
        assertThat(none.select(".empty").text()).contains("Nothing in the rulebook speaks of “zzzzzz”");
    }

    @Test
    void what_a_search_in_all_lists_leaves_out_is_found_in_the_one_list() {
        Element more = browser.page("/rulebook?q=wheel%20brake%26more").selectFirst("section p a[href*=?q=]");
        Element left = browser.page("/rulebook?q=wheel%20").selectFirst("section p a[href^=/rulebook/rules?q=]");
        Document rules = browser.page(left.attr("href"));

        assertThat(more).isNull();
        assertThat(left.text()).matches("[0-9]+ more");
        assertThat(rules.select("ul.entries a"))
                .hasSize(20 + Integer.parseInt(left.text().replace(" more", "")));
        assertThat(rules.select("section p a[href*=?q=]")).isEmpty();
    }

    @Test
    void settings_are_told_in_words_with_their_units() {
        Document settings = browser.page("/rulebook/settings");

        assertThat(settings.select("ul.entries li").eachText())
                .contains(
                        "How far two runs may differ in any case 100 N",
                        "Imbalance of an axle that is worth noting 15 %",
                        "Thickness of a pad at or below which renewal is offered 3 mm, recommended",
                        "Hours that a line may be charged at most not set");
        assertThat(browser.page("/rulebook/settings/strengths")
                        .select("section:has(h2:contains(Value)) li")
                        .eachText())
                .contains("A 90 %");
        assertThat(browser.page("/rulebook/settings/next-checks")
                        .select("section:has(h2:contains(Value)) li")
                        .eachText())
                .contains(
                        "a chain is settled from 99.8 %",
                        "time for access: vehicle raised 3 min, wheel off 4 min, drum or calliper off 10 min,"
                                + " hydraulics opened 8 min");
    }

    @Test
    void a_compound_is_found_however_it_is_written() {
        for (String written : List.of("anti-lock", "antilock", "anti%20lock")) {
            assertThat(browser.page("/rulebook/checks?q=" + written)
                            .select("ul.entries a")
                            .eachText())
                    .contains("Anti-lock data check");
        }
    }

    @Test
    void a_sign_of_the_whole_vehicle_is_not_told_of_a_wheel() {
        List<String> shows = browser.page("/rulebook/causes/adjuster-not-taken-up")
                .select("section:has(h2:contains(What it shows)) li")
                .eachText();

        assertThat(shows)
                .anyMatch(sign -> sign.startsWith("The pedal travel is long (whole vehicle, in "))
                .anyMatch(sign -> sign.contains("(same wheel, in "));
    }

    @Test
    void the_rules_that_spoke_in_a_case_are_listed_with_their_grounds() throws IOException {
        send(FOUND);

        Document rules = browser.page("/rulebook/case/" + reference);

        assertThat(rules.select("h2").eachText())
                .containsSubsequence(
                        "What the figures and complaints show",
                        "What is beyond the limits",
                        "What speaks for and against causes",
                        "Which work is called for")
                .doesNotHaveDuplicates();
        assertThat(rules.select("summary .small").eachText())
                .contains("SYM-011", "CAU-340", "DEF-040")
                .doesNotHaveDuplicates();
        assertThat(rules.select("details li").text())
                .contains(
                        "highest force, rear axle, left wheel = ",
                        "imbalance at full effort from which the weaker wheel counts as low: 20",
                        "policy: ")
                .doesNotContain(reference, "wheel-cylinder", "hub-seal", "policy clause");
        assertThat(rules.select("details li").eachText())
                .noneMatch(fact -> fact.matches(".*\\baxle [0-9].*"))
                .noneMatch(fact -> fact.matches("^(renew|adjust|bleed|clean) [a-z].*"))
                .anyMatch(fact -> fact.startsWith("minimum 8.00 % (dangerous) by ")
                        && fact.endsWith("(value as quoted elsewhere)"));
        assertThat(rules.select("summary:contains(CAU-340)").text()).matches("[A-Z].+: [A-Z].+\\. CAU-340");
        assertThat(browser.open(rules.select("a[href^=/rulebook/rules/]").attr("href"))
                        .statusCode())
                .isEqualTo(200);
    }

    @Test
    void only_signing_in_is_open_to_strangers() {
        assertThat(PAGES.stream()
                        .flatMap(type -> Stream.of(type.getDeclaredMethods()))
                        .filter(method -> method.isAnnotationPresent(ForStrangers.class))
                        .map(Method::getName))
                .containsExactlyInAnyOrder("ask", "signIn");
    }

    private List<Element> answersWithoutReading() {
        return browser.page("/bay/" + reference)
                .select("form[action$=/answer]:not(:has(input[name^=blank])) button[name=data]");
    }

    /** Sends the form of a button as a tap on it does. */
    private Response tap(Element button) {
        return browser.submit(button.closest("form"), Map.of(button.attr("name"), button.val()));
    }

    private int version() {
        return Json.read(given().get("/v1/cases/" + reference).asString())
                .path("version")
                .asInt();
    }

    private void send(String scenario) throws IOException {
        send(scenario, "Corvane", "Corvane");
    }

    private void sendFirst(String scenario, int first) throws IOException {
        ArrayNode sent = Json.mapper().createArrayNode();
        for (JsonNode event : events(scenario)) {
            if (sent.size() < first) {
                sent.add(event);
            }
        }
        post(sent);
    }

    private void send(String scenario, String text, String instead) throws IOException {
        String quoted = Json.text(instead);
        post(Json.read(Json.text(events(scenario)).replace(text, quoted.substring(1, quoted.length() - 1))));
    }

    /** The events of a scenario, told of the case of this test at its site. */
    private ArrayNode events(String scenario) throws IOException {
        ArrayNode events = Json.mapper().createArrayNode();
        try (Stream<java.nio.file.Path> files = Files.list(SCENARIOS.resolve(scenario))) {
            for (java.nio.file.Path file : files.filter(
                            path -> path.getFileName().toString().startsWith("given"))
                    .sorted()
                    .toList()) {
                events.addAll((ArrayNode) Json.read(Files.readString(file)));
            }
        }
        for (JsonNode event : events) {
            ((ObjectNode) event)
                    .put("subject", reference)
                    .put("id", reference + event.path("id").asText());
            if (event.path("data").has("site")) {
                ((ObjectNode) event.path("data")).put("site", site);
            }
        }
        return events;
    }

    private static void post(JsonNode events) {
        Response answer = given().contentType("application/cloudevents-batch+json; charset=UTF-8")
                .body(Json.text(events).getBytes(StandardCharsets.UTF_8))
                .post("/v1/events");
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
    }
}
