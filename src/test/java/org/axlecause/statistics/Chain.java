package org.axlecause.statistics;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.axlecause.policy.ChainMessages;

/** What a chain sends about a case, for tests of statistics over HTTP with keys. */
public final class Chain {

    private final String admin;

    public Chain(String admin) {
        this.admin = admin;
    }

    public RequestSpecification as(String key) {
        return ChainMessages.as(key);
    }

    public void site(String site, String region) {
        site(site, "Site", region);
    }

    public void site(String site, String name, String region) {
        as(admin)
                .body("{\"name\": \"" + name + "\", \"region\": \"" + region
                        + "\", \"timeZone\": \"Europe/London\", \"currency\": \"GBP\", \"regime\": \"gb-annual\"}")
                .put("/v1/sites/" + site)
                .then()
                .statusCode(200);
    }

    public OneCase aCase(String reference, String site, String time) {
        return new OneCase(reference, site, OffsetDateTime.parse(time));
    }

    /** The events of one case, sent together; each comes a minute after the one before. */
    public final class OneCase {

        private final String reference;
        private final String site;
        private final List<String> events = new ArrayList<>();
        private OffsetDateTime time;
        private String make = "Corvane";
        private String model = "Portal";
        private String firstUsed = "2015-09-14";
        private int kilometres = 148200;
        private String more = "";

        OneCase(String reference, String site, OffsetDateTime time) {
            this.reference = reference;
            this.site = site;
            this.time = time;
        }

        public OneCase vehicle(String newMake, String newModel, String newFirstUsed, int newKilometres) {
            make = newMake;
            model = newModel;
            firstUsed = newFirstUsed;
            kilometres = newKilometres;
            return this;
        }

        OneCase registered(String registration) {
            more += ", \"registration\": \"" + registration + "\"";
            return this;
        }

        public OneCase presented() {
            return presented("");
        }

        OneCase presented(String previousCase) {
            String previous = previousCase.isEmpty() ? "" : "\"previousCase\": \"" + previousCase + "\", ";
            return event(
                    "vehicle.presented",
                    "{\"site\": \"" + site + "\", \"reason\": \"failed-inspection\", " + previous
                            + "\"vehicle\": {\"category\": \"N1\", \"make\": \"" + make + "\", \"model\": \"" + model
                            + "\", \"firstUsed\": \"" + firstUsed + "\", \"odometer\": {\"value\": " + kilometres
                            + ", \"unit\": \"km\"}" + more
                            + ", \"axles\": [{\"number\": 1, \"brake\": \"disc-floating\"}, {\"number\": 2, \"brake\":"
                            + " \"drum-simplex\", \"parkingBrake\": \"cable-on-service-shoes\"}]}}");
        }

        OneCase found(String stage, String component, String condition, String side, String check) {
            String made = check.isEmpty() ? "" : ", \"check\": \"" + check + "\"";
            return event(
                    "finding.recorded",
                    "{\"stage\": \"" + stage + "\", \"component\": \"" + component + "\", \"condition\": \"" + condition
                            + "\", \"axle\": 2, \"side\": \"" + side + "\"" + made + "}");
        }

        /** The arrival test of the rear axle, with how far the force of each wheel swings within a turn, in percent. */
        OneCase arrivalTest(int left, int right) {
            return event(
                    "roller-test.recorded",
                    "{\"stage\": \"arrival\", \"brake\": \"service\", \"surface\": \"dry\", \"tester\": {\"accuracy\":"
                            + " {\"value\": 2, \"unit\": \"%\", \"of\": \"reading\"}, \"speed\": {\"value\": 5, \"unit\":"
                            + " \"km/h\"}}, \"axles\": [{\"number\": 2, \"load\": {\"value\": 560, \"unit\": \"kg\"}, "
                            + wheel("left", left) + ", " + wheel("right", right) + "}]}");
        }

        private static String wheel(String side, int swing) {
            return "\"" + side
                    + "\": {\"peak\": {\"value\": 1500, \"unit\": \"N\"}, \"drag\": {\"value\": 60, \"unit\":"
                    + " \"N\"}, \"fluctuation\": {\"value\": " + swing + ", \"unit\": \"%\"}, \"locked\": false}";
        }

        public OneCase leaking(String side) {
            return found("as-found", "wheel-cylinder", "leaking", side, "boot-edge-look");
        }

        public OneCase closed(String outcome, String confirmedCauses) {
            return event(
                    "case.closed",
                    "{\"outcome\": \"" + outcome + "\", \"confirmedCauses\": [" + confirmedCauses + "]}");
        }

        OneCase official(String result) {
            return event("inspection.resulted", "{\"result\": \"" + result + "\", \"items\": []}");
        }

        OneCase event(String type, String data) {
            events.add(ChainMessages.event(type, reference, time, data));
            time = time.plusMinutes(1);
            return this;
        }

        /** Sends what has come together and begins anew. */
        public OneCase send() {
            send("[" + String.join(",", events) + "]");
            events.clear();
            return this;
        }

        /** Forgets what has come together and isn't sent. */
        OneCase forget() {
            events.clear();
            return this;
        }

        /** Withdraws an event that was sent. */
        OneCase withdraw(String id) {
            return event(
                    "entry.withdrawn",
                    "{\"source\": \"/sites/quay-street\", \"id\": \"" + id + "\", \"reason\": \"mistaken\"}");
        }

        /** Id of the event of that type that was sent last. */
        String idOf(String type) {
            List<String> ids = as(admin)
                    .get("/v1/cases/" + reference)
                    .jsonPath()
                    .getList("timeline.findAll { it.type.contains('" + type + "') }.id");
            return ids.get(ids.size() - 1);
        }

        private void send(String batch) {
            given().header("Authorization", "Bearer " + admin)
                    .contentType("application/cloudevents-batch+json; charset=UTF-8")
                    .body(batch)
                    .post("/v1/events")
                    .then()
                    .statusCode(200);
        }

        Response document() {
            return as(admin).get("/v1/cases/" + reference);
        }

        void hasStatus(String status) {
            assertThat(document().jsonPath().getString("status"))
                    .as(document().asString())
                    .isEqualTo(status);
        }
    }

    public static String aTenant() {
        return "stat-" + UUID.randomUUID().toString().substring(0, 8);
    }
}
