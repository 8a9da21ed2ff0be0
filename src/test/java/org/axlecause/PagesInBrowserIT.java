package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** People's ways through the pages, in a real browser on the packaged service. */
class PagesInBrowserIT {

    private static final Path SCENARIOS = Path.of("src/test/resources/scenarios");
    private static final int MOST_ANSWERS = 20;
    private static final int MOST_STEPS = 60;

    /** What a technician says to the looks at a rear left wheel cylinder that leaks; to all others, that a part is sound. */
    private static final List<String> ANSWERS = List.of(
            "A drop or a run under the boot",
            "brake fluid: soaked",
            "Fluid streaks on the back plate or the inside of the tyre: leaking");

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    static Path folder;

    private static PackagedService service;
    private static Chromium chromium;

    private BrowserContext window;
    private Page page;
    private int loads;

    @BeforeAll
    static void begin() throws IOException, InterruptedException {
        service = new PackagedService(folder).start();
        service.putSite();
        chromium = new Chromium();
    }

    @AfterAll
    static void end() {
        if (chromium != null) {
            chromium.close();
        }
        if (service != null) {
            service.close();
        }
    }

    @BeforeEach
    void open_a_window() {
        window = chromium.window(service, 820, 1180, ColorScheme.LIGHT);
        window.onPage(opened -> opened.onFrameNavigated(frame -> loads++));
        page = window.newPage();
    }

    @AfterEach
    void close_the_window() {
        window.close();
    }

    @Test
    void a_case_goes_from_presented_to_proven() {
        page.navigate("/");
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Open a case"))
                .click();
        page.getByText("Van (N1)").click();
        send(button("Open it and key in the readings"));
        key(Map.of(
                "service.1.left", "2100",
                "service.1.right", "2050",
                "service.2.left", "590",
                "service.2.right", "1610",
                "parking.2.left", "560",
                "parking.2.right", "900"));
        send(button("Save the readings"));

        assertThat(page.locator("section[aria-labelledby=follows]").innerText())
                .contains("The two wheels of this axle brake unevenly", "63\u00a0%", "Rear axle, left wheel");

        answerWhatIsAsked();
        assertThat(page.locator("section[aria-labelledby=follows]").innerText())
                .contains("A wheel cylinder leaks past its cups – found");

        page.locator(".path").getByText("Desk").click();
        send(button("Save, and yes to all other required work"));
        assertThat(state()).isEqualTo("In work");

        page.locator(".path").getByText("Bay").click();
        tickThePlan();
        assertThat(state()).isEqualTo("Work done");

        page.getByText("Key in another roller test").click();
        assertThat(page.locator("input[name=stage]:checked").first().inputValue())
                .isEqualTo("final");
        key(Map.of(
                "service.1.left", "2100",
                "service.1.right", "2050",
                "service.2.left", "1600",
                "service.2.right", "1620",
                "parking.2.left", "900",
                "parking.2.right", "910"));
        send(button("Save the readings"));
        assertThat(state()).isEqualTo("Work done");
        lookOnceMore();

        assertThat(state()).isEqualTo("Cure proven");
        assertThat(page.locator("#verdict").innerText()).contains("The repair is proven");
        assertThat(page.locator("table:has(caption:text-is('Before and after'))")
                        .first()
                        .innerText())
                .contains("63\u00a0%");
    }

    @Test
    void a_decision_is_made_line_by_line_at_the_desk() throws Exception {
        send("oiled-lining-and-seized-cable-found");
        page.navigate("/desk");
        page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("QS-10482"))
                .click();
        Locator shoes = line("Renew the brake shoes, rear axle");
        Locator bearing = line("Renew the wheel bearing, rear axle, left wheel");

        shoes.getByText("Yes", new Locator.GetByTextOptions().setExact(true)).click();
        bearing.getByText("Later", new Locator.GetByTextOptions().setExact(true))
                .click();
        bearing.getByText("Why, and what was said").click();
        bearing.locator("input[name^=reason]").fill("not this month");
        send(button("Save the decisions"));

