package org.axlecause.intake;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.intake.Messages.STRUCTURED;
import static org.axlecause.intake.Messages.aFinding;
import static org.axlecause.intake.Messages.aPresentation;
import static org.axlecause.intake.Messages.aReference;
import static org.axlecause.intake.Messages.anId;
import static org.axlecause.intake.Messages.event;
import static org.axlecause.intake.Messages.post;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class PriceOfCaseApiTest {

    private static final String SEAL = "renew-hub-seal-axle-2-right";

    private final String site = "site-" + anId().substring(0, 8);

    @Inject
    TenantTransaction transaction;

    @Inject
    SiteStore sites;

    @BeforeEach
    void the_site_exists() {
        transaction.run(
                "demo",
                () -> sites.save(new Site(site, site, null, ZoneId.of("Europe/London"), "GBP", "gb-annual", 1)));
    }

    @Test
    void before_the_customer_decides_the_newest_list_counts() throws IOException {
        String reference = aCase();

        putList("9.40");
        post(STRUCTURED, aFinding(reference, anId()));
        assertThat(net(reference)).isEqualTo("9.40");
        putList("12.00");
        post(STRUCTURED, aFinding(reference, anId()));

        assertThat(net(reference)).isEqualTo("12.00");
        assertThat(document(reference).at("/estimate/priceList").asInt()).isEqualTo(2);
    }

    @Test
    void a_newer_list_changes_nothing_once_the_customer_has_decided() throws IOException {
        String reference = aCase();
        putList("9.40");
        decide(reference, "customer", "");

        putList("12.00");
        post(STRUCTURED, aFinding(reference, anId()));

        assertThat(net(reference)).isEqualTo("9.40");
        assertThat(document(reference).at("/estimate/priceList").asInt()).isEqualTo(1);
    }

    @Test
    void a_second_decision_keeps_the_list_of_the_first() throws IOException {
        String reference = aCase();
        putList("9.40");
        decide(reference, "customer", "");

        putList("12.00");
        decide(reference, "customer", "");

        assertThat(net(reference)).isEqualTo("9.40");
    }

    @Test
    void a_decision_of_the_workshop_fixes_no_price() throws IOException {
        String reference = aCase();
        putList("9.40");
        decide(reference, "workshop", "");

        putList("12.00");
        post(STRUCTURED, aFinding(reference, anId()));

        assertThat(net(reference)).isEqualTo("12.00");
    }

    @Test
    void the_part_that_the_customer_chose_is_the_one_that_is_charged() throws IOException {
        String reference = aCase();
        putList("9.40");

        decide(reference, "customer", ", \"alternative\": \"maker's own\"");

        assertThat(line(reference).at("/estimate/alternative").asText()).isEqualTo("maker's own");
        assertThat(net(reference)).isEqualTo("15.25");
    }

    @Test
    void what_the_list_lacks_is_named_on_the_line_and_in_the_total() throws IOException {
        String reference = aCase();
        putList("9.40");
        post(STRUCTURED, aFinding(reference, anId()));

        assertThat(texts(line(reference).at("/estimate/missing"))).containsExactly("hours renew hub-seal");
        assertThat(texts(document(reference).at("/estimate/missing")))
                .contains("hours renew hub-seal", "part shoe-set");
    }

    @Test
    void old_versions_of_a_list_stay_readable() {
        putList("9.40");
        putList("12.00");

        assertThat(read("").jsonPath().getInt("version")).isEqualTo(2);
        assertThat(read("?version=1").jsonPath().getString("parts.hub-seal")).isEqualTo("9.4");
        assertThat(read("?version=1").jsonPath().getString("alternatives.hub-seal[0].name"))
                .isEqualTo("maker's own");
        assertThat(read("?version=3").statusCode()).isEqualTo(404);
        assertThat(read("?version=3").jsonPath().getString("detail"))
                .isEqualTo("Site '" + site + "' has no version 3 of its price list.");
        assertThat(read("?version=0").statusCode()).isEqualTo(422);
    }

    @Test
    void alternatives_that_can_not_be_are_refused_with_all_causes() {
        Response answer = given().contentType(ContentType.JSON.withCharset("UTF-8"))
                .body("""
                        {"hourlyRate": 72, "taxPercent": 20, "parts": {}, "hours": {}, "alternatives": {
                          "hub-cap": [{"name": "a", "price": 1}],
                          "hub-seal": [{"name": "a", "price": 1, "currency": "QQQ"}, {"name": "a", "price": -2}]}}
                        """)
                .put("/v1/price-lists/" + site);

        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.jsonPath().getList("causes.pointer"))
                .containsExactly(
                        "/alternatives/hub-cap",
                        "/alternatives/hub-seal/0/currency",
                        "/alternatives/hub-seal/1/price",
                        "/alternatives/hub-seal");
    }

    private String aCase() {
        String reference = aReference();
        post(STRUCTURED, aPresentation(reference, anId(), site, ""));
        post(STRUCTURED, aFinding(reference, anId()));
        return reference;
    }

    private void decide(String reference, String by, String members) {
        String decided = event(
                        "scope.decided",
                        reference,
                        anId(),
                        "{\"decisions\": [{\"id\": \"" + SEAL + "\", \"decision\": \"agreed\", \"by\": \"" + by + "\""
                                + members + "}]}")
                .replace("2026-03-02T08:15:00Z", Instant.now().toString());
        assertThat(post(STRUCTURED, decided).statusCode()).isEqualTo(200);
    }

    private void putList(String priceOfSeal) {
        Response answer = given().contentType(ContentType.JSON.withCharset("UTF-8"))
                .body("{\"hourlyRate\": 72.00, \"taxPercent\": 20, \"parts\": {\"hub-seal\": " + priceOfSeal
                        + "}, \"hours\": {}, \"alternatives\": {\"hub-seal\": [{\"name\": \"maker's own\", \"price\":"
                        + " 15.25}]}}")
                .put("/v1/price-lists/" + site);
        assertThat(answer.statusCode()).isEqualTo(200);
    }

    private Response read(String query) {
        return given().get("/v1/price-lists/" + site + query);
    }

    private static String net(String reference) throws IOException {
        return line(reference).at("/estimate/net/amount").asText();
    }

    private static JsonNode line(String reference) throws IOException {
        for (JsonNode line : document(reference).path("scope")) {
            if (line.path("id").asText().equals(SEAL)) {
                return line;
            }
        }
        throw new AssertionError("No line " + SEAL);
    }

    private static JsonNode document(String reference) throws IOException {
        return Json.mapper().readTree(given().get("/v1/cases/" + reference).asString());
    }

    private static List<String> texts(JsonNode array) {
        return Json.mapper()
                .convertValue(array, Json.mapper().getTypeFactory().constructCollectionType(List.class, String.class));
    }
}
