package org.axlecause.intake;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.intake.Messages.BATCH;
import static org.axlecause.intake.Messages.STRUCTURED;
import static org.axlecause.intake.Messages.aFinding;
import static org.axlecause.intake.Messages.aPresentation;
import static org.axlecause.intake.Messages.aReference;
import static org.axlecause.intake.Messages.aRollerTest;
import static org.axlecause.intake.Messages.anId;
import static org.axlecause.intake.Messages.anImpossibleTest;
import static org.axlecause.intake.Messages.batch;
import static org.axlecause.intake.Messages.post;
import static org.axlecause.intake.Messages.request;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.axlecause.access.Actor;
import org.axlecause.access.Role;
import org.axlecause.access.SiteStore;
import org.axlecause.casefile.EventStore;
import org.axlecause.casefile.FiguresStore;
import org.axlecause.casefile.PersonalValue;
import org.axlecause.casefile.StoredEvent;
import org.axlecause.casefile.VehicleIdentityStore;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class EventsApiTest {

    private static final String TENANT = "demo";

    @Inject
    TenantTransaction transaction;

    @Inject
    SiteStore sites;

    @Inject
    EventStore events;

    @Inject
    FiguresStore figures;

    @Inject
    VehicleIdentityStore identities;

    @Inject
    AcceptEvents acceptEvents;

    @Inject
    Reception reception;

    @BeforeEach
    void the_sites_exist() {
        Messages.makeSites(transaction, sites);
    }

    @Test
    void a_single_event_is_answered_with_its_receipt() {
        String reference = aReference();
        String id = anId();

        Response answer = post(STRUCTURED, aFinding(reference, id));

        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.contentType()).startsWith("application/json");
        assertThat(answer.asString())
                .isEqualTo("{\"source\":\"/sites/quay-street\",\"id\":\"" + id
                        + "\",\"standing\":\"accepted\",\"case\":\"/v1/cases/" + reference + "\"}");
        assertThat(history(reference)).singleElement().satisfies(stored -> {
            assertThat(stored.id()).isEqualTo(new EntryId("/sites/quay-street", id));
            assertThat(stored.actor()).isEqualTo("open");
        });
    }

    @Test
    void the_same_event_again_is_a_duplicate_however_it_is_written() {
        String reference = aReference();
        String id = anId();
        post(STRUCTURED, aRollerTest(reference, id));

        Response again = post(
                STRUCTURED,
                aRollerTest(reference, id)
                        .replace("1610", "1610.0")
                        .replace("08:15:00Z", "09:15:00+01:00")
                        .replace("\"data\"", "\"traceparent\": \"00-1\", \"data\""));

        assertThat(again.statusCode()).isEqualTo(200);
        assertThat(again.jsonPath().getString("standing")).isEqualTo("duplicate");
        assertThat(history(reference)).hasSize(1);
    }

    @Test
    void the_same_identity_with_other_content_is_a_conflict() {
        String reference = aReference();
        String id = anId();
        post(STRUCTURED, aFinding(reference, id));

        Response other = post(STRUCTURED, aFinding(reference, id).replace("right", "left"));
        Response elsewhere = post(STRUCTURED, aFinding(aReference(), id));

        assertThat(other.statusCode()).isEqualTo(409);
        assertThat(other.contentType()).startsWith("application/problem+json");
        assertThat(other.jsonPath().getString("code")).isEqualTo("identity-conflict");
        assertThat(elsewhere.statusCode()).isEqualTo(409);
        assertThat(history(reference)).hasSize(1);
    }

    @Test
    void a_binary_event_is_taken() {
        String reference = aReference();

        Response answer = request()
                .contentType("application/json")
                .header("ce-specversion", "1.0")
                .header("ce-type", "org.axlecause.obstacle.met.v1")
                .header("ce-source", "/sites/quay-street")
                .header("ce-id", anId())
                .header("ce-subject", reference)
                .header("ce-time", "2026-03-02T10:00:00Z")
                .header("ce-remark", "%C3%A4")
                .body("{\"component\": \"bleed-nipple\", \"condition\": \"sheared\"}")
                .post("/v1/events");

        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(history(reference))
                .singleElement()
                .satisfies(stored -> assertThat(stored.body()).contains("\"remark\":\"\u00e4\""));
    }

    @Test
    void a_batch_is_answered_in_its_order_and_a_bad_event_does_not_sink_the_others() {
        String one = aReference();
        String two = aReference();
        String first = anId();

        Response answer = post(
                BATCH,
                batch(
                        aFinding(two, first),
                        anImpossibleTest(one, anId()),
                        aPresentation(one, anId()),
                        aFinding(two, first),
                        "{}"));

        assertThat(answer.statusCode()).isEqualTo(207);
        assertThat(answer.jsonPath().getList("standing"))
                .containsExactly("accepted", "refused", "accepted", "duplicate", "refused");
        assertThat(answer.jsonPath().getString("[1].problem.causes[0].pointer")).isEqualTo("/data/axles/0/right/peak");
        assertThat(answer.jsonPath().getInt("[1].problem.status")).isEqualTo(422);
        assertThat(answer.jsonPath().getInt("[4].problem.status")).isEqualTo(400);
        assertThat(history(one)).hasSize(1);
        assertThat(history(two)).hasSize(1);
    }

    @Test
    void a_batch_of_which_nothing_is_stored_is_422_and_an_empty_one_is_fine() {
        Response refused = post(BATCH, batch(anImpossibleTest(aReference(), anId()), "{}"));
        Response empty = post(BATCH, "[]");

        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.jsonPath().getList("standing")).containsExactly("refused", "refused");
        assertThat(empty.statusCode()).isEqualTo(200);
        assertThat(empty.asString()).isEqualTo("[]");
    }

    @ParameterizedTest(name = "{0} {1}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '#',
            value = {
                "1610 | -3 | 422 | /data/axles/0/left/peak",
                "1610 | NaN | 400 | /data/axles/0/left/peak/value",
                "1610 | 10000000 | 422 | /data/axles/0/left/peak",
                "1610 | 1e400 | 422 | /data/axles/0/left/peak/value",
                "\"N\" | \"kg\" | 422 | /data/axles/0/left/peak",
                "\"stage\" | \"stage\": \"final\", \"stage\" | 400 | /data/stage",
                "arrival | ar\\u0000 | 422 | /data/stage",
                "arrival | \\ud800 | 422 | /data/stage",
                "roller-test | brake-test | 422 | /type",
                "QS- | QS/ | 400 | /subject",
                "\"1.0\" | \"2.0\" | 400 | /specversion"
            })
    void a_bad_event_is_refused_with_its_place_and_nothing_is_stored(
            String right, String wrong, int status, String pointer) {
        String reference = aReference();

        Response answer = post(STRUCTURED, aRollerTest(reference, anId()).replace(right, wrong));

        assertThat(answer.statusCode()).isEqualTo(status);
        assertThat(answer.contentType()).startsWith("application/problem+json");
        assertThat(answer.jsonPath().getList("causes.pointer", String.class)).contains(pointer);
        assertThat(answer.jsonPath().getString("instance")).isEqualTo("/v1/events");
        assertThat(history(reference)).isEmpty();
        assertThat(given().get("/v1/cases/" + reference).statusCode()).isEqualTo(404);
    }

    @Test
    void a_format_that_is_not_read_is_415_and_too_many_events_are_413() {
        assertThat(post("application/xml", "<a/>").statusCode()).isEqualTo(415);
        assertThat(post("application/cloudevents+avro", "{}").statusCode()).isEqualTo(415);
        assertThat(post(BATCH, "[" + "{},".repeat(500) + "{}]").statusCode()).isEqualTo(413);
    }

    @Test
    void an_unknown_site_is_refused() {
        Response answer = post(STRUCTURED, aPresentation(aReference(), anId(), "no-such-site", ""));

        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.jsonPath().getString("code")).isEqualTo("unknown-site");
        assertThat(answer.jsonPath().getString("causes[0].pointer")).isEqualTo("/data/site");
    }

    @Test
    void the_representation_is_answered_where_it_is_preferred() {
        String reference = aReference();
        String presentation = aPresentation(reference, anId());

        Response answer = request()
                .contentType(BATCH)
                .header("Prefer", "respond-async, return=representation")
                .body(batch(presentation, aRollerTest(reference, anId())))
                .post("/v1/events");
        Response minimal = request()
                .contentType(STRUCTURED)
                .header("Prefer", "return=minimal")
                .body(presentation)
                .post("/v1/events");

        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.header("Preference-Applied")).isEqualTo("return=representation");
        assertThat(answer.jsonPath().getString("reference")).isEqualTo(reference);
        assertThat(answer.asString())
                .isEqualTo(given().get("/v1/cases/" + reference).asString());
        assertThat(minimal.jsonPath().getString("standing")).isEqualTo("duplicate");
    }

    @Test
    void personal_data_is_a_token_before_anything_is_stored() {
        String reference = aReference();
        String vehicle = "\"registration\": \"AX26 CSE\", \"vin\": \"1M8GDM9AXKP042788\", ";
        String id = anId();
        String departure = Messages.event(
                "departure.recorded",
                reference,
                anId(),
                "{\"clause\": \"twin-hydraulic-part\", \"reason\": \"renewed last month\", \"by\": \"Rowan Ames\"}");

        Response answer = post(BATCH, batch(aPresentation(reference, id, "quay-street", vehicle), departure));
        Response again = post(STRUCTURED, aPresentation(reference, id, "quay-street", vehicle));
        Response otherVehicle =
                post(STRUCTURED, aPresentation(reference, id, "quay-street", vehicle.replace("AX26", "AX27")));

        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(again.jsonPath().getString("standing")).isEqualTo("duplicate");
        assertThat(otherVehicle.statusCode()).isEqualTo(409);
        assertThat(history(reference))
                .extracting(StoredEvent::body)
                .noneMatch(
                        body -> body.contains("AX26") || body.contains("1M8GDM9AXKP042788") || body.contains("Rowan"));
        String token = JsonPath.from(history(reference).stream()
                        .filter(stored -> stored.id().id().equals(id))
                        .findFirst()
                        .orElseThrow()
                        .body())
                .getString("data.vehicle.registration");
        assertThat(transaction.call(TENANT, () -> identities.original(token).map(PersonalValue::text)))
                .contains("AX26 CSE");
    }

    @Test
    void personal_data_is_shown_on_demand_and_erased_for_good_while_the_history_stays() {
        String reference = aReference();
        post(
                STRUCTURED,
                aPresentation(
                        reference,
                        anId(),
                        "quay-street",
                        "\"registration\": \"AX26 ERA\", \"vin\": \"1M8GDM9AXKP042788\", "));
        String path = "/v1/cases/" + reference + "/personal-data";
        String before = request().get("/v1/cases/" + reference + "/events").asString();

        Response shown = request().get(path);
        assertThat(shown.header("Cache-Control")).contains("no-store");
        assertThat(shown.jsonPath().getList("value", String.class))
                .containsExactlyInAnyOrder("AX26 ERA", "1M8GDM9AXKP042788");
        assertThat(request().delete(path).statusCode()).isEqualTo(204);

        assertThat(request().get(path).jsonPath().getList("")).isEmpty();
        assertThat(request().get("/v1/cases/" + reference + "/events").asString())
                .isEqualTo(before);
        assertThat(transaction.call(TENANT, () -> events.firstBreak(reference))).isEmpty();
        assertThat(request().get("/v1/cases/nowhere/personal-data").statusCode())
                .isEqualTo(404);
    }

    @Test
    void the_figures_of_a_roller_test_are_kept_when_it_is_accepted() {
        String reference = aReference();
        String id = anId();

        post(STRUCTURED, aRollerTest(reference, id));

        assertThat(transaction.call(TENANT, () -> figures.find(reference)))
                .containsOnlyKeys(new EntryId("/sites/quay-street", id))
                .allSatisfy((test, json) ->
                        assertThat(JsonPath.from(json).getList("figures.kind")).contains("peak"));
    }

    @Test
    void one_event_sent_a_hundred_times_at_once_is_stored_once() throws InterruptedException, ExecutionException {
        String reference = aReference();
        String event = aFinding(reference, anId());
        ExecutorService senders = Executors.newFixedThreadPool(20);
        try {
            List<Callable<String>> sends = Collections.nCopies(
                    100, () -> post(STRUCTURED, event).jsonPath().getString("standing"));

            List<String> standings = new ArrayList<>();
            for (Future<String> send : senders.invokeAll(sends)) {
                standings.add(send.get());
            }

            assertThat(Collections.frequency(standings, "accepted")).isEqualTo(1);
            assertThat(Collections.frequency(standings, "duplicate")).isEqualTo(99);
            assertThat(history(reference)).hasSize(1);
        } finally {
            senders.shutdownNow();
        }
    }

    @Test
    void one_identity_sent_for_many_cases_at_once_goes_to_one_of_them()
            throws InterruptedException, ExecutionException {
        String id = anId();
        List<String> references =
                IntStream.range(0, 10).mapToObj(i -> aReference()).toList();
        ExecutorService senders = Executors.newFixedThreadPool(10);
        try {
            List<Integer> statuses = new ArrayList<>();
            for (Future<Integer> send : senders.invokeAll(references.stream()
                    .map(reference -> (Callable<Integer>)
                            () -> post(STRUCTURED, aFinding(reference, id)).statusCode())
                    .toList())) {
                statuses.add(send.get());
            }

            assertThat(Collections.frequency(statuses, 200)).isEqualTo(1);
            assertThat(Collections.frequency(statuses, 409)).isEqualTo(9);
        } finally {
            senders.shutdownNow();
        }
    }

    @Test
    void batches_that_cross_each_other_all_come_through() throws InterruptedException, ExecutionException {
        long seed = 20260302L;
        List<String> references =
                IntStream.range(0, 8).mapToObj(i -> aReference()).toList();
        List<String> sent = references.stream()
                .map(reference -> aFinding(reference, anId()))
                .toList();
        Random random = new Random(seed);
        List<Callable<Integer>> sends = IntStream.range(0, 24)
                .mapToObj(i -> {
                    List<String> shuffled = new ArrayList<>(sent);
                    Collections.shuffle(shuffled, random);
                    return (Callable<Integer>) () ->
                            post(BATCH, batch(shuffled.toArray(String[]::new))).statusCode();
                })
                .toList();
        ExecutorService senders = Executors.newFixedThreadPool(8);
        try {
            for (Future<Integer> send : senders.invokeAll(sends)) {
                assertThat(send.get()).as("seed %s", seed).isEqualTo(200);
            }
            assertThat(references)
                    .allSatisfy(reference -> assertThat(history(reference)).hasSize(1));
        } finally {
            senders.shutdownNow();
        }
    }

    @Test
    void an_actor_of_one_site_sends_for_that_site_alone() {
        Actor ofMillLane = new Actor(TENANT, "k-mill-lane", Set.of(Role.SENDER), Set.of("mill-lane"));
        String ours = aReference();
        String theirs = aReference();
        post(STRUCTURED, aPresentation(theirs, anId()));

        List<Receipt> receipts = acceptEvents.accept(
                reception
                        .message(
                                BATCH,
                                Map.of(),
                                batch(
                                                aPresentation(ours, anId(), "mill-lane", ""),
                                                aFinding(ours, anId()),
                                                aPresentation(aReference(), anId()),
                                                aFinding(theirs, anId()))
                                        .getBytes(StandardCharsets.UTF_8))
                        .attempts(),
                ofMillLane);

        assertThat(receipts)
                .extracting(Receipt::standing)
                .containsExactly(Standing.ACCEPTED, Standing.ACCEPTED, Standing.REFUSED, Standing.REFUSED);
        assertThat(receipts.get(3).problem().status()).isEqualTo(403);
        assertThat(history(theirs)).hasSize(1);
    }

    @Test
    void the_schemas_are_served() {
        Response schema = given().get("/v1/schemas/roller-test.recorded.v1");

        assertThat(schema.statusCode()).isEqualTo(200);
        assertThat(schema.jsonPath().getString("title")).isEqualTo("org.axlecause.roller-test.recorded.v1");
        assertThat(given().get("/v1/schemas/codes.json").statusCode()).isEqualTo(200);
        assertThat(given().get("/v1/schemas/nothing").statusCode()).isEqualTo(404);
    }

    private List<StoredEvent> history(String reference) {
        return transaction.call(TENANT, () -> events.history(reference));
    }
}
