package org.axlecause.pages;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.config.EncoderConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class ReportApiTest {

    private static final String FOOTER = "Advice for a competent person. No certificate and no inspection.";
    private static final Path SCENARIOS = Path.of("src", "test", "resources", "scenarios");

    private final String site = "dock-" + UUID.randomUUID().toString().substring(0, 8);
    private final String reference = "RP-" + UUID.randomUUID().toString().substring(0, 13);

    @Inject
    TenantTransaction transaction;

    @Inject
    SiteStore sites;

    @BeforeEach
    void the_site_exists() {
        transaction.run(
                "demo",
                () -> sites.save(new Site(site, "Dock Road", null, ZoneId.of("Europe/London"), "GBP", "gb-annual", 1)));
    }

    @Test
    void the_customer_reads_what_is_wrong_why_what_to_do_and_what_declining_means() throws IOException {
        send("oiled-lining-and-seized-cable-found");

        String sheet = text(html("customer"));

        assertThat(sheet)
                .contains("Do not drive")
                .contains("The two wheels of this axle brake unevenly, so the vehicle can pull to one side.")
                .contains("Rear axle: difference between the two wheels 63 %; at most 30 % is allowed.")
                .contains("Whole vehicle: braking force against weight 6 %; at least 16 % is required, and less than"
                        + " 8 % counts as dangerous. The inspection calls this dangerous.")
                .contains("A hub or axle seal leaks onto the lining")
                .contains("Rear axle, left wheel: found.")
                .contains("grease or oil reaches the lining → the friction of the lining falls")
                .contains("Renew the brake shoes, rear axle")
                .contains("1 × axle set of four shoes")
                .contains("for you to decide")
                .contains("Saying no to required work has consequences. The brakes can fail or pull the vehicle aside.")
                .contains("curved plates with a friction lining that press outwards against the drum")
                .contains("Dock Road")
                .contains("Limits Annual test of cars and light vans, Great Britain");
    }

    @Test
    void no_code_stands_on_the_customers_sheet() throws IOException {
        send("oiled-lining-and-seized-cable-repaired");

        assertThat(text(html("customer")))
                .doesNotContainPattern("\\b(SCO|CAU|SYM|DEF|OUT|WRK)-[0-9]+")
                .doesNotContain("shoe-set", "service-imbalance", "hub-seal-leaking", "null", "axle 2");
    }

    @ParameterizedTest
    @ValueSource(strings = {"customer", "workshop"})
    void the_pdf_says_the_same_as_the_page(String audience) throws IOException {
        send("oiled-lining-and-seized-cable-repaired");

        String printed = squeezed(pages(pdf(audience)).stream()
                .reduce("", String::concat)
                .replaceAll(FOOTER.replace(".", "\\.") + "[^.]*\\.[^.]*?page [0-9]+ of [0-9]+", ""));

        for (String paragraph : paragraphs(html(audience))) {
            assertThat(printed).as("the PDF lacks '%s'", paragraph).contains(squeezed(paragraph));
        }
    }

    @ParameterizedTest(name = "{0} for the {1}")
    @CsvSource({
        "oiled-lining-and-seized-cable-found,    customer, 2, 4",
        "oiled-lining-and-seized-cable-repaired, customer, 2, 5",
        "oiled-lining-and-seized-cable-repaired, workshop, 4, 10",
        "heavy-vehicle-gets-figures-only,        customer, 1, 2",
        "trace-of-an-oval-drum,                  workshop, 1, 4"
    })
    void every_page_says_that_it_is_advice_and_no_certificate(String scenario, String audience, int least, int most)
            throws IOException {
        send(scenario);

        List<String> pages = pages(pdf(audience));

        assertThat(pages).hasSizeBetween(least, most);
        for (int page = 0; page < pages.size(); page++) {
            assertThat(pages.get(page))
                    .containsOnlyOnce(FOOTER)
                    .contains(reference + ", page " + (page + 1) + " of " + pages.size());
        }
        assertThat(html(audience))
                .contains("<p class=\"advice small\">" + FOOTER)
                .doesNotContain(".advice { display: none");
    }

    @Test
    void the_same_case_gives_the_same_bytes_and_the_same_tag() throws IOException {
        send("seized-calliper-piston");

        Response first = report("customer", "application/pdf");
        Response again = report("customer", "application/pdf");
        Response unchanged = given().accept("application/pdf")
                .header("If-None-Match", first.header("ETag"))
                .get("/v1/cases/" + reference + "/report");

        assertThat(again.asByteArray()).isEqualTo(first.asByteArray());
        assertThat(first.header("ETag")).matches("\"[0-9a-f]{32}-pdf\"").isEqualTo(again.header("ETag"));
        assertThat(report("customer", "text/html").header("ETag")).matches("\"[0-9a-f]{32}-html\"");
        assertThat(unchanged.statusCode()).isEqualTo(304);
        assertThat(first.header("Vary")).contains("Accept");
        assertThat(first.header("Content-Disposition"))
                .isEqualTo("inline; filename=\"" + reference + "-customer.pdf\"");
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "text/html|text/html",
                "application/pdf|application/pdf",
                "*/*|text/html",
                "text/html;q=0.5, application/pdf|application/pdf"
            })
    void accept_chooses_between_page_and_pdf(String accept, String type) throws IOException {
        send("seized-slide-pins");

        assertThat(report("customer", accept).contentType()).startsWith(type);
    }

    @Test
    void other_formats_audiences_and_cases_are_refused() throws IOException {
        send("seized-slide-pins");

        assertThat(report("customer", "image/png").statusCode()).isEqualTo(406);
        assertThat(report("inspector", "text/html").statusCode()).isEqualTo(422);
        assertThat(report("inspector", "text/html").contentType()).startsWith("application/problem+json");
        assertThat(report("inspector", "text/html").jsonPath().getString("causes[0].text"))
                .isEqualTo("'inspector' is no audience; expected is customer or workshop.");
        assertThat(given().accept("text/html").get("/v1/cases/RP-none/report").statusCode())
                .isEqualTo(404);
    }

    @Test
    void a_page_loads_nothing_and_runs_nothing() throws IOException {
        send("seized-slide-pins");

        Response page = report("customer", "text/html");

        assertThat(page.header("Content-Security-Policy")).isEqualTo("default-src 'none'; style-src 'unsafe-inline'");
        assertThat(page.asString()).doesNotContain("<script", "<link", "<img", "src=", "/desk/");
    }

    @Test
    void what_a_sender_wrote_stays_text() throws IOException {
        send("oiled-lining-and-seized-cable-found", "Corvane", "<b onclick='x()'>Cor&vane</b>");

        String page = html("customer");

        assertThat(page)
                .contains("&lt;b onclick=&#39;x()&#39;&gt;Cor&amp;vane&lt;/b&gt;")
                .doesNotContain("<b onclick");
        assertThat(pages(pdf("customer")).get(0)).contains("<b onclick='x()'>Cor&vane</b>");
    }

    @Test
    void a_required_line_that_is_declined_says_what_that_means() throws IOException {
        send("oiled-lining-and-seized-cable-found");
        decide("renew-shoe-set-axle-2", "refused");

        String sheet = text(html("customer"));

        assertThat(sheet)
                .contains("You have declined required work")
                .contains("Renew the brake shoes, rear axle. Contaminated linings cannot be trusted")
                .contains("What this means: The brakes can fail or pull the vehicle aside. Do not drive it;")
                .contains("declined by you");
        assertThat(text(html("workshop"))).contains("Required work that the customer has declined");
    }

    @Test
    void without_a_price_list_nobody_is_told_a_price() throws IOException {
        send("seized-slide-pins");

        assertThat(text(html("customer")))
                .contains("The workshop has no price list for this yet.")
                .doesNotContain("GBP");
    }

    @Test
    void a_price_that_the_list_lacks_is_called_missing() throws IOException {
        putPrices("{\"shoe-set\": 46.80}", "{\"renew shoe-set\": 1.4, \"renew drum\": 0.3}");
        send("oiled-lining-and-seized-cable-found");

        String sheet = text(html("customer"));

        // 46.80 + 1.4 h x 72.00 = 147.60; with 20 % 177.12
        assertThat(sheet)
                .contains("Ask for these prices before you decide.")
                .doesNotContain("What of this was done comes on top.")
                .doesNotContain("what was put off or declined is not counted")
                .contains("177.12 GBP")
                .contains("price missing")
                .contains("Not in these sums, because the price is not known yet:")
                .contains("Parts: hub seal; ")
                .contains("Renew the hub seal")
                .doesNotContain("0.00 GBP");
    }

    @Test
    void prices_that_lack_of_agreed_work_and_of_what_waits_are_told_apart() throws IOException {
        putPrices("{\"drum\": 30.00}", "{\"renew shoe-set\": 1.4}");
        send("oiled-lining-and-seized-cable-found");
        decide("renew-shoe-set-axle-2", "agreed");

        assertThat(text(html("customer")))
                .contains("Ask for these prices before you decide. What of this was done comes on top.");
    }

    @Test
    void a_sum_says_that_it_leaves_out_what_was_put_off() throws IOException {
        putPrices("{\"shoe-set\": 46.80}", "{\"renew shoe-set\": 1.4}");
        send("oiled-lining-and-seized-cable-found");
        decide("renew-hardware-kit-axle-2", "later");

        assertThat(text(html("customer")))
                .contains("put off by you")
                .contains("With the recommended work as well (what was put off or declined is not counted)");
    }

    @Test
    void a_number_and_its_unit_stay_on_one_line() throws IOException {
        send("choked-hose-holds-a-wheel");

        assertThat(html("workshop")).contains("7\u00a0mm to 11\u00a0mm", "1\u00a0×\u00a0");
    }

    @Test
    void the_wheels_before_and_after_are_drawn_and_told() throws IOException {
        send("oiled-lining-and-seized-cable-repaired");

        String page = html("customer");

        assertThat(page).contains("<desc id=\"wheels-2-service-desc\">left wheel 590 N on arrival; left wheel ");
        assertThat(text(page))
                .contains("590 N on arrival")
                .contains("N after the work")
                .contains("The repair is proven");
    }

    @Test
    void a_failed_re_test_shows_the_figures_that_failed_and_how_the_wheels_let_go() throws IOException {
        String stages = "hose-then-pipe-until-both-let-go-together/";
        send(stages + "given-01-found.json");
        send(stages + "given-02-re-test-lets-go-late.json");

        String failed = text(html("customer"));

        assertThat(failed)
                .contains("The fault is not cured.")
                .contains("What was to be cured is as it was.")
                .doesNotContain("keeps to its limit")
                .contains("delay of letting go behind the other wheel 2.72 s 2.72 s aim at most 0.2 s aim missed")
                .contains("test on arrival")
                .contains("test after the work");

        send(stages + "given-03-pipe-found-kinked.json");
        send(stages + "given-04-both-let-go-together.json");

        assertThat(text(html("customer")))
                .contains("The repair is proven")
                .contains("delay of letting go behind the other wheel 2.72 s 0 s aim at most 0.2 s kept")
                .doesNotContain("missed");
        assertThat(text(html("workshop")))
                .contains("left wheel: highest force 1030 N 1014 N")
                .doesNotContain("1014 N kept");
    }

    @Test
    void a_finished_repair_asks_for_no_decision_and_calls_no_done_work_missing() throws IOException {
        send("oiled-lining-and-seized-cable-repaired");

        assertThat(text(html("workshop")))
                .contains("Beyond the limits before the work")
                .contains("Causes before the work")
                .containsPattern("Cautions 1 and 2")
                .doesNotContain("(read)", "(judgement)", "Caution 1, 2", "Required work is not decided yet.")
                .doesNotContain("Nothing that was tested or looked at speaks against use.");
        assertThat(text(html("customer")))
                .contains("All of it is done.")
                .doesNotContain("Without it the fault is not cured.", "Saying no to required work");
    }

    @ParameterizedTest
    @ValueSource(strings = {"oval-drum-reads-as-imbalance", "seized-slide-pins", "choked-hose-holds-a-wheel"})
    void a_sheet_explains_the_words_that_are_on_it_and_no_others(String scenario) throws IOException {
        send(scenario);

        String sheet = text(html("customer"));
        int end = sheet.indexOf("Words on this sheet");
        String body = sheet.substring(0, end).toLowerCase(Locale.ROOT);
        String words = sheet.substring(end);

        Map.of("lining", "lining the friction", "drum", "brake drum the turning", "disc", "brake disc the turning")
                .forEach((word, explained) -> assertThat(words.contains(explained))
                        .as(word)
                        .isEqualTo(Pattern.compile("\\b" + word + "s?\\b")
                                .matcher(body)
                                .find()));
    }

    @Test
    void what_is_suspected_alike_of_both_wheels_is_said_to_a_customer_once() throws IOException {
        sendFirst("oval-drum-reads-as-imbalance");

        String sheet = text(html("customer"));

        assertThat(sheet)
                .contains("Front axle, left or right wheel: suspected, about ")
                .contains(" in 100 each, not proven.")
                .doesNotContain("Front axle, left wheel", "Front axle, right wheel");
        assertThat(text(html("workshop"))).contains("Front axle, left wheel");
    }

    @Test
    void questions_name_entries_and_codes_in_words() throws IOException {
        send("heavy-vehicle-gets-figures-only");

        assertThat(text(html("workshop")))
                .contains("Axle 3 from the front: The roller test of ")
                .contains("Have it recorded for the right axle")
                .doesNotContain("mb-2250", "/sites/");
    }

    /** Japan, secondary source: the force of an axle in N per kg has a least value, not a greatest one. */
    @Test
    void a_least_value_is_called_one_whatever_the_figure() throws IOException {
        send("oiled-lining-and-seized-cable-repaired", "gb-annual", "jp-inspection");

        assertThat(text(html("workshop")))
                .containsPattern("effort per mass [0-9.]+ N/kg [0-9.]+ N/kg at least [0-9.]+ N/kg")
                .doesNotContainPattern("effort per mass [0-9.]+ N/kg [0-9.]+ N/kg at most");
    }

    @Test
    void the_workshop_reads_what_is_open_and_what_closes_it() throws IOException {
        send("oiled-lining-and-seized-cable-found");
        send("trace-of-an-oval-drum");

        assertThat(text(html("workshop")))
                .contains("Open questions")
                .containsPattern("Rear axle[^:]*: .* (Look|Make|Turn|Measure|Repeat|Record)");
    }

    @Test
    void the_workshop_gets_plan_cautions_tools_boxes_and_traces() throws IOException {
        send("trace-of-an-oval-drum");
        assertThat(text(html("workshop")))
                .contains("Look at next")
                .containsOnlyOnce("Read before these looks. Local law and licensed practice come first.")
                .containsOnlyOnce("Never under a jack alone.")
                .containsOnlyOnce("Treat all brake dust as harmful.")
                .contains("Force over time, rear axle, foot brake, test on arrival")
                .contains("right wheel: force left after the brake was let go, above free rolling -2 N");

        String other = html("workshop", send("oiled-lining-and-seized-cable-found"));

        assertThat(text(other))
                .doesNotContain("Look at next", "Read before these looks.")
                .contains("Plan of work Required work is not decided yet. Begin only after the decision on it.")
                .contains("Braking force against weight 6 %; at least 16 % is required, and less than 8 % counts as"
                        + " dangerous.")
                .contains("Torque and settings come from the data of the vehicle only.")
                .contains("Tools: chocks; rated stands")
                .contains("Never under a jack alone.")
                .contains("Stop: ")
                .contains("After step 1");
        assertThat(other).contains("<span class=\"box\"></span>");
    }

    @Test
    void no_personal_data_stands_on_a_sheet() throws IOException {
        send(
                "seized-slide-pins",
                "\"category\"",
                "\"registration\":\"KX51 PQR\",\"vin\":\"WCVP0RTAL00012345\",\"category\"");

        for (String audience : List.of("customer", "workshop")) {
            assertThat(html(audience)).doesNotContain("KX51 PQR", "WCVP0RTAL00012345", "registration");
        }
    }

    /** Only the vehicle of a scenario. */
    private void sendFirst(String scenario) throws IOException {
        JsonNode first = Json.read(Files.readString(SCENARIOS.resolve(scenario).resolve("given.json")))
                .get(0);
        ((ObjectNode) first)
                .put("subject", reference)
                .put("id", reference + first.path("id").asText());
        ((ObjectNode) first.path("data")).put("site", site);
        given().config(utf8())
                .contentType("application/cloudevents+json")
                .body(Json.text(first))
                .post("/v1/events")
                .then()
                .statusCode(200);
    }

    private String send(String scenario) throws IOException {
        return send(scenario, "Corvane", "Corvane");
    }

    /** Sends a scenario as a case of its own, with one text exchanged for another; answers its reference. */
    private String send(String scenario, String text, String instead) throws IOException {
        String subject =
                scenario.equals("oiled-lining-and-seized-cable-found") && caseExists() ? reference + "b" : reference;
        Path file = SCENARIOS.resolve(scenario);
        String given = Files.readString(Files.isDirectory(file) ? file.resolve("given.json") : file);
        ArrayNode events = (ArrayNode) Json.mapper().readTree(given);
        for (JsonNode event : events) {
            ((ObjectNode) event)
                    .put("subject", subject)
                    .put("id", subject + event.path("id").asText());
            JsonNode data = event.path("data");
            if (data.has("site")) {
                ((ObjectNode) data).put("site", site);
            }
        }
        String quoted = Json.text(instead);
        String body = Json.text(events)
                .replace(text, instead.startsWith("\"") ? instead : quoted.substring(1, quoted.length() - 1));
        Response answer = given().config(utf8())
                .contentType("application/cloudevents-batch+json")
                .body(body)
                .post("/v1/events");
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        return subject;
    }

    private boolean caseExists() {
        return given().get("/v1/cases/" + reference).statusCode() == 200;
    }

    private void decide(String line, String decision) {
        String event = "{\"specversion\": \"1.0\", \"type\": \"org.axlecause.scope.decided.v1\", \"source\":"
                + " \"/sites/dock-road\", \"id\": \"" + reference + "-decided\", \"subject\": \"" + reference
                + "\", \"time\": \"2026-03-02T12:00:00Z\", \"data\": {\"decisions\": [{\"id\": \"" + line
                + "\", \"decision\": \"" + decision + "\", \"by\": \"customer\"}]}}";
        assertThat(given().config(utf8())
                        .contentType("application/cloudevents+json")
                        .body(event)
                        .post("/v1/events")
                        .statusCode())
                .isEqualTo(200);
    }

    private void putPrices(String parts, String hours) {
        assertThat(given().contentType(ContentType.JSON.withCharset("UTF-8"))
                        .body("{\"hourlyRate\": 72.00, \"taxPercent\": 20, \"parts\": " + parts + ", \"hours\": "
                                + hours + "}")
                        .put("/v1/price-lists/" + site)
                        .statusCode())
                .isEqualTo(200);
    }

    private Response report(String audience, String accept) {
        return given().accept(accept).queryParam("audience", audience).get("/v1/cases/" + reference + "/report");
    }

    private String html(String audience) {
        return html(audience, reference);
    }

    private static String html(String audience, String subject) {
        Response page =
                given().accept("text/html").queryParam("audience", audience).get("/v1/cases/" + subject + "/report");
        assertThat(page.statusCode()).as(page.asString()).isEqualTo(200);
        return page.asString();
    }

    private byte[] pdf(String audience) {
        Response sheet = report(audience, "application/pdf");
        assertThat(sheet.statusCode()).isEqualTo(200);
        return sheet.asByteArray();
    }

    private static List<String> pages(byte[] pdf) throws IOException {
        List<String> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper();
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(stripper.getText(document).replaceAll("\\s+", " "));
            }
        }
        return pages;
    }

    /** Every paragraph, cell and heading of the page that print shows too. */
    private static List<String> paragraphs(String html) {
        List<String> paragraphs = new ArrayList<>();
        String body = html.substring(html.indexOf("<body>"))
                .replaceAll("(?s)<svg.*?</svg>", "")
                .replaceAll("<p class=\"advice[^>]*>.*?</p>", "");
        for (String piece : body.split("</?(p|td|th|h1|h2|h3|li|div|br)\\b[^>]*>")) {
            String text = text(piece);
            if (!text.isEmpty()) {
                paragraphs.add(text);
            }
        }
        assertThat(paragraphs).hasSizeGreaterThan(20);
        return paragraphs;
    }

    private static String text(String html) {
        return html.replaceAll("(?s)<style>.*?</style>", "")
                .replaceAll("<br />|</td>", " ")
                .replaceAll("<[^>]+>", "")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&#39;", "'")
                .replace("&quot;", "\"")
                .replace("&amp;", "&")
                .replaceAll("[\\s\u00a0]+", " ")
                .strip();
    }

    /** Lines break elsewhere on paper, so blanks don't count. */
    private static String squeezed(String text) {
        return text.replaceAll("[\\s\u00a0]+", "");
    }

    private static RestAssuredConfig utf8() {
        return RestAssured.config()
                .encoderConfig(EncoderConfig.encoderConfig()
                        .appendDefaultContentCharsetToContentTypeIfUndefined(false)
                        .defaultContentCharset("UTF-8")
                        .encodeContentTypeAs("application/cloudevents-batch+json", ContentType.TEXT)
                        .encodeContentTypeAs("application/cloudevents+json", ContentType.TEXT));
    }
}
