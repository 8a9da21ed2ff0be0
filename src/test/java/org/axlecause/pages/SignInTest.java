package org.axlecause.pages;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Who gets which page: sessions, roles, sites and tenants. */
@QuarkusTest
@TestProfile(WithKeys.class)
class SignInTest {

    private static final Path SCENARIO =
            Path.of("src/test/resources/scenarios/oiled-lining-and-seized-cable-found/given.json");
    private static final String SITE = "quay-street";
    private static final String CASE = "QS-10482";

    private final String tenant = "pages-" + UUID.randomUUID().toString().substring(0, 8);
    private final Browser browser = new Browser();

    @Inject
    MakeKey makeKey;

    @ParameterizedTest
    @ValueSource(strings = {"/", "/bay", "/bay/QS-1?saved=now", "/desk", "/rulebook/causes/air-in-circuit"})
    void a_stranger_is_sent_to_sign_in_and_back_again(String address) {
        Response answer = browser.open(address);

        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(answer.header("Location")).contains("/sign-in?to=%2F");
        Document page = browser.page(local(answer));
        assertThat(page.selectFirst("input[name=to]").val()).isEqualTo(address);
        assertThat(page.select("label[for=key]").text()).isEqualTo("Access key");
    }

    @Test
    void the_session_is_a_short_strict_cookie_that_no_script_reads_and_that_holds_no_key() {
        String key = key(Role.TECHNICIAN, null);

        Response answer = signIn(key, "/bay");

        Cookie session = answer.getDetailedCookie("axlecause-session");
        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(local(answer)).isEqualTo("/bay");
        assertThat(session.isHttpOnly()).isTrue();
        assertThat(session.getSameSite()).isEqualToIgnoringCase("Strict");
        assertThat(session.getPath()).isEqualTo("/");
        assertThat(session.getMaxAge()).isEqualTo(36000);
        assertThat(session.getValue()).doesNotContain(key, key.split("_", -1)[1]);
    }

    @Test
    void a_page_says_by_its_name_whose_key_it_was_opened_with() {
        signIn(makeKey.make(tenant, new KeyTerms("tablet of bay 2", Role.TECHNICIAN, null, null), "test"), "/bay");

        assertThat(browser.page("/bay").select(".who").text()).isEqualTo("Signed in as tablet of bay 2");
        assertThat(browser.page("/nowhere").select(".who").text()).isEqualTo("Signed in as tablet of bay 2");
        assertThat(browser.page("/nowhere").select("#problem").text()).contains("There is no page /nowhere.");
        assertThat(browser.page("/nowhere").select(".ask a").eachAttr("href")).containsExactly("/desk", "/");
    }

    @Test
    void a_stranger_at_no_page_is_offered_to_sign_in() {
        assertThat(browser.page("/nowhere").select(".ask a").eachAttr("href")).containsExactly("/sign-in");
    }

    @Test
    void behind_https_the_cookies_go_by_https_only() {
        String forms = given().header("Accept", Browser.HTML)
                .header("X-Forwarded-Proto", "https")
                .get("/sign-in")
                .header("Set-Cookie");

        assertThat(forms).contains("axlecause-forms=", "HttpOnly", "SameSite=Strict", "Secure");
    }

    @Test
    void a_wrong_key_is_refused_on_the_page() {
        Response answer = signIn("axc_no_key", "/bay");

        assertThat(answer.statusCode()).isEqualTo(401);
        assertThat(answer.getCookie("axlecause-session")).isNull();
        assertThat(Browser.read(answer).select("[role=alert]").text()).contains("The key is damaged");
    }

