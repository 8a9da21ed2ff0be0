package org.axlecause.statistics;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.UUID;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Seven repairs of one axle that a final test has proved, and what became of their vehicles. */
@QuarkusTest
@TestProfile(WithKeys.class)
class RepairedChainTest {

    private static final Path REPAIRED =
            Path.of("src/test/resources/scenarios/oiled-lining-and-seized-cable-repaired/given.json");

    @Inject
    MakeKey makeKey;

    @Inject
    CountAnew countAnew;

    @Inject
    FoldDeltas foldDeltas;

    @Inject
    RenewKept renewKept;

    @Inject
    TenantTransaction transaction;

    private final String tenant = Chain.aTenant();
    private Chain chain;
    private String admin = "";

    @BeforeEach
    void seven_repairs_and_what_came_after() throws IOException {
        admin = makeKey.make(tenant, new KeyTerms(UUID.randomUUID().toString(), Role.ADMIN, null, null), "test");
        chain = new Chain(admin);
        chain.site("quay-street", "coast");
        chain.site("mill-bridge", "hills");
        repaired("R-1", 0, "AA11 AAA");
        repaired("R-2", 0, "BB22 BBB");
        repaired("R-3", 0, "CC33 CCC");
        repaired("R-4", -400, "DD44 DDD");
        repaired("R-5", 0, "EE55 EEE");
        repaired("R-6", 0, "");
        repaired("R-7", 0, "");
        later("back-within-the-year", "2026-06-10T08:00:00Z", "AA11 AAA", "")
                .closed("refused", "")
                .send();
        chain.aCase("back-about-the-front", "quay-street", "2026-06-10T08:00:00Z")
                .registered("BB22 BBB")
                .presented()
                .closed("refused", "{\"code\": \"disc-corroded\", \"axle\": 1, \"side\": \"left\"}")
                .send();
        later("back-and-still-open", "2026-06-10T08:00:00Z", "CC33 CCC", "").send();
        later("back-after-the-year", "2026-06-10T08:00:00Z", "DD44 DDD", "")
                .closed("refused", "")
                .send();
        later("back-before-the-repair", "2025-12-10T08:00:00Z", "EE55 EEE", "")
                .closed("refused", "")
                .send();
        later("names-the-case", "2026-05-10T08:00:00Z", "", "R-6")
                .closed("refused", "")
                .send();
    }

    @Test
    void a_return_is_a_later_ended_case_of_the_vehicle_about_the_axle_within_a_year() {
        JsonPath answer = ask("returns");

        assertThat(answer.getInt("groups[0].repairs")).isEqualTo(7);
        assertThat(answer.getInt("groups[0].returns")).isEqualTo(2);
        assertThat(answer.getList("groups[0].curve.day", Integer.class)).hasSizeGreaterThanOrEqualTo(2);
        assertThat(answer.getDouble("groups[0].curve[1].withoutReturn")).isCloseTo(0.714285714286, within(1e-6));
        assertThat(answer.getString("definitions.find { it.word == 'return' }.means"))
                .contains("Vehicles that went elsewhere are not seen");
    }

    @Test
    void a_curve_can_be_told_by_its_end_alone() {
        JsonPath whole = ask("returns?by=item&curve=whole");
        JsonPath end = ask("returns?by=item&curve=end");

        assertThat(end.getList("groups.collect { it.curve.size() }", Integer.class))
                .containsOnly(1);
        assertThat(end.getList("groups.repairs")).isEqualTo(whole.getList("groups.repairs"));
        assertThat(end.getList("groups.collect { it.curve[-1] }"))
                .isEqualTo(whole.getList("groups.collect { it.curve[-1] }"));
        assertThat(ask("returns?by=item").getList("groups")).isEqualTo(whole.getList("groups"));
        assertThat(chain.as(admin)
                        .get("/v1/statistics/returns?curve=ends")
                        .then()
                        .statusCode(422)
                        .extract()
                        .jsonPath()
                        .getString("causes[0].text"))
                .contains("such as end, whole");
    }

    @Test
    void a_return_after_an_answer_is_in_the_next_one_folded_or_not() {
        foldDeltas.fold();
        assertThat(ask("returns?by=item").getInt("groups.find { it.group.item == 'shoe-set' }.returns"))
                .isEqualTo(2);

        later("back-again", "2026-06-11T08:00:00Z", "", "R-7")
                .closed("refused", "")
                .send();

        assertThat(ask("returns?by=item").getInt("groups.find { it.group.item == 'shoe-set' }.returns"))
                .isEqualTo(3);
        foldDeltas.fold();
        assertThat(renewKept.renew()).isPositive();
        assertThat(renewKept.renew()).isZero();
        assertThat(ask("returns?by=item").getInt("groups.find { it.group.item == 'shoe-set' }.returns"))
                .isEqualTo(3);
        assertThat(ask("returns?by=item").getInt("groups.find { it.group.item == 'shoe-set' }.repairs"))
                .isEqualTo(7);
    }

