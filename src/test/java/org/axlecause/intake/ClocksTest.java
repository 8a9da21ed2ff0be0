package org.axlecause.intake;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.intake.Messages.STRUCTURED;
import static org.axlecause.intake.Messages.aFinding;
import static org.axlecause.intake.Messages.aPresentation;
import static org.axlecause.intake.Messages.aReference;
import static org.axlecause.intake.Messages.aRollerTest;
import static org.axlecause.intake.Messages.anId;
import static org.axlecause.intake.Messages.post;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.axlecause.access.SiteStore;
import org.axlecause.outbound.VirtualClock;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Clocks that jump, and senders whose clock is wrong; the clock here says 2026-03-02T12:00:00Z. */
@QuarkusTest
@TestProfile(ClocksTest.WithVirtualClock.class)
class ClocksTest {

    @Inject
    VirtualClock clock;

    @Inject
    TenantTransaction transaction;

    @Inject
    SiteStore sites;

    /** Time passes only when a test says so. */
    public static class WithVirtualClock implements QuarkusTestProfile {
        @Override
        public Set<Class<?>> getEnabledAlternatives() {
            return Set.of(VirtualClock.class);
        }
    }

    @BeforeEach
    void it_is_noon() {
        clock.set(VirtualClock.START);
        Messages.makeSites(transaction, sites);
    }

    @Test
    void a_clock_that_jumps_between_the_events_changes_nothing_of_the_case() {
        String steady = aReference();
        String jumping = aReference();

        for (Duration jump : List.of(Duration.ZERO, Duration.ofHours(-1), Duration.ofHours(2))) {
            for (String reference : List.of(steady, jumping)) {
                clock.set(VirtualClock.START.plus(reference.equals(jumping) ? jump : Duration.ZERO));
                assertThat(send(reference, jump).statusCode()).isEqualTo(200);
            }
        }

        assertThat(document(jumping)).isEqualTo(document(steady));
        assertThat(given().get("/v1/cases/" + jumping + "/events").jsonPath().getList("events.position"))
                .containsExactly(3, 2, 1);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "1970-01-01T00:00:00Z, false",
        "2026-03-02T12:05:00Z, false",
        "2026-03-02T12:05:01Z, true",
        "2100-01-01T00:00:00Z, true"
    })
    void an_event_counts_at_the_time_that_it_states_and_one_of_the_future_is_flagged(String time, boolean flagged) {
        String reference = aReference();
        post(STRUCTURED, aPresentation(reference, anId()));

        Response receipt = post(STRUCTURED, aFinding(reference, anId()).replace("2026-03-02T08:15:00Z", time));

        assertThat(receipt.statusCode()).isEqualTo(200);
        assertThat(receipt.jsonPath().getString("standing")).isEqualTo("accepted");
        List<String> warnings = receipt.jsonPath().getList("warnings.pointer");
        assertThat(warnings == null ? List.of() : warnings).isEqualTo(flagged ? List.of("/time") : List.of());
        assertThat(given().get("/v1/cases/" + reference + "/events").jsonPath().getList("events.event.time"))
                .contains(time);
        assertThat(document(reference)).doesNotContain("PT-", "P-");
    }

    private static Response send(String reference, Duration jump) {
        String event = jump.isZero()
                ? aPresentation(reference, reference + "-1")
                : jump.isNegative() ? aFinding(reference, reference + "-2") : aRollerTest(reference, reference + "-3");
        return post(STRUCTURED, event);
    }

    /** The document with the reference left out, which is all that may differ. */
    private static String document(String reference) {
        return given().get("/v1/cases/" + reference).asString().replace(reference, "CASE");
    }
}
