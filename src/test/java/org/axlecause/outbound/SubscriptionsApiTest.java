package org.axlecause.outbound;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.standardwebhooks.Webhook;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.outbound.ManageSubscriptions.WithSecret;
import org.axlecause.outbound.Receiver.Behaviour;
import org.axlecause.outbound.Receiver.Message;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
@TestProfile(VirtualTime.class)
class SubscriptionsApiTest {

    private static final Path REPAIRED =
            Path.of("src/test/resources/scenarios/oiled-lining-and-seized-cable-repaired/given.json");
    private static final int LARGEST_MESSAGE = 20_000;

    @Inject
    VirtualClock clock;

    @Inject
    Outbound outbound;

    @Inject
    SendDeliveries sendDeliveries;

    private Receiver receiver;

    @BeforeEach
    void open() throws IOException {
        clock.set(VirtualClock.START);
        receiver = Receiver.open();
        json("{\"name\": \"Quay Street\", \"timeZone\": \"Europe/London\", \"currency\": \"GBP\","
                        + " \"regime\": \"gb-annual\"}")
                .put("/v1/sites/quay-street")
                .then()
                .statusCode(200);
    }

    @AfterEach
    void close() {
        receiver.close();
        for (String id : given().get("/v1/subscriptions").jsonPath().getList("id", String.class)) {
            given().header("If-Match", "*")
                    .delete("/v1/subscriptions/" + id)
                    .then()
                    .statusCode(204);
        }
    }

    @Test
    void a_case_from_presentation_to_proof_is_told_step_by_step_without_personal_data() throws Exception {
        Response made = make(receiver.address());
        String id = made.jsonPath().getString("id");
        JsonNode events = Json.mapper().readTree(Files.readString(REPAIRED));
        String reference = "OUT-" + id.substring(0, 8);

        for (JsonNode event : events) {
            String own = ((ObjectNode) event)
                    .put("subject", reference)
                    .put("id", reference + event.path("id").asText())
                    .toString();
            post(own).then().statusCode(200);
            post(own).then().statusCode(200);
        }
        sendDeliveries.send("demo", id);

        List<Message> messages = receiver.messages();
        List<JsonNode> bodies =
                messages.stream().map(SubscriptionsApiTest::tree).toList();
        assertThat(bodies.stream().filter(body -> body.path("type").asText().equals(Outbound.JUDGED)))
                .hasSize(events.size());
        assertThat(bodies.stream()
                        .filter(body -> body.path("type").asText().equals(Outbound.VERIFIED))
                        .map(body -> body.path("data").path("status").asText()))
                .containsExactly("verified");
        assertThat(bodies.stream().map(body -> body.path("data").path("version").asInt()))
                .isSorted();
        assertThat(bodies.get(0).path("data").path("changed").toString()).contains("\"vehicle\"", "\"timeline\"");
        assertThat(bodies)
                .allSatisfy(body -> assertThat(body.fieldNames())
                        .toIterable()
                        .containsExactly(
                                "specversion",
                                "id",
                                "source",
                                "type",
                                "subject",
                                "time",
                                "datacontenttype",
                                "partitionkey",
                                "data"));
        for (Message message : messages) {
            assertThat(message.body().getBytes(StandardCharsets.UTF_8)).hasSizeLessThan(LARGEST_MESSAGE);
            assertThat(message.headers().get("webhook-signature"))
                    .isEqualTo(new Webhook(made.jsonPath().getString("secret"))
                            .sign(message.id(), VirtualClock.START.getEpochSecond(), message.body()));
        }
    }

    @Test
    void an_event_that_is_refused_is_told_to_nobody() {
        String id = make(receiver.address()).jsonPath().getString("id");

        post("{\"specversion\": \"1.0\", \"type\": \"org.axlecause.finding.recorded.v1\", \"source\": \"/s\", \"id\": \""
                        + id
                        + "\", \"subject\": \"REFUSED-1\", \"time\": \"2026-03-02T09:40:00Z\", \"data\": {\"stage\": \"never\"}}")
                .then()
                .statusCode(422);

        assertThat(given().get("/v1/subscriptions/" + id + "/deliveries").asString())
                .isEqualTo("{\"deliveries\":[]}");
    }

