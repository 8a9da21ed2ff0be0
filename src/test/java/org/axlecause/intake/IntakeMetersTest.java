package org.axlecause.intake;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.Test;

/** Source of the text form: OpenMetrics 1.0 and its predecessor, the exposition format of Prometheus. */
@QuarkusTest
class IntakeMetersTest {

    private static final Pattern ASKED_FOR = Pattern.compile("[a-z][a-z_]+(?=\\{)");
    private static final Pattern MEASURED = Pattern.compile("(?m)^[a-z_]+");
    private static final String EVENT = """
            {"specversion": "1.0", "type": "org.axlecause.vehicle.presented.v1", "source": "/sites/meter-street",
             "id": "presented", "subject": "METER-1", "time": "2026-03-02T08:15:00Z",
             "data": {"site": "%s", "reason": "complaint", "regime": "gb-annual",
                      "vehicle": {"category": "N1", "make": "Corvane", "model": "Portal",
                                  "axles": [{"number": 1, "steered": true, "brake": "disc-floating"},
                                            {"number": 2, "brake": "drum-simplex"}]}}}
            """;

    @Inject
    MeterRegistry registry;

    @Test
    void every_event_is_counted_by_what_became_of_it_and_judging_is_timed() {
        putSite();
        double accepted = count("accepted");
        double duplicate = count("duplicate");
        double refused = count("refused");
        long judged = judged();

        post("meter-street");
        post("meter-street");
        post("no-such-street");

        assertThat(count("accepted") - accepted).isEqualTo(1);
        assertThat(count("duplicate") - duplicate).isEqualTo(1);
        assertThat(count("refused") - refused).isEqualTo(1);
        assertThat(judged() - judged).isEqualTo(1);
    }

    @Test
    void the_dashboard_asks_for_what_is_measured_and_nothing_measured_names_a_tenant() throws Exception {
        putSite();
        post("meter-street");
        JsonNode dashboard =
                Json.mapper().readTree(Path.of("deploy/dashboard.json").toFile());
        List<String> questions = dashboard.path("panels").findValuesAsText("expr");

        String measured = given().get("/q/metrics").asString();

        assertThat(questions).hasSizeGreaterThanOrEqualTo(8);
        assertThat(names(MEASURED, measured)).containsAll(names(ASKED_FOR, String.join("\n", questions)));
        assertThat(measured.lines().filter(line -> line.startsWith("axlecause_")))
                .isNotEmpty()
                .allMatch(line -> line.matches("axlecause_[a-z_]+(\\{(standing|outcome)=\"[a-z]+\"[,}].*| [-0-9.E]+)"));
    }

    private static Set<String> names(Pattern pattern, String text) {
        return pattern.matcher(text).results().map(MatchResult::group).collect(Collectors.toCollection(TreeSet::new));
    }

    private double count(String standing) {
        return registry.counter("axlecause.events", "standing", standing).count();
    }

    private long judged() {
        return registry.timer("axlecause.judging", "outcome", "done").count();
    }

    private static void putSite() {
        given().contentType("application/json")
                .body("""
                        {"name": "Meter Street", "timeZone": "Europe/London", "currency": "GBP", "regime": "gb-annual"}
                        """)
                .put("/v1/sites/meter-street")
                .then()
                .statusCode(200);
    }

    private static void post(String site) {
        given().contentType("application/cloudevents+json;charset=UTF-8")
                .body(EVENT.formatted(site))
                .post("/v1/events");
    }
}