    @Test
    void a_return_counts_once_its_case_has_ended_and_no_more_when_the_closing_is_withdrawn() {
        Chain.OneCase open = later("back-and-still-open", "2026-06-11T08:00:00Z", "CC33 CCC", "");
        open.forget().closed("refused", "").send();
        assertThat(ask("returns").getInt("groups[0].returns")).isEqualTo(3);

        open.withdraw(open.idOf("case.closed")).send();

        assertThat(ask("returns").getInt("groups[0].returns")).isEqualTo(2);
    }

    @Test
    void curves_are_told_apart_by_item_and_chosen_by_it() {
        JsonPath byItem = ask("returns?by=item");

        assertThat(byItem.getList("groups.group.item", String.class)).contains("shoe-set");
        assertThat(ask("returns?item=shoe-set").getInt("groups[0].repairs")).isEqualTo(7);
        assertThat(ask("returns?item=disc").getList("groups")).isEmpty();
    }

    @Test
    void repairs_tell_lines_decisions_and_cures() {
        JsonPath answer = ask("repairs");

        assertThat(answer.getInt("cases")).isEqualTo(12);
        assertThat(answer.getInt("results[0].tested.count")).isEqualTo(7);
        assertThat(answer.getInt("results[0].verified.count")).isEqualTo(7);
        assertThat(answer.getInt("results[0].firstTimeCure.count")).isEqualTo(7);
        assertThat(answer.getInt("results[0].official.of")).isZero();
        assertThat(answer.getInt("lines.find { it.item == 'shoe-set' && it.action == 'renew' }.cases.count"))
                .isGreaterThanOrEqualTo(7);
        assertThat(answer.getInt("lines.find { it.item == 'shoe-set' && it.action == 'renew' }.agreed.count"))
                .isEqualTo(7);

        chain.aCase("R-1", "quay-street", "2026-07-01T08:00:00Z")
                .official("passed")
                .send();
        chain.aCase("R-2", "quay-street", "2026-07-01T08:00:00Z")
                .official("failed")
                .send();

        JsonPath later = ask("repairs");
        assertThat(later.getInt("results[0].official.of")).isEqualTo(2);
        assertThat(later.getInt("cases")).isEqualTo(12);
        foldDeltas.fold();
        assertThat(ask("repairs").getList("lines").toString())
                .isEqualTo(later.getList("lines").toString());
        assertThat(countAnew.differences(tenant)).isZero();
    }

    @Test
    void sites_and_checks_tell_how_many_stand_behind_them() {
        JsonPath sites = ask("sites");
        assertThat(sites.getInt("all.of")).isEqualTo(7);
        assertThat(sites.getInt("all.count")).isZero();
        assertThat(sites.getList("sites.site")).isEqualTo(List.of("quay-street"));
        assertThat(ask("sites?measure=undetermined").getInt("all.of")).isEqualTo(12);

        JsonPath checks = ask("checks");
        assertThat(checks.getInt("checks.find { it.check == 'lining-look' }.made"))
                .isGreaterThanOrEqualTo(7);
        assertThat(checks.getInt("calibration.find { it.moment == 'arrival' }.neverConfirmed.of"))
                .isEqualTo(7);
        assertThat(checks.getInt("calibration.find { it.moment == 'arrival' }.probabilities"))
                .isPositive();
    }

    private Chain.OneCase later(String reference, String time, String registration, String previousCase) {
        Chain.OneCase later = chain.aCase(reference, "quay-street", time);
        if (!registration.isEmpty()) {
            later.registered(registration);
        }
        return later.presented(previousCase).leaking("left");
    }

    private void repaired(String reference, int days, String registration) throws IOException {
        ArrayNode events = (ArrayNode) Json.read(Files.readString(REPAIRED));
        for (JsonNode event : events) {
            ObjectNode changed = (ObjectNode) event;
            changed.put("id", reference + changed.path("id").asText());
            changed.put("subject", reference);
            changed.put(
                    "time",
                    OffsetDateTime.parse(changed.path("time").asText())
                            .plusDays(days)
                            .format(DateTimeFormatter.ISO_OFFSET_DATE_TIME));
            JsonNode vehicle = changed.path("data").path("vehicle");
            if (vehicle.isObject() && !registration.isEmpty()) {
                ((ObjectNode) vehicle).put("registration", registration);
            }
        }
        given().header("Authorization", "Bearer " + admin)
                .contentType("application/cloudevents-batch+json; charset=UTF-8")
                .body(events.toString())
                .post("/v1/events")
                .then()
                .statusCode(200);
        chain.aCase(reference, "quay-street", "2026-03-02T08:00:00Z").hasStatus("verified");
    }

    private JsonPath ask(String question) {
        Response answer = chain.as(admin).get("/v1/statistics/" + question);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        return answer.jsonPath();
    }
}