    @Test
    void a_subscription_is_made_read_changed_and_deleted_by_its_version() {
        Response made = make(receiver.address());
        String path = made.header("Location").substring(made.header("Location").indexOf("/v1/"));
        Response read = given().get(path);
        Response unchanged =
                given().header("If-None-Match", read.header("ETag")).get(path);
        String stopped = wanted(receiver.address()).replace("}", ", \"state\": \"stopped\"}");
        Response blind = json(stopped).put(path);
        Response changed = json(stopped).header("If-Match", read.header("ETag")).put(path);
        Response late = json(stopped).header("If-Match", read.header("ETag")).put(path);
        Response weak =
                json(stopped).header("If-Match", "W/" + changed.header("ETag")).put(path);
        Response blindlyDeleted = given().delete(path);
        Response deleted = given().header("If-Match", changed.header("ETag")).delete(path);

        assertThat(made.statusCode()).isEqualTo(201);
        assertThat(made.header("Cache-Control").split(", ")).contains("no-store");
        assertThat(made.jsonPath().getString("secret")).startsWith("whsec_");
        assertThat(read.asString()).doesNotContain("whsec_").doesNotContain("secret");
        assertThat(read.jsonPath().getString("state")).isEqualTo("active");
        assertThat(read.jsonPath().getString("createdBy")).isEqualTo("open");
        assertThat(unchanged.statusCode()).isEqualTo(304);
        assertThat(blind.statusCode()).isEqualTo(428);
        assertThat(changed.jsonPath().getString("state")).isEqualTo("stopped");
        assertThat(changed.header("ETag")).isNotEqualTo(read.header("ETag"));
        assertThat(late.statusCode()).isEqualTo(412);
        assertThat(late.jsonPath().getString("code")).isEqualTo("precondition-failed");
        assertThat(weak.statusCode()).isEqualTo(412);
        assertThat(blindlyDeleted.statusCode()).isEqualTo(428);
        assertThat(deleted.statusCode()).isEqualTo(204);
        assertThat(given().get(path).statusCode()).isEqualTo(404);
    }

    @Test
    void a_stopped_subscription_is_told_nothing_and_an_active_one_goes_on() {
        String id = make(receiver.address()).jsonPath().getString("id");
        String path = "/v1/subscriptions/" + id;
        json(wanted(receiver.address()).replace("}", ", \"state\": \"stopped\"}"))
                .header("If-Match", "*")
                .put(path)
                .then()
                .statusCode(200);
        presented("STOPPED-" + id);
        Response replayWhileStopped = json("{\"from\": \"2026-03-02T00:00:00Z\", \"to\": \"2026-03-03T00:00:00Z\"}")
                .post(path + "/replays");
        json(wanted(receiver.address()))
                .header("If-Match", "*")
                .put(path)
                .then()
                .statusCode(200);
        presented("GOES-ON-" + id);

        sendDeliveries.send("demo", id);

        assertThat(receiver.messages().stream()
                        .map(message -> tree(message).path("subject").asText()))
                .containsExactly("GOES-ON-" + id);
        assertThat(replayWhileStopped.statusCode()).isEqualTo(409);
    }

    @Test
    void failed_deliveries_are_listed_page_by_page_and_replayed() {
        receiver.behave(Behaviour.status(410));
        String id = make(receiver.address()).jsonPath().getString("id");
        String path = "/v1/subscriptions/" + id;
        Stream.of("A", "B", "C").forEach(name -> presented(name + "-" + id));
        sendDeliveries.send("demo", id);
        receiver.behave(Behaviour.status(200));

        Response first = given().get(path + "/deliveries?state=failed&limit=2");
        String next = first.header("Link").replaceAll("^<[^/]*//[^/]*(.*)>; rel=\"next\"$", "$1");
        Response second = given().urlEncodingEnabled(false).get(next);
        json(wanted(receiver.address()))
                .header("If-Match", "*")
                .put(path)
                .then()
                .statusCode(200);
        Response one = json("{\"event\": \"" + first.jsonPath().getString("deliveries[0].event") + "\"}")
                .post(path + "/replays");
        sendDeliveries.send("demo", id);

        assertThat(first.jsonPath().getList("deliveries.link"))
                .containsExactly("/v1/cases/C-" + id, "/v1/cases/B-" + id);
        assertThat(first.jsonPath().getString("deliveries[0].outcome")).isEqualTo("HTTP 410");
        assertThat(second.jsonPath().getList("deliveries.link")).containsExactly("/v1/cases/A-" + id);
        assertThat(second.header("Link")).isNull();
        assertThat(one.statusCode()).isEqualTo(202);
        assertThat(one.jsonPath().getInt("deliveries")).isEqualTo(1);
        assertThat(given().get(path + "/deliveries?state=delivered").jsonPath().getList("deliveries.link"))
                .containsExactly("/v1/cases/C-" + id);
    }