        assertThat(page.locator("#saved").innerText()).contains("Saved.");
        page.getByText("2 decided").click();
        assertThat(line("Renew the brake shoes, rear axle").innerText()).contains("agreed");
        assertThat(line("Renew the wheel bearing, rear axle, left wheel").innerText())
                .contains("put off by the customer");
    }

    @Test
    void what_is_tapped_and_typed_without_a_connection_is_kept_and_arrives_once() throws Exception {
        measured("OFF-1");
        page.navigate("/bay/OFF-1");
        int before = findings("OFF-1");
        page.getByText("A finding that nobody asked for").click();
        page.locator("#note").fill("rust on the pipe");

        window.setOffline(true);
        Locator answer = firstAnswer();
        answer.click();
        told("Not saved yet. One entry waits on this device");
        answer.click();
        told("Not saved yet. One entry waits on this device");
        page.close();
        window.setOffline(false);
        page = window.newPage();
        page.navigate("/bay/OFF-1");
        told("Saved.");

        assertThat(findings("OFF-1")).isEqualTo(before + 1);
        assertThat(page.locator("#note").inputValue()).isEqualTo("rust on the pipe");
        assertThat(page.locator("#note").isVisible()).isTrue();
    }

    @Test
    void a_page_that_stays_open_sends_by_itself_when_the_connection_is_back() throws Exception {
        measured("OFF-2");
        page.navigate("/bay/OFF-2");
        int before = findings("OFF-2");

        window.setOffline(true);
        firstAnswer().click();
        told("Not saved yet.");
        follow(() -> window.setOffline(false));

        assertThat(page.locator("#saved").innerText()).contains("Saved.");
        assertThat(findings("OFF-2")).isEqualTo(before + 1);
    }

    @Test
    void an_answer_whose_receipt_got_lost_on_the_way_is_sent_again_and_counts_once() throws Exception {
        measured("OFF-3");
        page.navigate("/bay/OFF-3");
        int before = findings("OFF-3");
        page.route("**/answer", PagesInBrowserIT::loseTheReceipt, new Page.RouteOptions().setTimes(1));

        firstAnswer().click();
        told("Not saved yet.");
        assertThat(findings("OFF-3")).isEqualTo(before + 1);
        send(firstAnswer());

        assertThat(page.locator("#saved").innerText()).contains("This was already saved.");
        assertThat(findings("OFF-3")).isEqualTo(before + 1);
    }

    @Test
    void a_registration_that_waits_for_its_connection_is_never_stored_on_the_device() throws Exception {
        openWithoutConnection("OFF-4");
        told("Leave this page open until then");
        String stored = (String) page.evaluate("() => JSON.stringify(localStorage)");
        follow(() -> window.setOffline(false));

        assertThat(stored).contains("OFF-4").doesNotContain("AX26", "QLM");
        assertThat(page.locator("#saved").innerText()).contains("Saved.");
        assertThat(service.json("/v1/cases/OFF-4/personal-data").toString()).contains("AX26 QLM");
    }

    @Test
    void a_registration_that_went_with_its_page_is_told_of() throws Exception {
        openWithoutConnection("OFF-5");
        told("Not saved yet.");
        page.close();
        window.setOffline(false);
        page = window.newPage();
        page.navigate("/bay");

        told("The registration went with the page that it was typed on.");
        assertThat(service.statusOf("/v1/cases/OFF-5")).isEqualTo(200);
    }

    private void openWithoutConnection(String reference) {
        page.navigate("/bay/new");
        page.getByText("More: reference, first use, registration").click();
        page.locator("#reference").fill(reference);
        page.locator("#registration").fill("AX26 QLM");
        window.setOffline(true);
        button("Open it and key in the readings").click();
    }

    @Test
    void a_question_about_numbers_is_asked_in_words_taken_away_and_passed_on() throws Exception {
        int before = counted();
        ended(List.of("END-1", "END-2", "END-3", "END-4", "END-5", "END-6"));
        page.waitForCondition(() -> counted() == before + 6);

        page.navigate("/");
        page.getByRole(
                        AriaRole.LINK,
                        new Page.GetByRoleOptions().setName("Numbers").setExact(true))
                .click();
        page.getByText("Which causes are most common?").click();
        page.getByText("Choose cases").click();
        page.getByLabel("Brake layout").selectOption("drum-simplex");
        send(button("Ask again"));

        assertThat(page.locator("tbody tr:has-text('Hub seal leaking')").innerText())
                .contains("6");
        assertThat(page.locator("figure.picture svg").getAttribute("aria-labelledby"))
                .isNotEmpty();
        Download rows =
                page.waitForDownload(() -> page.getByText("These rows as CSV").click());
        assertThat(rows.suggestedFilename()).matches("most-[0-9-]{10}\\.csv");
        assertThat(Files.readString(rows.path())).contains("hub-seal-leaking").contains(",6,");

        Page passedOn = window.newPage();
        passedOn.navigate(page.url());
        assertThat(passedOn.locator("tbody").innerText())
                .isEqualTo(page.locator("tbody").innerText());
    }

    private static int counted() {
        try {
            return service.json("/v1/statistics/causes").path("cases").asInt();
        } catch (IOException | InterruptedException broken) {
            throw new AssertionError(broken);
        }
    }

    @Test
    void a_case_is_opened_and_measured_by_keyboard_alone() {
        page.navigate("/bay/new");
        to("category");
        page.keyboard().press("ArrowRight");
        to("make");
        page.keyboard().type("Corvane");
        to("testMass");
        page.keyboard().type("1430");
        follow(() -> page.keyboard().press("Enter"));
        for (String field : List.of("service.1.left", "service.1.right", "service.2.left", "service.2.right")) {
            to(field);
            assertThat(outline()).as("focus on " + field + " shows").isTrue();
            page.keyboard().type(field.endsWith("2.left") ? "590" : "1600");
        }
        follow(() -> page.keyboard().press("Enter"));

        assertThat(page.locator("h1").innerText()).contains("Corvane").contains("N1");
        assertThat(page.locator("section[aria-labelledby=follows]").innerText()).contains("63\u00a0%");
    }

    @Test
    void a_policy_draft_is_written_tried_and_published() throws Exception {
        send("oiled-lining-and-seized-cable-found");
        page.navigate("/policy");
        page.locator("#name").fill("repairs");
        send(button("Write its draft"));
        page.locator("#means").fill("new springs with new shoes");
        Locator springs = clause("New springs, pins and clips go with new shoes");
        open(springs);
        springs.locator("select").selectOption("required");
        send(button("Save the draft").first());
        assertThat(page.locator("#saved").innerText()).contains("Saved.");

        page.locator(".path").getByText("repairs").click();
        page.getByText("Try it over past cases").click();
        send(button("Begin the trial"));
        page.getByText("Done.").waitFor();
        assertThat(page.locator("#progress").getAttribute("value"))
                .isEqualTo(page.locator("#progress").getAttribute("max"));
        assertThat(page.locator("section[aria-labelledby=examples]").innerText())
                .contains("Called for otherwise: Renew the springs and clips", "(recommended, then required)");
        send(page.locator("section[aria-labelledby=examples] a").first());
        assertThat(page.locator("tr:has-text('springs and clips')").first().innerText())
                .contains("Recommended work", "Required work", "otherwise");

        page.navigate("/policy/named/repairs/publication");
        page.locator("#from").fill(LocalDate.now(ZoneId.of("Europe/London")).toString());
        page.locator("#reason").fill("old springs came back");
        send(button("Publish it"));
        assertThat(page.locator("#saved").innerText()).contains("Published.");
        send(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Quay Street")));
        assertThat(page.locator("section[aria-labelledby=from-chain] tr:has-text('springs')")
                        .innerText())
                .contains("required");
    }

    @Test
    void an_edit_that_another_one_overtook_shows_what_changed_and_keeps_what_was_typed() {
        page.navigate("/policy/named/overtaken/draft");
        page.locator("#means").fill("first");
        send(button("Save the draft").first());
        Page other = window.newPage();
        other.navigate("/policy/named/overtaken/draft");
        other.locator("#means").fill("second");
        Locator adjuster = other.locator("details.line").filter(saying("The adjuster opposite a failed one"));
        open(adjuster);
        adjuster.locator("select").selectOption("required");
        other.getByText("Save the draft").first().click();
        other.locator("#saved").waitFor();

        Locator cable = clause("The cable opposite a failed one");
        open(cable);
        cable.locator("select").selectOption("optional");
        send(button("Save the draft").first());

        assertThat(page.locator("#lost").innerText())
                .contains("Not saved", "adjuster opposite a failed one", "required")
                .doesNotContain("cable opposite");
        assertThat(clause("The cable opposite a failed one").locator("select").inputValue())
                .isEqualTo("optional");
        send(button("Save the draft").first());
        assertThat(page.locator("#saved").innerText()).contains("Saved.");
    }

    private Locator clause(String means) {
        return page.locator("details.line").filter(saying(means));
    }

    /** Opens a clause and the group that it is folded into. */
    private static void open(Locator clause) {
        clause.locator("xpath=ancestor::details/summary").click();
        clause.locator("summary").click();
    }

    private static Locator.FilterOptions saying(String means) {
        return new Locator.FilterOptions().setHasText(Pattern.compile(means, Pattern.CASE_INSENSITIVE));
    }

    private void answerWhatIsAsked() {
        Locator asked = page.locator("section[aria-labelledby=next] article").first();
        for (int answers = 0; answers < MOST_ANSWERS && asked.count() > 0; answers++) {
            Locator buttons = asked.locator("button");
            List<String> says = buttons.allInnerTexts();
            boolean atTheFault = asked.innerText().contains("Rear axle, left wheel");
            String told = ANSWERS.stream()
                    .filter(answer -> atTheFault && says.stream().anyMatch(button -> button.contains(answer)))
                    .findFirst()
                    .orElse(says.stream()
                            .filter(answer -> answer.endsWith(" sound"))
                            .findFirst()
                            .orElseGet(() -> says.stream()
                                    .filter(answer -> answer.startsWith("Can't be"))
                                    .findFirst()
                                    .orElseThrow()));
            Locator form = asked.locator("form")
                    .filter(new Locator.FilterOptions()
                            .setHas(page.locator("button", new Page.LocatorOptions().setHasText(told))))
                    .first();
            for (Locator blank : form.locator("input[name^=blank]").all()) {
                blank.fill("3.6");
            }
            send(form.locator("button")
                    .filter(new Locator.FilterOptions().setHasText(told))
                    .first());
        }
    }

    private void lookOnceMore() {
        Locator looks =
                page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(Pattern.compile("^Sound now")));
        assertThat(looks.count()).isPositive();
        for (int answers = 0; answers < MOST_ANSWERS && looks.count() > 0; answers++) {
            send(looks.first());
        }
    }

    private void tickThePlan() {
        Locator open = page.locator(".steps > li:not(.done)");
        for (int steps = 0; steps < MOST_STEPS && open.count() > 0; steps++) {
            int left = open.count();
            send(open.first()
                    .getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName(Pattern.compile("^Done"))));
            assertThat(page.url()).endsWith("#work");
            assertThat(open.count()).isLessThan(left);
        }
    }

    /** The answer of the next look that takes no reading. */
    private Locator firstAnswer() {
        return page.locator("section[aria-labelledby=next] article")
                .first()
                .locator("form:not(:has(input[name^=blank])) button")
                .first();
    }

    private Locator line(String title) {
        return page.locator("fieldset")
                .filter(new Locator.FilterOptions()
                        .setHas(page.locator("legend", new Page.LocatorOptions().setHasText(title))));
    }

    private Locator button(String name) {
        return page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name));
    }

    private String state() {
        return page.locator(".title .state").innerText();
    }

    /** Taps what sends a form, and waits for the page that follows. */
    private void send(Locator target) {
        follow(target::click);
    }

    /** Does what leads to another page, and waits for it. */
    private void follow(Runnable act) {
        int before = loads;
        act.run();
        page.waitForCondition(() -> loads > before);
        page.waitForLoadState();
    }

    private void key(Map<String, String> numbers) {
        numbers.forEach((field, number) -> page.locator("[id='" + field + "']").fill(number));
    }

    /** Goes to a field by the tabulator key alone. */
    private void to(String name) {
        for (int presses = 0; presses < 200; presses++) {
            page.keyboard().press("Tab");
            if (name.equals(page.evaluate("() => document.activeElement.name ?? ''"))) {
                return;
            }
        }
        throw new AssertionError("No field " + name + " is reached by the tabulator key");
    }

    private boolean outline() {
        return (boolean) page.evaluate("() => getComputedStyle(document.activeElement).outlineStyle !== 'none'");
    }

    private void told(String text) {
        page.locator("#kept")
                .filter(new Locator.FilterOptions().setHasText(text))
                .waitFor(new Locator.WaitForOptions().setState(WaitForSelectorState.VISIBLE));
    }

    private static void loseTheReceipt(Route route) {
        route.fetch(new Route.FetchOptions().setMaxRedirects(0));
        route.abort("connectionreset");
    }

    private int findings(String reference) throws IOException, InterruptedException {
        return (int) service.json("/v1/cases/" + reference + "/events").findValuesAsText("type").stream()
                .filter(type -> type.equals("org.axlecause.finding.recorded.v1"))
                .count();
    }

    /** A case that has been presented and measured, and of which nothing else is known. */
    private static void measured(String reference) throws IOException, InterruptedException {
        take(ScenarioEvents.of("oval-drum-reads-as-imbalance", reference, 2));
    }

    /** Cases whose cause was found and that ended without work. */
    private static void ended(List<String> references) throws IOException, InterruptedException {
        for (String reference : references) {
            ArrayNode events = ScenarioEvents.of("oiled-lining-and-seized-cable-found", reference, ScenarioEvents.ALL);
            ObjectNode closing = ((ObjectNode) events.get(events.size() - 1)).deepCopy();
            closing.put("id", reference + "-closed").put("type", "org.axlecause.case.closed.v1");
            closing.putObject("data").put("outcome", "refused");
            take(events.add(closing));
        }
    }

    private static void take(ArrayNode events) throws IOException, InterruptedException {
        HttpResponse<String> answer = service.batch(Json.text(events));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    }

    private static void send(String scenario) throws IOException, InterruptedException {
        String events = Files.readString(SCENARIOS.resolve(scenario).resolve("given.json"));
        assertThat(service.batch(events).statusCode()).isEqualTo(200);
    }
}
