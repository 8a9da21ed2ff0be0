package org.axlecause.policy;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.policy.ChainMessages.as;

import io.quarkus.arc.Arc;
import io.quarkus.arc.ManagedContext;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.axlecause.casefile.CaseCopies;
import org.axlecause.casefile.CaseJudge;
import org.axlecause.casefile.CaseStore;
import org.axlecause.facts.Policy;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.PastCases;
import org.axlecause.judgement.PastCases.Past;
import org.axlecause.judgement.PastCases.Run;
import org.axlecause.judgement.PastCases.Wanted;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A trial of many stored cases, copies of told cases in turn, after one over a single site. It prints at what rate cases
 * are tried, at what rate the same machine tries and judges cases that are in memory, and at what rate it judges stored
 * cases anew, as a late event would; {@code -Dtrial.cases=N} takes so many.
 */
@QuarkusTest
@TestProfile(TrialOfManyCasesTest.BatchesAsShipped.class)
class TrialOfManyCasesTest {

    private static final Path SCENARIOS = Path.of("src/test/resources/scenarios");
    private static final List<String> STORIES = List.of(
            "leaking-cylinder-and-tight-twin",
            "leaking-cylinder-soaks-lining",
            "oiled-lining-and-seized-cable-repaired",
            "oval-drum-reads-as-imbalance",
            "choked-hose-holds-a-wheel",
            "seized-calliper-piston",
            "seized-slide-pins",
            "adjusters-not-taken-up",
            "glazed-linings-both-sides",
            "stuck-piston-parking-brake-even",
            "union-turns-its-pipe",
            "trace-of-an-oval-drum",
            "two-runs-of-a-close-call");
    private static final String DRAFT = """
            {"means": "how we repair",
             "chain": [{"clause": "hardware-kit-with-shoes", "necessity": "required"},
                       {"clause": "retest-imbalance", "value": 12, "unit": "%"}]}""";
    private static final String SITE = "quay-street";
    private static final String OTHER_SITE = "mill-bridge";
    private static final int JUDGED = 200;

    /** In memory the cases are judged last, when the virtual machine has long made its best of the code, and so often. */
    private static final int ROUNDS = 5;

    @Inject
    MakeKey makeKey;

    @Inject
    RunTrials runTrials;

    @Inject
    CaseJudge judge;

    @Inject
    Judge pureJudge;

    @Inject
    PastCases pastCases;

    @Inject
    CaseStore cases;

    @Inject
    TenantTransaction transaction;

    private final ExecutorService threads =
            Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    private final String tenant = "many-" + UUID.randomUUID().toString().substring(0, 8);

    @Test
    void many_cases_are_tried() throws IOException, SQLException {
        tried(Integer.getInteger("trial.cases", 400));
    }

    @Test
    @Tag("durability")
    void a_hundred_thousand_cases_are_tried() throws IOException, SQLException {
        tried(Integer.getInteger("trial.cases", 100_000));
    }

    private void tried(int count) throws IOException, SQLException {
        String admin = makeKey.make(tenant, new KeyTerms("chain", Role.ADMIN, null, null), "test");
        for (String site : List.of(SITE, OTHER_SITE)) {
            as(admin)
                    .body("{\"name\": \"Site\", \"timeZone\": \"Europe/London\", \"currency\": \"GBP\", \"regime\":"
                            + " \"gb-annual\"}")
                    .put("/v1/sites/" + site)
                    .then()
                    .statusCode(200);
        }
        int copies = count - STORIES.size();
        for (int story = 0; story < STORIES.size(); story++) {
            copy(told(STORIES.get(story), admin), new CaseCopies.Numbers(story + 1, copies, STORIES.size()));
        }
        as(admin).body(DRAFT).put("/v1/policies/repairs/draft").then().statusCode(200);
        int warmed = Math.min(JUDGED, copies);
        judgeAgain(warmed);

        double judging = warmed / seconds(() -> judgeAgain(warmed));
        tryOver("{\"sites\": [\"" + OTHER_SITE + "\"]}", admin);
        runTrials.run();
        Response begun = tryOver("{}", admin);
        long before = usedMemory();
        double trying = count / seconds(runTrials::run);
        long after = usedMemory();
        Response done = as(admin).get("/v1/trials/" + begun.jsonPath().getString("id"));
        List<Past> recalled = recalled(warmed);
        Policy draft =
                MergedPolicy.of(PolicyDocument.of(DRAFT), null, SITE).toPolicy("draft", 0, PolicyFile.baseline());
        TryCase tryCase = new TryCase(pureJudge);
        double inMemory = inMemory(recalled, past -> pureJudge.judge(past.matter()));
        Map<String, String> documents = inTransaction(() -> pastCases.lastingDocuments(recalled));
        double triedInMemory = inMemory(recalled, past -> tryCase.tried(past, draft, documents.get(reference(past))));

        System.out.printf(
                Locale.ROOT,
                "%d cases tried at %.0f a second; cases in memory are tried at %.0f and judged at %.0f a second, stored"
                        + " cases judged anew and kept at %.0f a second; memory %+d MiB%n",
                count,
                trying,
                triedInMemory,
                inMemory,
                judging,
                (after - before) >> 20);
        assertThat(done.jsonPath().getString("state")).isEqualTo("done");
        assertThat(done.jsonPath().getInt("tried")).isEqualTo(count);
        assertThat(done.jsonPath().getInt("result.all.failed")).isZero();
        assertThat(done.jsonPath().getInt("result.all.changed")).isEqualTo(changed(copies, draft, tryCase));
        assertThat(done.asString().length()).isLessThan(50_000);
    }

