package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import jakarta.ws.rs.GET;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.Method;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.axlecause.catalogue.CatalogueKind;
import org.axlecause.pages.NumbersQuestion;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every page in a real browser, from the narrowest telephone to a wide screen, light and dark: it answers as it should,
 * nothing is wider than the screen, no words cover others, it weighs little, and axe-core finds nothing in anybody's way.
 * With {@code -Dpictures.write=true} each look is kept in {@code target/pictures}.
 */
class PagesLookIT {

    private static final boolean KEEPS_PICTURES = Boolean.getBoolean("pictures.write");
    private static final Path PICTURES = Path.of("target", "pictures");
    private static final String TENANT = "harbour";
    private static final String SITE = "quay-street";
    private static final double HEAVIEST_PAGE = 300_000;
    private static final int A4_WIDTH = 794;
    private static final int A4_HEIGHT = 1123;
    private static final List<ColorScheme> SCHEMES = List.of(ColorScheme.LIGHT, ColorScheme.DARK);

    /** Cases in every state that a page can meet, by their reference. */
    private static final String PRESENTED = "QS-20701";

    private static final String MEASURED = "QS-20702";
    private static final String LOOKED_AT = "QS-20703";
    private static final String SCOPED = "QS-20704";
    private static final String IN_WORK = "QS-20705";
    private static final String VERIFIED = "QS-20706";
    private static final String TRACED = "QS-20707";
    private static final String HEAVY = "QS-20708";
    private static final String NOT_PRESENTED = "QS-20709";
    private static final String FAILED_AGAIN = "QS-20710";
    private static final String CLOSED = "QS-20711";
    private static final String WORKED = "QS-20712";

    private static final String DRAFT = """
            {"means": "how our sites repair",
             "chain": [{"clause": "twin-hydraulic-part", "necessity": "required"},
                       {"clause": "pad-renewal-thickness", "value": 3.5, "unit": "mm", "necessity": "recommended"},
                       {"clause": "workshop-limit", "figure": "imbalance", "brake": "service", "axle": 1, "value": 20,
                        "unit": "%"}],
             "sites": {"quay-street": [{"clause": "retest-imbalance", "value": 12, "unit": "%"}]}}
            """;

    /** They answer with no page: one leads to another page, the others hand over a file. */
    private static final Set<String> NO_PAGES =
            Set.of("/policy/new", "/numbers/{question}/{form}", "/sheets/{reference}/{audience}/pdf");

    /** What the width alone decides; the full set is run once in each scheme. */
    private static final List<String> RULES_OF_SIZE = List.of("target-size", "scrollable-region-focusable");

    /** What the scheme decides, on each side of the one width at which the style sheet lays out otherwise. */
    private static final List<String> RULES_OF_COLOUR = List.of("color-contrast");

    private static final String WIDER_THAN_THE_SCREEN = """
            () => {
              const room = document.documentElement.clientWidth;
              const over = document.documentElement.scrollWidth - room;
              if (over <= 0) {
                return '';
              }
              const wide = [...document.querySelectorAll('body *')]
                  .filter((part) => part.getBoundingClientRect().right > room + 1)
                  .slice(-3).map((part) => `<${part.tagName.toLowerCase()} class="${part.className}">`
                      + part.textContent.trim().slice(0, 40));
              return `${over} px wider than the screen: ${wide.join(' | ')}`;
            }
            """;

    /** In another type than the one that charts are laid out for. */
    private static final String WORDS_THAT_COVER_OTHERS = """
            () => [...document.querySelectorAll('figure svg, .picture svg')].flatMap((svg) => {
              const words = [...svg.querySelectorAll('text')].filter((text) => text.textContent.trim());
              words.forEach((text) => { text.style.fontFamily = 'monospace'; });
              const boxes = words.map((text) => text.getBoundingClientRect());
              return words.flatMap((text, one) => words.slice(one + 1).filter((other, index) => {
                const a = boxes[one];
                const b = boxes[one + 1 + index];
                return Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1
                    && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 3;
              }).map((other) => `"${text.textContent.trim()}" and "${other.textContent.trim()}"`));
            })
            """;

