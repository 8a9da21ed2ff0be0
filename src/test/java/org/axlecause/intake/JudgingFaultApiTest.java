package org.axlecause.intake;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.intake.Messages.BATCH;
import static org.axlecause.intake.Messages.STRUCTURED;
import static org.axlecause.intake.Messages.aFinding;
import static org.axlecause.intake.Messages.aReference;
import static org.axlecause.intake.Messages.anId;
import static org.axlecause.intake.Messages.batch;
import static org.axlecause.intake.Messages.post;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.Set;
import org.axlecause.intake.FaultyJudge.Mood;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

@QuarkusTest
@TestProfile(JudgingFaultApiTest.WithFaultyJudge.class)
class JudgingFaultApiTest {

    @Inject
    FaultyJudge judge;

    /** The judge faults when told to. */
    public static class WithFaultyJudge implements QuarkusTestProfile {
        @Override
        public Set<Class<?>> getEnabledAlternatives() {
            return Set.of(FaultyJudge.class);
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Mood.class,
            names = {"FAULTS", "BREAKS_THE_TRANSACTION"})
    void an_event_stays_where_judging_faults_and_the_last_judgement_with_it(Mood mood) {
        String reference = aReference();
        judge.mood = Mood.WELL;
        post(STRUCTURED, aFinding(reference, anId()));
        String tag = given().get("/v1/cases/" + reference).header("ETag");
        String late = anId();

        judge.mood = mood;
        Response receipt = post(STRUCTURED, aFinding(reference, late));
        Response failed = given().get("/v1/cases/" + reference);
        judge.mood = Mood.WELL;
        Response again = post(STRUCTURED, aFinding(reference, late));
        Response judged = given().post("/v1/cases/" + reference + "/judgements");

        assertThat(receipt.statusCode()).isEqualTo(200);
        assertThat(receipt.jsonPath().getString("standing")).isEqualTo("accepted");
        assertThat(receipt.jsonPath().getString("judging")).isEqualTo("failed");
        assertThat(failed.asString())
                .isEqualTo("{\"judging\":\"failed\",\"reference\":\"" + reference
                        + "\",\"status\":\"open\",\"version\":1}");
        assertThat(failed.header("ETag")).isNotEqualTo(tag);
        assertThat(again.jsonPath().getString("standing")).isEqualTo("duplicate");
        assertThat(judged.asString())
                .isEqualTo("{\"reference\":\"" + reference + "\",\"status\":\"open\",\"version\":2}");
    }

    @Test
    void a_first_event_that_cannot_be_judged_is_kept_too() {
        String reference = aReference();

        judge.mood = Mood.FAULTS;
        Response receipts = post(BATCH, batch(aFinding(reference, anId()), aFinding(reference, anId())));
        Response failed = given().get("/v1/cases/" + reference);
        Response stillFaulty = given().post("/v1/cases/" + reference + "/judgements");
        judge.mood = Mood.WELL;

        assertThat(receipts.statusCode()).isEqualTo(200);
        assertThat(receipts.jsonPath().getList("judging")).containsExactly("failed", "failed");
        assertThat(failed.asString())
                .isEqualTo("{\"reference\":\"" + reference + "\",\"status\":\"open\",\"judging\":\"failed\"}");
        assertThat(stillFaulty.statusCode()).isEqualTo(500);
        assertThat(given().get("/v1/cases/" + reference + "/events").jsonPath().getList("events.position"))
                .containsExactly(2, 1);
    }

    @Test
    void an_event_is_asked_for_again_where_the_database_went_away_in_judging_and_nothing_of_it_stays() {
        String reference = aReference();
        String event = aFinding(reference, anId());

        judge.mood = Mood.LOSES_THE_DATABASE;
        Response away = post(STRUCTURED, event);
        Response nothing = given().get("/v1/cases/" + reference);
        judge.mood = Mood.WELL;
        Response again = post(STRUCTURED, event);

        assertThat(away.statusCode()).isEqualTo(503);
        assertThat(away.header("Retry-After")).isNotNull();
        assertThat(nothing.statusCode()).isEqualTo(404);
        assertThat(again.statusCode()).isEqualTo(200);
        assertThat(again.jsonPath().getString("standing")).isEqualTo("accepted");
        assertThat(again.jsonPath().getString("judging")).isNull();
    }
}
