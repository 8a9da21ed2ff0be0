package org.axlecause.intake;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.intake.Messages.STRUCTURED;
import static org.axlecause.intake.Messages.aFinding;
import static org.axlecause.intake.Messages.post;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.axlecause.intake.FaultyJudge.Mood;
import org.junit.jupiter.api.Test;

/** Of a hundred events one can't be read, one makes a rule fault and one makes rules go on for ever. */
@QuarkusTest
@TestProfile(JudgingFaultApiTest.WithFaultyJudge.class)
class PoisonTest {

    private static final int HUNDREDS = 3;
    private static final int SENDERS = 4;

    @Inject
    FaultyJudge judge;

    private final String prefix = "POISON-" + UUID.randomUUID().toString().substring(0, 8) + "-";

    @Test
    void poisoned_events_harm_no_other_and_are_judged_once_they_can_be() throws Exception {
        List<String> poisoned = new ArrayList<>();
        for (int hundred = 0; hundred < HUNDREDS; hundred++) {
            judge.moodFor.put(reference(100 * hundred + 2), Mood.FAULTS);
            judge.moodFor.put(reference(100 * hundred + 3), Mood.RUNS_FOR_EVER);
            poisoned.add(reference(100 * hundred + 2));
            poisoned.add(reference(100 * hundred + 3));
        }

        List<Response> answers = sentByAll();
        List<String> failed = failed();
        judge.moodFor.clear();
        poisoned.forEach(reference ->
                given().post("/v1/cases/" + reference + "/judgements").then().statusCode(200));

        for (int number = 0; number < answers.size(); number++) {
            Response answer = answers.get(number);
            boolean unreadable = number % 100 == 1;
            assertThat(answer.statusCode()).as("event %d", number).isEqualTo(unreadable ? 400 : 200);
            if (!unreadable) {
                assertThat(answer.jsonPath().getString("judging"))
                        .as("event %d", number)
                        .isEqualTo(poisoned.contains(reference(number)) ? "failed" : null);
            }
        }
        assertThat(failed).containsExactlyInAnyOrderElementsOf(poisoned);
        assertThat(failed()).isEmpty();
        assertThat(given().get("/v1/cases/" + poisoned.get(0) + "/events")
                        .jsonPath()
                        .getList("events.event.id"))
                .containsExactly(poisoned.get(0));
        given().get("/v1/cases/" + reference(1)).then().statusCode(404);
    }

    private List<Response> sentByAll() throws Exception {
        ExecutorService senders = Executors.newFixedThreadPool(SENDERS);
        List<Future<Response>> sent = new ArrayList<>();
        for (int number = 0; number < 100 * HUNDREDS; number++) {
            String event = aFinding(reference(number), reference(number));
            String body = number % 100 == 1 ? event.substring(1) : event;
            sent.add(senders.submit(() -> post(STRUCTURED, body)));
        }
        List<Response> answers = new ArrayList<>();
        for (Future<Response> answer : sent) {
            answers.add(answer.get());
        }
        senders.shutdown();
        return answers;
    }

    private String reference(int number) {
        return prefix + number;
    }

    private List<String> failed() {
        return given().queryParam("judging", "failed")
                .queryParam("q", prefix)
                .get("/v1/cases")
                .jsonPath()
                .getList("cases.reference");
    }
}