    private static final String WEIGHT = """
            () => [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')]
                .reduce((sum, part) => sum + part.decodedBodySize, 0)
            """;

    private static final String FINDINGS = """
            async (rules) => {
              const found = await axe.run(document, {
                resultTypes: ['violations'],
                ...(rules.length > 0
                    ? { runOnly: { type: 'rule', values: rules } }
                    : { rules: { 'target-size': { enabled: true } } }),
              });
              return found.violations.map((finding) => `${finding.id} (${finding.nodes.length}): `
                  + finding.nodes.slice(0, 2).map((node) => node.html.slice(0, 160) + ' ' + node.failureSummary).join(' | '));
            }
            """;

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    static Path folder;

    private static final Map<Who, BrowserContext> WINDOWS = new EnumMap<>(Who.class);
    private static PackagedService service;
    private static Chromium chromium;
    private static String axe = "";
    private static String trial = "";
    private static String tried = "";
    private static String step = "";

    /** A screen that pages are looked at on. */
    private enum Screen {
        NARROWEST(320, 568),
        PHONE(390, 844),
        TABLET(820, 1180),
        DESKTOP(1440, 900);

        private final int width;
        private final int height;

        Screen(int width, int height) {
            this.width = width;
            this.height = height;
        }
    }

    /** Who looks: a stranger, an admin of a whole chain, an analyst, and somebody at a site without cases. */
    private enum Who {
        STRANGER,
        ADMIN,
        ANALYST,
        NEW_SITE
    }

    /** A page in one of its states. */
    private record Look(String name, Who who, String address, int status) {

        @Override
        public String toString() {
            return name + ", " + address;
        }
    }

    @BeforeAll
    static void a_chain_with_cases_in_every_state() throws IOException, InterruptedException {
        service = new PackagedService(folder).with("AXLECAUSE_ACCESS", "keys");
        assertThat(service.run(
                        "fleet",
                        "--tenant",
                        TENANT,
                        "--cases",
                        "1200",
                        "--sites",
                        "6",
                        "--years",
                        "2",
                        "--histories",
                        "0"))
                .isZero();
        service.as(service.makeKey(TENANT, "admin")).start();
        fill();
        chromium = new Chromium();
        axe = axe();
        WINDOWS.put(Who.STRANGER, window());
        WINDOWS.put(Who.ADMIN, signedIn("{\"name\": \"office\", \"role\": \"admin\"}"));
        WINDOWS.put(Who.ANALYST, signedIn("{\"name\": \"counting\", \"role\": \"analyst\"}"));
        WINDOWS.put(
                Who.NEW_SITE,
                signedIn("{\"name\": \"new-bay\", \"role\": \"technician\", \"sites\": [\"mill-bridge\"]}"));
    }

    @AfterAll
    static void end() {
        WINDOWS.values().forEach(BrowserContext::close);
        if (chromium != null) {
            chromium.close();
        }
        if (service != null) {
            service.close();
        }
    }

