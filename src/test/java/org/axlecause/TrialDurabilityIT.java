package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.axlecause.casefile.CaseCopies;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The packaged service killed in the middle of a trial of a policy: once it is started again the trial is finished by
 * itself, with the numbers and examples of one that nobody disturbed.
 */
class TrialDurabilityIT extends WithInstallation {

    private static final Path SCENARIOS = Path.of("src/test/resources/scenarios");
    private static final List<String> STORIES = List.of(
            "leaking-cylinder-and-tight-twin",
            "adjusters-not-taken-up",
            "oiled-lining-and-seized-cable-found",
            "seized-calliper-piston");
    private static final String DRAFT = """
            {"means": "what a stricter chain would do",
             "chain": [{"clause": "twin-hydraulic-part", "necessity": "required"},
                       {"clause": "hardware-kit-with-shoes", "necessity": "required"},
                       {"clause": "twin-calliper", "necessity": "none"}]}
            """;
    private static final String MILL_BRIDGE = """
            {"name": "Mill Bridge", "timeZone": "Europe/London", "currency": "GBP", "regime": "gb-annual"}
            """;
    private static final long MOST_SECONDS = 3600;

    @Test
    void a_trial_that_is_cut_by_a_kill_ends_as_one_that_nobody_disturbed() throws Exception {
        aTrialIsCut(240, 1);
    }

    @Test
    @Tag("durability")
    void a_trial_that_is_cut_by_ten_kills_ends_as_one_that_nobody_disturbed() throws Exception {
        aTrialIsCut(20_000, 10);
    }

    private void aTrialIsCut(int cases, int kills) throws Exception {
        try (PackagedService replica = installation.replica().with("AXLECAUSE_TRIALS_BATCH", "2")) {
            replica.start();
            replica.putSite();
            replica.put("/v1/sites/mill-bridge", MILL_BRIDGE);
            store(replica, cases);
            replica.put("/v1/policies/repairs/draft", DRAFT);
            JsonNode undisturbed = ended(replica, begun(replica));

            String cut = begun(replica);
            for (int kill = 1; kill <= kills; kill++) {
                int least = cases / (kills + 2) * kill;
                JsonNode seen =
                        awaited(replica, cut, trial -> trial.path("tried").asInt() >= least);
                assertThat(seen.path("state").asText())
                        .as("a kill that comes in time: %s", seen)
                        .isEqualTo("running");
                replica.process().destroyForcibly().waitFor();
                replica.start();
            }
            JsonNode resumed = ended(replica, cut);

            System.out.printf("%d cases, %d kills: %s%n", cases, kills, resumed.at("/result/all"));
            assertThat(undisturbed.path("tried").asInt()).isEqualTo(cases);
            assertThat(undisturbed.at("/result/all/changed").asInt()).isBetween(cases / 4, cases - 1);
            assertThat(undisturbed.at("/result/examples")).isNotEmpty();
            assertThat(whatCameOf(resumed)).isEqualTo(whatCameOf(undisturbed));
        }
    }

    /** One case of each story, copied until there are so many. */
    private void store(PackagedService replica, int cases) throws Exception {
        try (Connection connection = installation.connection()) {
            for (int story = 0; story < STORIES.size(); story++) {
                String told =
                        Files.readString(SCENARIOS.resolve(STORIES.get(story)).resolve("given.json"));
                String reference =
                        Json.mapper().readTree(told).path(0).path("subject").asText();
                HttpResponse<String> answer = replica.batch(told);
                assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
                CaseCopies.make(connection, "demo", reference, "STORY-" + story + "-", cases / STORIES.size() - 1);
            }
        }
    }

    private static String begun(PackagedService replica) throws IOException, InterruptedException {
        return replica.post("/v1/policies/repairs/trials", "{}").path("id").asText();
    }

    private static JsonNode ended(PackagedService replica, String trial) throws IOException, InterruptedException {
        JsonNode ended =
                awaited(replica, trial, seen -> !seen.path("state").asText().equals("running"));
        assertThat(ended.path("state").asText()).isEqualTo("done");
        return ended;
    }

    /** Everything but the trial's own id, which stands in the links of its examples, and its times. */
    private static JsonNode whatCameOf(JsonNode trial) {
        ObjectNode kept = trial.deepCopy();
        kept.remove(List.of("id", "createdAt", "finishedAt"));
        kept.at("/result/examples").forEach(example -> ((ObjectNode) example).remove("link"));
        return kept;
    }

    /** The trial once that holds. */
    private static JsonNode awaited(PackagedService replica, String trial, Predicate<JsonNode> met)
            throws IOException, InterruptedException {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(MOST_SECONDS);
        JsonNode seen = replica.json("/v1/trials/" + trial);
        while (!met.test(seen)) {
            assertThat(System.nanoTime()).as("trial as it is: %s", seen).isLessThan(deadline);
            TimeUnit.MILLISECONDS.sleep(20);
            seen = replica.json("/v1/trials/" + trial);
        }
        return seen;
    }
}
