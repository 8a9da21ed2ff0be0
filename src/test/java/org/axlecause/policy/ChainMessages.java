package org.axlecause.policy;

import static io.restassured.RestAssured.given;

import io.restassured.specification.RequestSpecification;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.UUID;
import org.axlecause.shared.Json;

/** What the sites of a chain send, for tests over HTTP with keys. */
public final class ChainMessages {

    private static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-03-02T08:15:00Z");

    private ChainMessages() {}

    /** A request with a key. */
    public static RequestSpecification as(String key) {
        return given().header("Authorization", "Bearer " + key).contentType("application/json; charset=UTF-8");
    }

    /** A van of eleven years with drums at the rear, at a site. */
    public static String presentation(String reference, String site, OffsetDateTime time) {
        return event(
                "vehicle.presented",
                reference,
                time,
                "{\"site\": \"" + site
                        + "\", \"reason\": \"failed-inspection\", \"vehicle\": {\"category\": \"N1\", \"firstUsed\":"
                        + " \"2015-09-14\", \"axles\": [{\"number\": 1, \"brake\": \"disc-floating\"}, {\"number\": 2, \"brake\":"
                        + " \"drum-simplex\", \"parkingBrake\": \"cable-on-service-shoes\"}]}}");
    }

    public static String presentation(String reference, String site) {
        return presentation(reference, site, MORNING);
    }

    /** Its left rear wheel cylinder leaks. */
    public static String leak(String reference, OffsetDateTime time) {
        return event(
                "finding.recorded",
                reference,
                time,
                "{\"stage\": \"as-found\", \"component\": \"wheel-cylinder\","
                        + " \"condition\": \"leaking\", \"axle\": 2, \"side\": \"left\"}");
    }

    public static String leak(String reference) {
        return leak(reference, MORNING);
    }

    public static String event(String type, String reference, String data) {
        return event(type, reference, MORNING, data);
    }

    /** An event with an id of its own. */
    public static String event(String type, String reference, OffsetDateTime time, String data) {
        return Json.mapper()
                .createObjectNode()
                .put("specversion", "1.0")
                .put("type", "org.axlecause." + type + ".v1")
                .put("source", "/sites/quay-street")
                .put("id", UUID.randomUUID().toString())
                .put("subject", reference)
                .put("time", time.format(DateTimeFormatter.ISO_OFFSET_DATE_TIME))
                .set("data", Json.read(data))
                .toString();
    }
}