    @ParameterizedTest
    @ValueSource(strings = {"//elsewhere.example", "https://elsewhere.example", "/\\elsewhere.example", "javascript:x"})
    void nobody_is_sent_elsewhere_after_signing_in(String to) {
        assertThat(local(signIn(key(Role.DESK, null), to))).isEqualTo("/");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "x", "AAAA", "not base64 at all"})
    void a_session_that_was_not_made_here_opens_nothing(String session) {
        Response answer = given().redirects()
                .follow(false)
                .header("Accept", Browser.HTML)
                .cookie("axlecause-session", session)
                .get("/bay");

        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(answer.header("Location")).contains("/sign-in");
    }

    @Test
    void a_session_opens_pages_and_nothing_of_the_api() {
        signIn(key(Role.ADMIN, null), "/");
        Cookie session = browser.last().getDetailedCookie("axlecause-session");

        Response answer = given().cookie(session).get("/v1/cases");

        assertThat(answer.statusCode()).isEqualTo(401);
    }

    @Test
    void a_revoked_key_ends_its_session_at_once() {
        String admin = key(Role.ADMIN, null);
        String key = key(Role.TECHNICIAN, null);
        signIn(key, "/bay");
        assertThat(browser.open("/bay").statusCode()).isEqualTo(200);

        given().header("Authorization", "Bearer " + admin)
                .delete("/v1/keys/" + key.split("_", -1)[1])
                .then()
                .statusCode(204);

        assertThat(browser.open("/bay").statusCode()).isEqualTo(303);
    }

    @Test
    void signing_out_takes_the_session_away() {
        signIn(key(Role.TECHNICIAN, null), "/bay");
        Element form = browser.page("/bay").selectFirst("form[action=/sign-out]");

        Response out = browser.submit(form, Map.of());

        assertThat(out.statusCode()).isEqualTo(303);
        assertThat(out.getDetailedCookie("axlecause-session").getMaxAge()).isZero();
        assertThat(browser.open("/bay").statusCode()).isEqualTo(303);
    }

    @Test
    void a_form_of_one_person_is_refused_from_another() {
        signIn(key(Role.TECHNICIAN, null), "/bay");
        Element form = browser.page("/bay").selectFirst("form[action=/sign-out]");
        signIn(key(Role.TECHNICIAN, null), "/bay");

        assertThat(browser.submit(form, Map.of()).statusCode()).isEqualTo(403);
    }

    @ParameterizedTest
    @EnumSource
    void each_role_reads_cases_and_sends_what_the_api_lets_it_send(Role role) throws IOException {
        aCaseAt(SITE);
        boolean sends =
                List.of(Role.SENDER, Role.TECHNICIAN, Role.DESK, Role.ADMIN).contains(role);
        signIn(key(role, null), "/bay");

        Document bay = browser.page("/bay/" + CASE);

        assertThat(browser.last().statusCode()).isEqualTo(200);
        assertThat(bay.select("main form[method=post]").isEmpty()).isEqualTo(!sends);
        assertThat(browser.open("/bay/new").statusCode()).isEqualTo(sends ? 200 : 403);
        Map<String, String> fields = Map.of(
                "token", bay.selectFirst("meta[name=form-token]").attr("content"),
                "entry", UUID.randomUUID().toString(),
                "stage", "as-found",
                "component", "tyre",
                "condition", "sound",
                "place", "1 left");
        assertThat(browser.submit(fields, "/bay/" + CASE + "/finding").statusCode())
                .isEqualTo(sends ? 303 : 403);
    }

    @Test
    void a_key_of_another_site_sees_and_sends_nothing() throws IOException {
        aCaseAt(SITE);
        signIn(key(Role.TECHNICIAN, List.of("mill-bridge")), "/bay");

        Document list = browser.page("/desk");
        String token = list.selectFirst("meta[name=form-token]").attr("content");
        Response bay = browser.open("/bay/" + CASE);
        Response rules = browser.open("/rulebook/case/" + CASE);
        Response sent = browser.submit(
                Map.of(
                        "token", token,
                        "entry", UUID.randomUUID().toString(),
                        "stage", "as-found",
                        "component", "tyre",
                        "condition", "sound",
                        "place", "1 left"),
                "/bay/" + CASE + "/finding");

        assertThat(list.select("ul.entries a")).isEmpty();
        assertThat(bay.statusCode()).isEqualTo(403);
        assertThat(Browser.read(bay).select("#problem").text())
                .contains("This key may not do that", "belongs to a site that this key may not see");
        assertThat(rules.statusCode()).isEqualTo(403);
        assertThat(sent.statusCode()).isEqualTo(403);
        assertThat(browser.page("/bay/new").select("input[name=site]").eachAttr("value"))
                .containsExactly("mill-bridge");
    }

    @Test
    void the_sheets_open_by_session_to_those_who_send_from_their_sites_alone() throws IOException {
        aCaseAt(SITE);
        signIn(key(Role.DESK, List.of(SITE)), "/desk");
        List<String> sheets =
                browser.page("/desk/" + CASE).select(".path a[href^=/sheets/]").eachAttr("href");
        Response screen = browser.open("/sheets/" + CASE + "/customer");
        Response paper = browser.open("/sheets/" + CASE + "/workshop/pdf");

        assertThat(sheets)
                .containsExactly(
                        "/sheets/" + CASE + "/customer",
                        "/sheets/" + CASE + "/customer/pdf",
                        "/sheets/" + CASE + "/workshop",
                        "/sheets/" + CASE + "/workshop/pdf");
        assertThat(screen.statusCode()).isEqualTo(200);
        assertThat(Browser.read(screen).select("h1").text()).isEqualTo("Your brakes");
        assertThat(screen.header("Content-Security-Policy")).startsWith("default-src 'none'");
        assertThat(screen.header("Cache-Control")).isEqualTo("private, no-store");
        assertThat(paper.contentType()).isEqualTo("application/pdf");
        assertThat(paper.asByteArray()).startsWith("%PDF".getBytes(StandardCharsets.US_ASCII));

        signIn(key(Role.DESK, List.of("mill-bridge")), "/desk");
        assertThat(browser.open("/sheets/" + CASE + "/customer").statusCode()).isEqualTo(403);
        signIn(key(Role.ANALYST, null), "/desk");
        assertThat(browser.page("/desk/" + CASE).select("a[href^=/sheets/]")).isEmpty();
        Response analyst = browser.open("/sheets/" + CASE + "/customer");
        assertThat(analyst.statusCode()).isEqualTo(403);
        assertThat(Browser.read(analyst).select("#problem h1").text()).isEqualTo("This key may not do that");
        assertThat(Browser.read(analyst).select(".ask").text()).startsWith("Ask whoever gave you this key");
        assertThat(Browser.read(analyst).select("form[action=/sign-out]")).hasSize(1);
        Response stranger = new Browser().open("/sheets/" + CASE + "/customer");
        assertThat(local(stranger)).isEqualTo("/sign-in?to=%2Fsheets%2F" + CASE + "%2Fcustomer");
    }

    @Test
    void another_tenant_finds_no_such_case() throws IOException {
        aCaseAt(SITE);
        String stranger = makeKey.make(
                "other-" + UUID.randomUUID().toString().substring(0, 8),
                new KeyTerms("stranger", Role.ADMIN, null, null),
                "test");
        signIn(stranger, "/bay");

        assertThat(browser.open("/bay/" + CASE).statusCode()).isEqualTo(404);
        assertThat(browser.page("/desk").select("ul.entries a")).isEmpty();
    }

    private void aCaseAt(String site) throws IOException {
        String admin = key(Role.ADMIN, null);
        for (String code : List.of(site, "mill-bridge")) {
            given().header("Authorization", "Bearer " + admin)
                    .contentType("application/json")
                    .body("""
                            {"name": "Site", "timeZone": "Europe/London", "currency": "GBP", "regime": "gb-annual"}""")
                    .put("/v1/sites/" + code)
                    .then()
                    .statusCode(200);
        }
        given().header("Authorization", "Bearer " + admin)
                .contentType("application/cloudevents-batch+json; charset=UTF-8")
                .body(Files.readString(SCENARIO).getBytes(StandardCharsets.UTF_8))
                .post("/v1/events")
                .then()
                .statusCode(200);
    }

    private String key(Role role, List<String> sites) {
        return makeKey.make(tenant, new KeyTerms(UUID.randomUUID().toString(), role, sites, null), "test");
    }

    private Response signIn(String key, String to) {
        Element form = browser.page("/sign-in").selectFirst("form[action=/sign-in]");
        return browser.submit(form, Map.of("key", key, "to", to));
    }

    private static String local(Response answer) {
        return answer.header("Location");
    }
}