    private static Response tryOver(String wanted, String admin) {
        return as(admin).body(wanted).post("/v1/policies/repairs/trials");
    }

    private static String reference(Past past) {
        return past.matter().history().reference();
    }

    /** Sends a scenario's events; the reference of its case. */
    private static String told(String story, String admin) throws IOException {
        String events = Files.readString(SCENARIOS.resolve(story).resolve("given.json"));
        given().header("Authorization", "Bearer " + admin)
                .contentType("application/cloudevents-batch+json; charset=UTF-8")
                .body(events)
                .post("/v1/events")
                .then()
                .statusCode(200);
        return Json.mapper().readTree(events).path(0).path("subject").asText();
    }

    private void copy(String reference, CaseCopies.Numbers numbers) throws SQLException {
        try (Connection connection = TestDatabase.superuser()) {
            CaseCopies.make(connection, tenant, reference, "MANY-", numbers);
        }
    }

    /** How many cases the draft changes: each story's own case and its copies alike. */
    private int changed(int copies, Policy draft, TryCase tryCase) {
        List<Past> oneOfEach = recalled(STORIES.size());
        return IntStream.range(0, STORIES.size())
                .filter(story ->
                        tryCase.tried(oneOfEach.get(story), draft, null).all().changed() == 1)
                .map(story -> 1 + (copies - story + STORIES.size() - 1) / STORIES.size())
                .sum();
    }

    /** Batches of the size that they have in a service, not of that with which tests get many of them. */
    public static class BatchesAsShipped extends WithKeys {

        @Override
        public Map<String, String> getConfigOverrides() {
            Map<String, String> overrides = new TreeMap<>(super.getConfigOverrides());
            overrides.put("axlecause.trials.batch", "50");
            return overrides;
        }
    }

    private List<Past> recalled(int count) {
        return inTransaction(
                () -> pastCases.recall(new Wanted(null, null, null, null), new Run(name(1), name(count), count)));
    }

    private <T> T inTransaction(Supplier<T> work) {
        ManagedContext context = Arc.container().requestContext();
        context.activate();
        try {
            return transaction.call(tenant, work);
        } finally {
            context.terminate();
        }
    }

    /** At what rate all cores do this with cases that were recalled: what the machine can do where nothing is read or kept. */
    private double inMemory(List<Past> recalled, Consumer<Past> work) {
        int count = ROUNDS * recalled.size();
        return count / seconds(() -> atOnce(count, number -> work.accept(recalled.get(number % recalled.size()))));
    }

    private void judgeAgain(int count) {
        atOnce(count, number -> judgeAgain(name(number)));
    }

    private void atOnce(int count, IntConsumer work) {
        AtomicInteger next = new AtomicInteger();
        CompletableFuture.allOf(IntStream.range(0, Runtime.getRuntime().availableProcessors())
                        .mapToObj(worker -> CompletableFuture.runAsync(
                                () -> {
                                    for (int number = next.incrementAndGet();
                                            number <= count;
                                            number = next.incrementAndGet()) {
                                        work.accept(number);
                                    }
                                },
                                threads))
                        .toArray(CompletableFuture[]::new))
                .join();
    }

    private void judgeAgain(String reference) {
        ManagedContext context = Arc.container().requestContext();
        context.activate();
        try {
            transaction.run(tenant, () -> {
                cases.lock(reference, List.of(), OffsetDateTime.now(ZoneOffset.UTC));
                judge.judgeAndKeep(reference);
            });
        } finally {
            context.terminate();
        }
    }

    private static double seconds(Runnable work) {
        long start = System.nanoTime();
        work.run();
        return (System.nanoTime() - start) / 1e9;
    }

    private static long usedMemory() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    private static String name(int number) {
        return CaseCopies.name("MANY-", number);
    }
}