    static Stream<Look> looks() {
        List<Look> looks = new ArrayList<>(List.of(
                new Look("sign-in", Who.STRANGER, "/sign-in?to=%2Fbay", 200),
                admin("start", "/"),
                admin("bay", "/bay"),
                new Look("bay-empty", Who.NEW_SITE, "/bay", 200),
                new Look("desk-empty", Who.NEW_SITE, "/desk", 200),
                admin("bay-new", "/bay/new"),
                admin("bay-obstacle", "/bay/" + IN_WORK + "/obstacle?step=" + step),
                admin("desk", "/desk"),
                admin("desk-search", "/desk?q=Corvane"),
                admin("desk-nothing-found", "/desk?q=nothing-of-that-name"),
                admin("desk-one-state", "/desk?status=scoped"),
                admin("sheet-customer-decides", "/sheets/" + SCOPED + "/customer"),
                admin("sheet-customer-repaired", "/sheets/" + VERIFIED + "/customer"),
                admin("sheet-customer-unknown", "/sheets/" + PRESENTED + "/customer"),
                admin("sheet-workshop-plan", "/sheets/" + SCOPED + "/workshop"),
                admin("sheet-workshop-repaired", "/sheets/" + VERIFIED + "/workshop"),
                admin("sheet-workshop-trace", "/sheets/" + TRACED + "/workshop"),
                admin("sheet-workshop-closed", "/sheets/" + CLOSED + "/workshop"),
                admin("rulebook", "/rulebook"),
                admin("rulebook-search", "/rulebook?q=hub%20seal"),
                admin("rulebook-nothing-found", "/rulebook?q=zzzz"),
                admin("rulebook-case", "/rulebook/case/" + VERIFIED),
                admin("rulebook-case-silent", "/rulebook/case/" + PRESENTED),
                admin("policy", "/policy"),
                new Look("policy-reader", Who.NEW_SITE, "/policy", 200),
                admin("policy-named", "/policy/named/repairs"),
                new Look("policy-named-reader", Who.NEW_SITE, "/policy/named/repairs", 200),
                admin("policy-published", "/policy/named/repairs?saved=published"),
                admin("policy-effective", "/policy/named/repairs/effective?site=" + SITE),
                admin("policy-comparison", "/policy/named/repairs/comparison?from=1&to=draft"),
                admin("policy-draft", "/policy/named/repairs/draft?saved=now"),
                admin("policy-draft-site", "/policy/named/repairs/draft?layer=site%20" + SITE),
                admin("policy-draft-new", "/policy/named/winter/draft"),
                admin("policy-publication", "/policy/named/repairs/publication"),
                admin("policy-trial", "/policy/trials/" + trial),
                admin("policy-trial-case", "/policy/trials/" + trial + "/cases/" + tried),
                admin("policy-departures", "/policy/departures"),
                admin("policy-departures-none", "/policy/departures?from=2001-01-01&to=2001-02-01"),
                admin("numbers", "/numbers"),
                admin("numbers-groups-compared", "/numbers/groups?compare=layout&layout=drum-simplex"),
                admin("numbers-causes-by-age", "/numbers/causes?by=ageBand"),
                admin("numbers-months-of-a-cause", "/numbers/months?cause=wheel-cylinder-leaking"),
                admin("numbers-returns-by-item", "/numbers/returns?by=item"),
                admin("numbers-nothing-ended", "/numbers/most?from=2001-01-01&to=2001-02-01"),
                new Look("numbers-wrong", Who.ADMIN, "/numbers/most?from=yesterday", 422),
                new Look("no-such-page", Who.ADMIN, "/nowhere", 404),
                new Look("no-such-case", Who.ADMIN, "/bay/NONE-1", 404),
                new Look("no-such-page-to-a-stranger", Who.STRANGER, "/nowhere", 404),
                new Look("not-allowed", Who.ANALYST, "/bay/new", 403),
                new Look("bay-reader", Who.ANALYST, "/bay/" + SCOPED, 200),
                new Look("other-site", Who.NEW_SITE, "/bay/" + SCOPED, 403)));
        Map.of(
                        "presented", PRESENTED,
                        "measured", MEASURED,
                        "looked-at", LOOKED_AT,
                        "scoped", SCOPED,
                        "in-work", IN_WORK,
                        "worked", WORKED,
                        "verified", VERIFIED,
                        "traced", TRACED,
                        "heavy", HEAVY,
                        "not-presented", NOT_PRESENTED)
                .forEach((state, reference) -> both(state, reference, looks));
        both("failed-again", FAILED_AGAIN, looks);
        both("closed", CLOSED, looks);
        looks.add(admin("bay-saved", "/bay/" + MEASURED + "?saved=now"));
        looks.add(admin("desk-saved-before", "/desk/" + SCOPED + "?saved=before"));
        Stream.of(NumbersQuestion.values())
                .forEach(question -> looks.add(admin("numbers-" + question, "/numbers/" + question)));
        for (CatalogueKind kind : CatalogueKind.values()) {
            looks.add(admin("rulebook-" + kind, "/rulebook/" + kind));
            looks.add(admin("rulebook-" + kind + "-entry", firstEntry(kind)));
        }
        return looks.stream().sorted(Comparator.comparing(Look::name));
    }

