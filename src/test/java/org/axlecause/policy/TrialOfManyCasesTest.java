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
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.axlecause.casefile.CaseJudge;
import org.axlecause.casefile.CaseStore;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * A trial of many stored cases, copies of one told case. It prints at what rate cases are tried and at what rate the same
 * machine judges stored cases anew, as a late event would; {@code -Dtrial.cases=N} takes so many.
 */
@QuarkusTest
@TestProfile(WithKeys.class)
class TrialOfManyCasesTest {

    private static final Path STORY =
            Path.of("src/test/resources/scenarios/leaking-cylinder-and-tight-twin/given.json");
    private static final int JUDGED = 200;

    @Inject
    MakeKey makeKey;

    @Inject
    RunTrials runTrials;

    @Inject
    CaseJudge judge;

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
        as(admin)
                .body("{\"name\": \"Site\", \"timeZone\": \"Europe/London\", \"currency\": \"GBP\", \"regime\":"
                        + " \"gb-annual\"}")
                .put("/v1/sites/quay-street")
                .then()
                .statusCode(200);
        String story = Files.readString(STORY);
        String reference = Json.mapper().readTree(story).path(0).path("subject").asText();
        given().header("Authorization", "Bearer " + admin)
                .contentType("application/cloudevents-batch+json; charset=UTF-8")
                .body(story)
                .post("/v1/events")
                .then()
                .statusCode(200);
        copy(reference, count - 1);
        as(admin)
                .body(
                        "{\"means\": \"how we repair\", \"chain\": [{\"clause\": \"hardware-kit-with-shoes\", \"necessity\":"
                                + " \"required\"}, {\"clause\": \"retest-imbalance\", \"value\": 12, \"unit\": \"%\"}]}")
                .put("/v1/policies/repairs/draft")
                .then()
                .statusCode(200);
        int warmed = Math.min(JUDGED, count - 1);
        judgeAgain(warmed);

        double judging = warmed / seconds(() -> judgeAgain(warmed));
        Response begun = as(admin).body("{}").post("/v1/policies/repairs/trials");
        long before = usedMemory();
        double trying = count / seconds(runTrials::run);
        long after = usedMemory();
        Response done = as(admin).get("/v1/trials/" + begun.jsonPath().getString("id"));

        System.out.printf(
                Locale.ROOT,
                "%d cases tried at %.0f a second; stored cases are judged anew at %.0f a second; memory %+d MiB%n",
                count,
                trying,
                judging,
                (after - before) >> 20);
        assertThat(done.jsonPath().getString("state")).isEqualTo("done");
        assertThat(done.jsonPath().getInt("tried")).isEqualTo(count);
        int changed = done.jsonPath().getInt("result.all.changed");
        assertThat(changed).isIn(0, count);
        assertThat(done.jsonPath().getInt("result.all.linesOfOtherNecessity")).isIn(0, count);
        assertThat(done.asString().length()).isLessThan(50_000);
    }

    private void judgeAgain(int count) {
        AtomicInteger next = new AtomicInteger();
        CompletableFuture.allOf(IntStream.range(0, Runtime.getRuntime().availableProcessors())
                        .mapToObj(worker -> CompletableFuture.runAsync(
                                () -> {
                                    for (int number = next.incrementAndGet();
                                            number <= count;
                                            number = next.incrementAndGet()) {
                                        judgeAgain(name(number));
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
                cases.lock(List.of(reference), OffsetDateTime.now(ZoneOffset.UTC));
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
        return String.format(Locale.ROOT, "MANY-%06d", number);
    }

    private void copy(String reference, int copies) throws SQLException {
        String name = "'MANY-' || lpad(n::text, 6, '0')";
        try (Connection connection = TestDatabase.superuser()) {
            for (String sql : List.of(
                    "INSERT INTO case_file (tenant_id, reference, site, status, opened, opened_day, version, make, model,"
                            + " document, judging, policy, rulebook, chain_length, chained_length, chain_hash, changed_at)"
                            + " SELECT tenant_id, " + name + ", site, status, opened, opened_day, version, make, model,"
                            + " document, judging, policy, rulebook, chain_length, chain_length, chain_hash, changed_at"
                            + " FROM case_file, generate_series(1, ?) n WHERE tenant_id = ? AND reference = ?",
                    "INSERT INTO event (tenant_id, reference, position, source, id, type, time, time_sent, received_at,"
                            + " actor, body, digest, previous, hash) SELECT tenant_id, " + name
                            + ", position, source, id,"
                            + " type, time, time_sent, received_at, actor, body, digest, previous, hash"
                            + " FROM event, generate_series(1, ?) n WHERE tenant_id = ? AND reference = ?",
                    "INSERT INTO test_figures (tenant_id, reference, source, id, figures) SELECT tenant_id, " + name
                            + ", source, id, figures FROM test_figures, generate_series(1, ?) n"
                            + " WHERE tenant_id = ? AND reference = ?")) {
                try (PreparedStatement insert = connection.prepareStatement(sql)) {
                    insert.setInt(1, copies);
                    insert.setString(2, tenant);
                    insert.setString(3, reference);
                    insert.executeUpdate();
                }
            }
        }
    }
}
