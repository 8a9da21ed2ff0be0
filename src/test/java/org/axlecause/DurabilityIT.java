package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Replicas of the packaged service on one database, killed, cut off and raced. What was acknowledged is compared with what
 * is stored: nothing lost, nothing doubled, every case judged. Each test has a short form in every build and a long one
 * under {@code -Pdurability}.
 */
class DurabilityIT extends WithInstallation {

    private static final long SEED = 20260302;

    @Test
    void two_kills_of_the_service_under_load_lose_and_double_nothing() throws Exception {
        theServiceIsKilled(2, 60);
    }

    @Test
    @Tag("durability")
    void fifty_kills_of_the_service_under_load_lose_and_double_nothing() throws Exception {
        theServiceIsKilled(50, 200);
    }

    @Test
    void a_kill_of_the_database_under_load_loses_nothing_and_heals_without_a_restart() throws Exception {
        theDatabaseIsKilled(1);
    }

    @Test
    @Tag("durability")
    void twenty_kills_of_the_database_under_load_lose_nothing_and_heal_without_a_restart() throws Exception {
        theDatabaseIsKilled(20);
    }

    @Test
    void events_sent_several_times_to_two_replicas_take_effect_once() throws Exception {
        eventsAreSentSeveralTimes(100);
    }

    @Test
    @Tag("durability")
    void thousands_of_events_sent_several_times_to_two_replicas_take_effect_once() throws Exception {
        eventsAreSentSeveralTimes(3000);
    }

    @Test
    void two_replicas_that_race_on_one_case_take_all_its_events_one_after_the_other() throws Exception {
        replicasRace(100);
    }

    @Test
    void events_in_any_order_give_the_same_document_as_in_the_order_of_time() throws Exception {
        eventsAreShuffled(5, 20);
    }

    @Test
    @Tag("durability")
    void a_thousand_cases_with_events_in_any_order_give_the_same_documents_as_in_the_order_of_time() throws Exception {
        eventsAreShuffled(1000, 20);
    }

    private void theServiceIsKilled(int kills, int acknowledgedBetween) throws Exception {
        try (PackagedService replica = installation.started()) {
            Set<String> acknowledged;
            List<Long> readyMillis = new ArrayList<>();
            long began = System.nanoTime();
            try (Load load = new Load(List.of(replica))) {
                for (int kill = 1; kill <= kills; kill++) {
                    load.awaitAcknowledged(kill * acknowledgedBetween);
                    replica.process().destroyForcibly().waitFor();
                    long killed = System.nanoTime();
                    replica.start();
                    readyMillis.add(millisSince(killed));
                }
                load.awaitAcknowledged((kills + 1) * acknowledgedBetween);
                long served = millisSince(began)
                        - readyMillis.stream().mapToLong(Long::longValue).sum();
                load.stop();
                acknowledged = load.acknowledged();
                assertThat(load.wrong()).isEmpty();
                Collections.sort(readyMillis);
                System.out.printf(
                        "%d kills, answers by status: %s; ready again after %d ms (median) to %d ms;"
                                + " %d events acknowledged in %d ms of service%n",
                        kills,
                        load.statuses(),
                        readyMillis.get(kills / 2),
                        readyMillis.get(kills - 1),
                        acknowledged.size(),
                        served);
            }

            assertThat(acknowledged).hasSizeGreaterThanOrEqualTo((kills + 1) * acknowledgedBetween);
            installation.nothingIsLostOrDoubled(acknowledged);
        }
    }

