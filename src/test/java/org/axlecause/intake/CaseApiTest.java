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
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.axlecause.access.SiteStore;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class CaseApiTest {

    private static final Pattern NEXT = Pattern.compile("<([^>]+)>; rel=\"next\"");

    @Inject
    TenantTransaction transaction;

    @Inject
    SiteStore sites;

    @BeforeEach
    void the_sites_exist() {
        Messages.makeSites(transaction, sites);
    }

    @Test
    void a_case_is_served_with_a_strong_tag_that_changes_with_it() {
        String reference = aReference();
        post(STRUCTURED, aPresentation(reference, anId()));

        Response first = given().get("/v1/cases/" + reference);
        Response same = given().header("If-None-Match", first.header("ETag")).get("/v1/cases/" + reference);
        post(STRUCTURED, aFinding(reference, anId()));
        Response changed = given().header("If-None-Match", first.header("ETag")).get("/v1/cases/" + reference);

        assertThat(first.statusCode()).isEqualTo(200);
        assertThat(first.header("ETag")).matches("\"1-[0-9a-f]{32}\"");
        assertThat(same.statusCode()).isEqualTo(304);
        assertThat(same.asString()).isEmpty();
        assertThat(same.header("ETag")).isEqualTo(first.header("ETag"));
        assertThat(changed.statusCode()).isEqualTo(200);
        assertThat(changed.header("ETag")).matches("\"2-[0-9a-f]{32}\"");
    }

    @Test
    void a_case_that_nobody_has_sent_is_not_found() {
        String reference = aReference();

        for (String path : List.of("", "/events", "/judgements")) {
            Response answer = given().get("/v1/cases/" + reference + path);
            assertThat(answer.statusCode()).isEqualTo(404);
            assertThat(answer.jsonPath().getString("code")).isEqualTo("not-found");
        }
        assertThat(given().post("/v1/cases/" + reference + "/judgements").statusCode())
                .isEqualTo(404);
    }

    @Test
    void the_history_is_served_page_by_page_with_every_event_once() {
        String reference = aReference();
        List<String> sent = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            String id = anId();
            sent.add(0, id);
            post(STRUCTURED, aFinding(reference, id));
        }

        List<String> seen = new ArrayList<>();
        List<Integer> sizes = new ArrayList<>();
        String path = "/v1/cases/" + reference + "/events?limit=2";
        while (path != null) {
            Response page = given().urlEncodingEnabled(false).get(path);
            List<String> ids = page.jsonPath().getList("events.event.id");
            seen.addAll(ids);
            sizes.add(ids.size());
            path = next(page);
        }

        assertThat(seen).isEqualTo(sent);
        assertThat(sizes).containsExactly(2, 2, 1);
    }

    @Test
    void cases_are_listed_newest_first_by_their_filters() {
        String reference = aReference();
        String other = aReference();
        post(BATCH, batch(aPresentation(reference, anId()), aPresentation(other, anId(), "mill-lane", "")));

        Response bySite =
                given().queryParam("site", "mill-lane").queryParam("q", other).get("/v1/cases");
        Response byWords =
                given().queryParam("q", reference.toLowerCase(Locale.ROOT)).get("/v1/cases");
        Response before = given().queryParam("q", reference)
                .queryParam("to", "2026-03-02")
                .get("/v1/cases");
        Response onTheDay = given().queryParam("q", reference)
                .queryParam("from", "2026-03-02")
                .queryParam("to", "2026-03-03")
                .get("/v1/cases");

        assertThat(bySite.jsonPath().getList("cases.reference")).containsExactly(other);
        assertThat(byWords.jsonPath().getList("cases.reference")).containsExactly(reference);
        assertThat(byWords.jsonPath().getString("cases[0].link")).isEqualTo("/v1/cases/" + reference);
        assertThat(before.jsonPath().getList("cases")).isEmpty();
        assertThat(onTheDay.jsonPath().getList("cases.reference")).containsExactly(reference);
    }

    @Test
    void walking_the_list_while_cases_are_added_shows_each_earlier_case_once() {
        String mark = "W" + aReference();
        List<String> earlier = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            String reference = mark + "-" + i;
            earlier.add(reference);
            post(STRUCTURED, aFinding(reference, anId()));
        }

        List<String> seen = new ArrayList<>();
        String path = "/v1/cases?limit=3&q=" + mark;
        int added = 0;
        while (path != null) {
            Response page = given().urlEncodingEnabled(false).get(path);
            seen.addAll(page.jsonPath().getList("cases.reference", String.class));
            path = next(page);
            post(STRUCTURED, aFinding(mark + "-late" + added++, anId()));
        }

        assertThat(seen.stream().filter(earlier::contains)).containsExactlyInAnyOrderElementsOf(earlier);
        assertThat(seen).doesNotHaveDuplicates();
    }

    @ParameterizedTest(name = "{0}={1}")
    @CsvSource({"limit, 0", "limit, 201", "limit, x", "status, done", "cause, rust", "from, yesterday", "cursor, x"})
    void a_wrong_parameter_is_refused(String name, String value) {
        Response answer = given().queryParam(name, value).get("/v1/cases");

        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.jsonPath().getList("causes.pointer")).containsExactly("/" + name);
    }

    @Test
    void all_wrong_parameters_are_said_at_once() {
        Response answer = given().queryParam("limit", "0")
                .queryParam("status", "done")
                .queryParam("from", "2026-03-02")
                .queryParam("to", "2026-03-02")
                .get("/v1/cases");

        assertThat(answer.jsonPath().getList("causes.pointer")).containsExactlyInAnyOrder("/limit", "/status", "/to");
    }

    @Test
    void a_case_can_be_judged_again() {
        String reference = aReference();
        post(STRUCTURED, aPresentation(reference, anId()));
        Response before = given().get("/v1/cases/" + reference);

        Response answer = given().post("/v1/cases/" + reference + "/judgements");

        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.asString()).isEqualTo(before.asString());
    }

    @Test
    void an_assessment_judges_and_stores_nothing() {
        String reference = aReference();
        String finding = aFinding(reference, anId());

        Response answer =
                assess(batch(aPresentation(reference, anId()), aRollerTest(reference, anId()), finding, finding));

        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.jsonPath().getString("reference")).isEqualTo(reference);
        assertThat(answer.jsonPath().getInt("version")).isEqualTo(3);
        assertThat(given().get("/v1/cases/" + reference).statusCode()).isEqualTo(404);
    }

    @Test
    void an_assessment_is_what_the_stored_case_would_be() {
        String reference = aReference();
        String events =
                batch(aPresentation(reference, anId()), aRollerTest(reference, anId()), aFinding(reference, anId()));

        String assessed = assess(events).asString();
        post(BATCH, events);

        assertThat(given().get("/v1/cases/" + reference).asString()).isEqualTo(assessed);
    }

    @Test
    void one_bad_event_refuses_an_assessment_whole_with_all_causes() {
        String reference = aReference();
        String id = anId();

        Response answer = assess(batch(
                aPresentation(reference, anId()),
                anImpossibleTest(reference, anId()),
                aFinding(aReference(), anId()),
                aFinding(reference, id).replace("hub-seal", "wheel")));
        Response twice =
                assess(batch(aFinding(reference, id), aFinding(reference, id).replace("right", "left")));
        Response unknownSite = assess(batch(aFinding(reference, id), aPresentation(reference, anId(), "nowhere", "")));

        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.jsonPath().getList("causes.pointer"))
                .containsExactly("/1/data/axles/0/right/peak", "/2/subject", "/3/data/component");
        assertThat(twice.statusCode()).isEqualTo(422);
        assertThat(twice.jsonPath().getList("causes.pointer")).containsExactly("/1/id");
        assertThat(unknownSite.jsonPath().getList("causes.pointer")).containsExactly("/1/data/site");
        assertThat(assess("[]").statusCode()).isEqualTo(422);
        assertThat(assess("[{}]").statusCode()).isEqualTo(400);
    }

    @Test
    void a_wrong_day_of_an_assessment_is_refused() {
        Response answer = request()
                .contentType(BATCH)
                .queryParam("asOf", "tomorrow")
                .body(batch(aFinding(aReference(), anId())))
                .post("/v1/assessments");

        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.jsonPath().getList("causes.pointer")).containsExactly("/asOf");
    }

    private static Response assess(String events) {
        return request().contentType(BATCH).body(events).post("/v1/assessments");
    }

    private static String next(Response page) {
        String link = page.header("Link");
        if (link == null) {
            return null;
        }
        Matcher next = NEXT.matcher(link);
        assertThat(next.find()).as(link).isTrue();
        return next.group(1);
    }
}
