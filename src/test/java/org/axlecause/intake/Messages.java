package org.axlecause.intake;

import static io.restassured.RestAssured.given;

import io.restassured.RestAssured;
import io.restassured.config.EncoderConfig;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.shared.TenantTransaction;

/** Messages that a workshop sends, for tests over HTTP. */
final class Messages {

    static final String STRUCTURED = "application/cloudevents+json";
    static final String BATCH = "application/cloudevents-batch+json";

    private Messages() {}

    static String aReference() {
        return "QS-" + UUID.randomUUID().toString().substring(0, 13);
    }

    static String anId() {
        return UUID.randomUUID().toString();
    }

    static String aFinding(String reference, String id) {
        return event(
                "finding.recorded",
                reference,
                id,
                "{\"stage\": \"as-found\", \"component\": \"hub-seal\", \"condition\": \"leaking\", \"axle\": 2,"
                        + " \"side\": \"right\"}");
    }

    static String aPresentation(String reference, String id) {
        return aPresentation(reference, id, "quay-street", "");
    }

    static String aPresentation(String reference, String id, String site, String vehicleMembers) {
        return event(
                "vehicle.presented",
                reference,
                id,
                "{\"site\": \"" + site + "\", \"reason\": \"failed-inspection\", \"vehicle\": {" + vehicleMembers
                        + "\"category\": \"N1\", \"axles\": [{\"number\": 1, \"brake\": \"disc-floating\"}, {\"number\": 2,"
                        + " \"brake\": \"drum-simplex\", \"parkingBrake\": \"cable-on-service-shoes\"}]}}");
    }

    static String aRollerTest(String reference, String id) {
        return event(
                "roller-test.recorded",
                reference,
                id,
                "{\"stage\": \"arrival\", \"brake\": \"service\", \"axles\": [{\"number\": 2, \"left\": {\"peak\":"
                        + " {\"value\": 1610, \"unit\": \"N\"}}, \"right\": {\"peak\": {\"value\": 590, \"unit\": \"N\"}}}]}");
    }

    static String anImpossibleTest(String reference, String id) {
        return aRollerTest(reference, id).replace("590", "-590");
    }

    static String event(String type, String reference, String id, String data) {
        return "{\"specversion\": \"1.0\", \"type\": \"org.axlecause." + type + ".v1\", \"source\":"
                + " \"/sites/quay-street\", \"id\": \"" + id + "\", \"subject\": \"" + reference
                + "\", \"time\": \"2026-03-02T08:15:00Z\", \"data\": " + data + "}";
    }

    static String batch(String... events) {
        return Arrays.stream(events).collect(Collectors.joining(",", "[", "]"));
    }

    static Response post(String contentType, String body) {
        return request().contentType(contentType).body(body).post("/v1/events");
    }

    /** A request whose content type is sent as it is written, in UTF-8. */
    static RequestSpecification request() {
        return given().config(RestAssured.config()
                .encoderConfig(EncoderConfig.encoderConfig()
                        .appendDefaultContentCharsetToContentTypeIfUndefined(false)
                        .defaultContentCharset(StandardCharsets.UTF_8)
                        .encodeContentTypeAs("application/cloudevents+avro", ContentType.TEXT)));
    }

    /** The sites that the messages name, in the demo tenant. */
    static void makeSites(TenantTransaction transaction, SiteStore sites) {
        transaction.run("demo", () -> {
            for (String site : List.of("quay-street", "mill-lane")) {
                if (sites.find(site).isEmpty()) {
                    sites.save(new Site(site, site, null, ZoneId.of("Europe/London"), "GBP", "gb-annual", 1));
                }
            }
        });
    }
}