    private static long millisSince(long nanoTime) {
        return TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - nanoTime);
    }

    private void theDatabaseIsKilled(int kills) throws Exception {
        try (PackagedService replica = installation.started()) {
            Set<String> acknowledged;
            try (Load load = new Load(List.of(replica))) {
                for (int kill = 1; kill <= kills; kill++) {
                    load.awaitAcknowledged(kill * 60);
                    installation.killDatabase();
                    int before = load.acknowledged().size();
                    load.awaitAcknowledged(before + 20);
                }
                load.stop();
                acknowledged = load.acknowledged();
                System.out.printf("%d kills of the database, answers by status: %s%n", kills, load.statuses());
                assertThat(load.wrong()).isEmpty();
            }

            assertThat(replica.process().isAlive()).isTrue();
            assertThat(acknowledged).hasSizeGreaterThanOrEqualTo(kills * 60 + 20);
            installation.nothingIsLostOrDoubled(acknowledged);
        }
    }

    private void eventsAreSentSeveralTimes(int count) throws Exception {
        System.out.printf("%d events several times, seed %d%n", count, SEED);
        Random random = new Random(SEED);
        List<String> sends = new ArrayList<>();
        for (int number = 0; number < count; number++) {
            String event = Load.found("TWICE-" + number % 20, "twice-" + number, number % 60, "worn");
            sends.addAll(Collections.nCopies(1 + random.nextInt(5), event));
        }
        Collections.shuffle(sends, random);
        try (PackagedService one = installation.started();
                PackagedService other = installation.started()) {
            List<HttpResponse<String>> answers = sentAtOnce(sends, List.of(one, other));
            HttpResponse<String> altered = one.take(Load.found("TWICE-1", "twice-1", 1, "glazed"));

            assertThat(answers)
                    .allSatisfy(answer ->
                            assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200));
            assertThat(answers.stream().filter(answer -> answer.body().contains("\"accepted\"")))
                    .hasSize(count);
            assertThat(altered.statusCode()).isEqualTo(409);
            installation.nothingIsLostOrDoubled(IntStream.range(0, count)
                    .mapToObj(number -> "twice-" + number)
                    .collect(Collectors.toSet()));
        }
    }

    private void replicasRace(int count) throws Exception {
        List<String> sends = IntStream.range(0, count)
                .mapToObj(number -> Load.found("RACE-1", "race-" + number, number % 60, "worn"))
                .toList();
        try (PackagedService one = installation.started();
                PackagedService other = installation.started()) {
            List<HttpResponse<String>> answers = sentAtOnce(sends, List.of(one, other));

            assertThat(answers)
                    .allSatisfy(answer ->
                            assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200));
            assertThat(installation.numbers("SELECT position FROM event WHERE tenant_id = 'demo' ORDER BY position"))
                    .containsExactlyElementsOf(
                            IntStream.rangeClosed(1, count).boxed().toList());
            assertThat(installation.numbers("SELECT version FROM case_file WHERE tenant_id = 'demo'"))
                    .containsExactly(count);
        }
    }

    private void eventsAreShuffled(int cases, int events) throws Exception {
        System.out.printf("%d cases shuffled, seed %d%n", cases, SEED);
        Random random = new Random(SEED);
        try (PackagedService replica = installation.started()) {
            for (int number = 0; number < cases; number++) {
                List<String> told = new ArrayList<>();
                told.add(Load.presented("CASE", "x-0"));
                for (int event = 1; event < events; event++) {
                    told.add(Load.found(
                            "CASE",
                            "x-" + event,
                            event % 60,
                            List.of("worn", "glazed", "sound").get(event % 3)));
                }
                String sorted = "SORTED-" + number;
                String shuffled = "ANYHOW-" + number;
                send(replica, told, sorted);
                Collections.shuffle(told, random);
                send(replica, told, shuffled);

                assertThat(document(replica, shuffled)).isEqualTo(document(replica, sorted));
            }
        }
    }

    private static void send(PackagedService replica, List<String> events, String reference) throws Exception {
        for (String event : events) {
            HttpResponse<String> answer = replica.take(
                    event.replace("\"CASE\"", '"' + reference + '"').replace("\"x-", '"' + reference + "-"));
            assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        }
    }

    /** The document with the reference left out, which is all that may differ. */
    private static String document(PackagedService replica, String reference) throws Exception {
        return replica.get("/v1/cases/" + reference).body().replace(reference, "CASE");
    }

    private static List<HttpResponse<String>> sentAtOnce(List<String> events, List<PackagedService> replicas) {
        ExecutorService senders = Executors.newFixedThreadPool(16);
        try {
            List<CompletableFuture<HttpResponse<String>>> answers = new ArrayList<>();
            for (int number = 0; number < events.size(); number++) {
                String event = events.get(number);
                PackagedService replica = replicas.get(number % replicas.size());
                answers.add(CompletableFuture.supplyAsync(() -> posted(replica, event), senders));
            }
            return answers.stream().map(CompletableFuture::join).toList();
        } finally {
            senders.shutdown();
        }
    }

    private static HttpResponse<String> posted(PackagedService replica, String event) {
        try {
            return replica.take(event);
        } catch (IOException | InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