    @Test
    void a_new_secret_replaces_the_former_after_a_day() {
        Response made = make(receiver.address());
        String path = "/v1/subscriptions/" + made.jsonPath().getString("id");

        Response rotated = given().post(path + "/secrets");

        assertThat(rotated.statusCode()).isEqualTo(201);
        assertThat(rotated.jsonPath().getString("secret"))
                .startsWith("whsec_")
                .isNotEqualTo(made.jsonPath().getString("secret"));
        assertThat(given().get(path).jsonPath().getString("formerSecretUntil")).isEqualTo("2026-03-03T12:00:00Z");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{\"description\": \"d\", \"types\": [\"org.axlecause.case.judged.v1\"]} | /address",
                "{\"address\": \"ftp://example.org\", \"description\": \"d\", \"types\": [\"org.axlecause.case.judged.v1\"]} | /address",
                "{\"address\": \"http://127.0.0.1/\", \"types\": [\"org.axlecause.case.judged.v1\"]} | /description",
                "{\"address\": \"http://127.0.0.1/\", \"description\": \"d\"} | /types",
                "{\"address\": \"http://127.0.0.1/\", \"description\": \"d\", \"types\": [\"x\"]} | /types/0",
                "{\"address\": \"http://127.0.0.1/\", \"description\": \"d\", \"types\": [\"org.axlecause.case.judged.v1\"], \"sites\": [\"nowhere\"]} | /sites/0",
                "{\"address\": \"http://127.0.0.1/\", \"description\": \"d\", \"types\": [\"org.axlecause.case.judged.v1\"], \"state\": \"gone\"} | /state"
            })
    void what_is_wrong_with_a_subscription_is_told_by_its_pointer(String body, String pointer) {
        Response refused = json(body).post("/v1/subscriptions");

        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.jsonPath().getList("causes.pointer")).containsExactly(pointer);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{} | 422",
                "{\"event\": \"00000000-0000-0000-0000-000000000001\", \"from\": \"2026-03-02T00:00:00Z\"} | 422",
                "{\"from\": \"2026-03-02T00:00:00Z\", \"to\": \"2026-03-02T00:00:00Z\"} | 422",
                "{\"event\": \"00000000-0000-0000-0000-000000000001\"} | 404"
            })
    void a_replay_names_one_event_or_a_range(String body, int status) {
        String id = make(receiver.address()).jsonPath().getString("id");

        assertThat(json(body).post("/v1/subscriptions/" + id + "/replays").statusCode())
                .isEqualTo(status);
    }

    @ParameterizedTest
    @CsvSource({"state=lost, /state", "limit=0, /limit", "limit=201, /limit", "cursor=x, /cursor"})
    void wrong_parameters_of_a_list_are_named(String query, String pointer) {
        String id = make(receiver.address()).jsonPath().getString("id");

        Response refused = given().get("/v1/subscriptions/" + id + "/deliveries?" + query);

        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.jsonPath().getList("causes.pointer")).containsExactly(pointer);
    }

    @Test
    void another_tenants_subscription_is_not_there() {
        Actor other = outbound.aTenant();
        WithSecret theirs = outbound.subscribe(other, receiver.address());
        String path = "/v1/subscriptions/" + theirs.subscription().id();

        assertThat(given().get(path).statusCode()).isEqualTo(404);
        assertThat(given().get(path + "/deliveries").statusCode()).isEqualTo(404);
        assertThat(given().post(path + "/secrets").statusCode()).isEqualTo(404);
        assertThat(json("{\"event\": \"00000000-0000-0000-0000-000000000001\"}")
                        .post(path + "/replays")
                        .statusCode())
                .isEqualTo(404);
        assertThat(json(wanted(receiver.address()))
                        .header("If-Match", "*")
                        .put(path)
                        .statusCode())
                .isEqualTo(404);
        assertThat(given().header("If-Match", "*").delete(path).statusCode()).isEqualTo(404);
        assertThat(given().get("/v1/subscriptions").jsonPath().getList("id"))
                .doesNotContain(theirs.subscription().id());
        presented("WALL-" + theirs.subscription().id());
        assertThat(outbound.deliveries(other, theirs)).isEmpty();
    }

    private static Response make(String address) {
        return json(wanted(address)).post("/v1/subscriptions");
    }

    private static String wanted(String address) {
        return "{\"address\": \"" + address + "\", \"description\": \"of a test\", \"types\": [\"" + Outbound.JUDGED
                + "\", \"" + Outbound.VERIFIED + "\"]}";
    }

    private static RequestSpecification json(String body) {
        return given().contentType("application/json; charset=UTF-8").body(body);
    }

    private static Response post(String event) {
        return given().contentType("application/cloudevents+json; charset=UTF-8")
                .body(event)
                .post("/v1/events");
    }

    private static void presented(String reference) {
        post("{\"specversion\": \"1.0\", \"type\": \"org.axlecause.vehicle.presented.v1\", \"source\": \"/s\", \"id\": \""
                        + reference + "\", \"subject\": \"" + reference
                        + "\", \"time\": \"2026-03-02T09:40:00Z\", \"data\": {\"site\": \"quay-street\", \"reason\":"
                        + " \"complaint\", \"vehicle\": {\"category\": \"N1\", \"axles\": [{\"number\": 1, \"brake\":"
                        + " \"disc-floating\"}]}}}")
                .then()
                .statusCode(200);
    }

    private static JsonNode tree(Message message) {
        return Json.read(message.body());
    }
}