    private static void both(String state, String reference, List<Look> looks) {
        looks.add(admin("bay-" + state, "/bay/" + reference));
        looks.add(admin("desk-" + state, "/desk/" + reference));
    }

    private static Look admin(String name, String address) {
        return new Look(name, Who.ADMIN, address, 200);
    }

    @ParameterizedTest
    @MethodSource("looks")
    void a_page_fits_is_light_and_stands_in_nobodys_way(Look look) {
        try (Page page = Objects.requireNonNull(WINDOWS.get(look.who())).newPage()) {
            Response answer = page.navigate(look.address());

            assertThat(answer.status()).isEqualTo(look.status());
            assertThat(answer.headerValue("content-type")).isEqualTo("text/html;charset=UTF-8");
            assertThat(wrongWith(page, look.name())).isEmpty();
        }
    }

    @Test
    void a_key_that_is_refused_is_told_of_where_it_was_typed() {
        try (BrowserContext window = window();
                Page page = window.newPage()) {
            page.navigate("/sign-in");
            page.locator("#key").fill("axc_no_key");
            page.locator("button[type=submit]").click();
            page.locator("[role=alert]").waitFor();

            assertThat(wrongWith(page, "sign-in-refused")).isEmpty();
        }
    }

    @Test
    void what_is_wrong_with_a_draft_stands_where_it_was_typed() {
        try (Page page = Objects.requireNonNull(WINDOWS.get(Who.ADMIN)).newPage()) {
            page.navigate("/policy/named/spring/draft");
            page.locator("#means").fill("new springs");
            page.locator("details.group:has-text('counts as dragging') > summary")
                    .click();
            page.locator("details.line:has-text('counts as dragging') > summary")
                    .first()
                    .click();
            page.locator("details.line[open] input[name$=value]").fill("many");
            page.locator("button.main").first().click();
            page.locator("[role=alert]").first().waitFor();

            assertThat(wrongWith(page, "policy-draft-wrong")).isEmpty();
        }
    }

    @Test
    void every_route_of_the_pages_is_looked_at() {
        Set<String> routes = new TreeSet<>();
        for (JavaClass type : new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests())
                .importPackages("org.axlecause")) {
            if (type.isAnnotatedWith(org.axlecause.shared.Page.class)) {
                Stream.of(type.reflect().getDeclaredMethods())
                        .filter(method -> method.isAnnotationPresent(GET.class))
                        .forEach(method -> routes.add(route(type.reflect(), method)));
            }
        }

        Set<String> lookedAt = new TreeSet<>(NO_PAGES);
        looks().filter(look -> look.status() == 200)
                .forEach(look -> lookedAt.add(routes.stream()
                        .filter(route -> look.address()
                                .replaceFirst("\\?.*", "")
                                .matches(route.replaceAll("\\{[a-z]+}", "[^/]+")))
                        .min(Comparator.comparing(route ->
                                route.chars().filter(sign -> sign == '{').count()))
                        .orElse("none for " + look)));
        assertThat(lookedAt).isEqualTo(routes);
    }

    private static String route(Class<?> type, Method method) {
        jakarta.ws.rs.Path below = method.getAnnotation(jakarta.ws.rs.Path.class);
        String route = (type.getAnnotation(jakarta.ws.rs.Path.class).value() + "/"
                        + (below == null ? "" : below.value()))
                .replaceAll("/+", "/");
        return route.length() > 1 ? route.replaceFirst("/$", "") : route;
    }

    /** All that is wrong with a page at any width in either scheme, and on paper. */
    private static Set<String> wrongWith(Page page, String name) {
        Set<String> wrong = new TreeSet<>();
        double weight = ((Number) page.evaluate(WEIGHT)).doubleValue();
        if (weight > HEAVIEST_PAGE) {
            wrong.add(weight + " bytes");
        }
        if (KEEPS_PICTURES) {
            picture(page, name);
        }
        page.evaluate(axe);
        page.setViewportSize(A4_WIDTH, A4_HEIGHT);
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
        fits(page, "on paper", wrong);
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.SCREEN));
        for (Screen screen : Screen.values()) {
            page.setViewportSize(screen.width, screen.height);
            fits(page, screen + " folded", wrong);
        }
        page.evaluate("() => document.querySelectorAll('details').forEach((part) => { part.open = true; })");
        for (Screen screen : Screen.values()) {
            page.setViewportSize(screen.width, screen.height);
            fits(page, screen + " unfolded", wrong);
            findings(page, screen + "", RULES_OF_SIZE, wrong);
            if (screen == Screen.PHONE || screen == Screen.DESKTOP) {
                for (ColorScheme scheme : SCHEMES) {
                    page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
                    boolean all = (scheme == ColorScheme.LIGHT) == (screen == Screen.PHONE);
                    findings(page, screen + " " + scheme, all ? List.of() : RULES_OF_COLOUR, wrong);
                }
            }
        }
        for (Object covered : (List<?>) page.evaluate(WORDS_THAT_COVER_OTHERS)) {
            wrong.add("cover each other: " + covered);
        }
        return wrong;
    }

    private static void findings(Page page, String where, List<String> rules, Set<String> wrong) {
        for (Object finding : (List<?>) page.evaluate(FINDINGS, rules)) {
            wrong.add(where + ": " + finding);
        }
    }

    private static void fits(Page page, String where, Set<String> wrong) {
        String wider = (String) page.evaluate(WIDER_THAN_THE_SCREEN);
        if (!wider.isEmpty()) {
            wrong.add(where + ": " + wider);
        }
    }

    private static void picture(Page page, String name) {
        for (ColorScheme scheme : SCHEMES) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            for (Screen screen : Screen.values()) {
                page.setViewportSize(screen.width, screen.height);
                keep(page, name + "." + screen + "." + scheme);
            }
        }
        page.setViewportSize(A4_WIDTH, A4_HEIGHT);
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT).setColorScheme(ColorScheme.LIGHT));
        keep(page, name + ".PAPER");
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.SCREEN));
    }

    private static void keep(Page page, String name) {
        page.screenshot(new Page.ScreenshotOptions()
                .setPath(PICTURES.resolve(name.toLowerCase(Locale.ROOT) + ".png"))
                .setFullPage(true));
    }

    private static BrowserContext window() {
        return chromium.window(service, Screen.DESKTOP.width, Screen.DESKTOP.height, ColorScheme.LIGHT);
    }

    private static BrowserContext signedIn(String terms) throws IOException, InterruptedException {
        String key = service.post("/v1/keys", terms).path("text").asText();
        BrowserContext window = window();
        try (Page page = window.newPage()) {
            page.navigate("/sign-in");
            page.locator("#key").fill(key);
            page.locator("main button[type=submit]").click();
            page.locator(".who").waitFor();
        }
        return window;
    }

    private static String firstEntry(CatalogueKind kind) {
        try {
            String page = service.get("/rulebook/" + kind).body();
            Matcher entry = Pattern.compile("/rulebook/" + kind + "/[^\"]+").matcher(page);
            assertThat(entry.find()).as("entries of %s", kind).isTrue();
            return entry.group();
        } catch (IOException | InterruptedException broken) {
            throw new AssertionError(broken);
        }
    }

    private static void fill() throws IOException, InterruptedException {
        for (String site : List.of("quay-street", "mill-bridge")) {
            service.put("/v1/sites/" + site, """
                    {"name": "%s", "region": "coast", "timeZone": "Europe/London", "currency": "GBP",
                     "regime": "gb-annual"}""".formatted(site.equals(SITE) ? "Quay Street" : "Mill Bridge"));
        }
        service.put("/v1/price-lists/" + SITE, """
                {"hourlyRate": 86, "taxPercent": 20,
                 "parts": {"wheel-cylinder": 25.50, "shoe-set": 48.90, "parking-cable": 39.00, "hub-seal": 14.20},
                 "hours": {"renew wheel-cylinder": 0.6, "renew shoe-set": 1.4, "renew parking-cable": 0.9,
                           "renew hub-seal": 1.1}}""");
        take("oval-drum-reads-as-imbalance", PRESENTED, 1);
        take("oval-drum-reads-as-imbalance", MEASURED, 2);
        take("oiled-lining-and-seized-cable-found", LOOKED_AT, 6);
        take("oiled-lining-and-seized-cable-found", SCOPED, ScenarioEvents.ALL);
        take("oiled-lining-and-seized-cable-repaired", IN_WORK, 25);
        take("oiled-lining-and-seized-cable-repaired", WORKED, 44);
        take("oiled-lining-and-seized-cable-repaired", VERIFIED, ScenarioEvents.ALL);
        take("trace-of-an-oval-drum", TRACED, ScenarioEvents.ALL);
        take("heavy-vehicle-gets-figures-only", HEAVY, ScenarioEvents.ALL);
        take("findings-before-the-vehicle", NOT_PRESENTED, 1);
        take("second-cure-after-a-failed-re-test", FAILED_AGAIN, 49);
        take("second-cure-after-a-failed-re-test", CLOSED, ScenarioEvents.ALL);
        step = service.json("/v1/cases/" + IN_WORK).at("/workPlan/0/id").asText();
        writePolicy();
    }

    private static void writePolicy() throws IOException, InterruptedException {
        ArrayNode departure = ScenarioEvents.of("oval-drum-reads-as-imbalance", MEASURED, 1);
        ((ObjectNode) departure.get(0))
                .put("id", "departure-1")
                .put("type", "org.axlecause.departure.recorded.v1")
                .putObject("data")
                .put("clause", "twin-hydraulic-part")
                .put("reason", "renewed last month")
                .put("by", "Rowan Ames");
        taken(departure);
        service.put("/v1/policies/repairs/draft", DRAFT);
        service.post(
                "/v1/policies/repairs/versions",
                "{\"effectiveFrom\": \"%s\", \"reason\": \"cylinders came back one by one\"}"
                        .formatted(LocalDate.now(ZoneId.of("Europe/London"))));
        service.put(
                "/v1/policies/repairs/draft",
                DRAFT.replace("\"necessity\": \"required\"", "\"necessity\": \"none\"")
                        .replace("3.5", "4"));
        trial = service.post("/v1/policies/repairs/trials", "{\"sites\": [\"quay-street\", \"site-001\"]}")
                .path("id")
                .asText();
        JsonNode done = service.json("/v1/trials/" + trial);
        while (done.path("state").asText().equals("running")) {
            TimeUnit.MILLISECONDS.sleep(200);
            done = service.json("/v1/trials/" + trial);
        }
        tried = done.at("/result/examples/0/reference").asText();
        assertThat(tried).as("the draft changes a case: %s", done).isNotEmpty();
    }

    private static void take(String scenario, String reference, int first) throws IOException, InterruptedException {
        ArrayNode events = ScenarioEvents.of(scenario, reference, first);
        events.forEach(event -> {
            if (event.path("data").has("site")) {
                ((ObjectNode) event.path("data")).put("site", SITE);
            }
        });
        taken(events);
    }

    private static void taken(ArrayNode events) throws IOException, InterruptedException {
        HttpResponse<String> answer = service.batch(Json.text(events));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    }

    /** The script of axe-core, out of its package. */
    private static String axe() throws IOException {
        try (InputStream in = Objects.requireNonNull(AxeBuilder.class.getResourceAsStream("/axe.min.js"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
