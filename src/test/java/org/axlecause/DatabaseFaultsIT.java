package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BooleanSupplier;
import org.axlecause.shared.Await;
import org.axlecause.shared.SmallDisk;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** The packaged service while its database cuts commits off, lets everybody wait, or has no space left. */
class DatabaseFaultsIT {

    private static final int POOL = 16;
    private static final int MANY = 10 * POOL;
    private static final int SENDERS = 4;

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    private Path folder;

    private Installation installation;
    private SmallDisk disk;

    @BeforeEach
    void a_database_stands_alone() {
        installation = new Installation(folder);
    }

    @AfterEach
    void it_ends() throws Exception {
        installation.close();
        if (disk != null) {
            disk.close();
        }
    }

    @Test
    void twenty_commits_that_were_cut_off_lose_and_double_nothing() throws Exception {
        commitsAreCutOff(20);
    }

    @Test
    @Tag("durability")
    void five_hundred_commits_that_were_cut_off_lose_and_double_nothing() throws Exception {
        commitsAreCutOff(500);
    }

    @Test
    void while_all_connections_wait_everybody_is_told_to_come_again_and_health_answers() throws Exception {
        try (PackagedService replica = installation.started()) {
            List<Future<Answer>> waiting = new ArrayList<>();
            int alive;
            try (Connection holder = installation.connection();
                    Statement statement = holder.createStatement()) {
                holder.setAutoCommit(false);
                statement.execute("LOCK TABLE case_file IN SHARE ROW EXCLUSIVE MODE");
                ExecutorService senders = Executors.newFixedThreadPool(MANY);
                for (int number = 0; number < MANY; number++) {
                    String event = Load.presented("WAIT-" + number, "wait-" + number);
                    waiting.add(senders.submit(timed(() -> replica.take(event))));
                }
                Await.until("all that have no connection are answered", () -> answered(waiting) >= MANY - POOL);
                alive = replica.statusOf("/q/health/live");
                Await.until("those that wait for the lock are answered too", () -> answered(waiting) == MANY);
                senders.shutdown();
                holder.rollback();
            }
            long released = System.nanoTime();
            Await.until("events are taken again", () -> isTaken(replica, Load.presented("AFTER", "after")));
            Duration recovery = Duration.ofNanos(System.nanoTime() - released);

            List<Answer> answers = new ArrayList<>();
            for (Future<Answer> answer : waiting) {
                answers.add(answer.get());
            }
            answers.sort(Comparator.comparingLong(Answer::millis));
            System.out.printf(
                    "%d at once on %d connections: without one answered after %d ms at most, with one after %d ms at most;"
                            + " taken %d ms after the release%n",
                    MANY,
                    POOL,
                    answers.get(MANY - POOL - 1).millis(),
                    answers.get(MANY - 1).millis(),
                    recovery.toMillis());
            assertThat(alive).isEqualTo(200);
            assertThat(answers).allMatch(answer -> answer.status() == 503).allMatch(Answer::saysWhenToRetry);
            assertThat(installation.texts("SELECT reference FROM case_file WHERE tenant_id = 'demo'"))
                    .containsExactly("AFTER");
        }
    }

    @Test
    void a_full_disk_refuses_and_loses_nothing_and_heals_once_there_is_space() throws Exception {
        theDiskIsFull(6);
    }

    @Test
    @Tag("durability")
    void a_larger_disk_that_fills_under_load_refuses_and_loses_nothing_and_heals_once_there_is_space()
            throws Exception {
        theDiskIsFull(40);
    }

    private void theDiskIsFull(int megabytes) throws Exception {
        assumeTrue(SmallDisk.isPossible(), "not run: this machine lets nobody mount a disk of limited size");
        disk = SmallDisk.mount(folder.resolve("small"), megabytes);
        try (PackagedService replica = installation.started()) {
            disk.moveTables(installation.database(), "event", "case_file");
            try (Load load = new Load(List.of(replica))) {
                Await.until("the disk is full", () -> load.statuses().containsKey(503));
                int alive = replica.statusOf("/q/health/live");
                int acknowledgedWhenFull = load.acknowledged().size();
                disk.grow(10 * megabytes);
                load.awaitAcknowledged(acknowledgedWhenFull + 100);
                load.stop();

                System.out.printf("full at %d MB; answers by status: %s%n", megabytes, load.statuses());
                assertThat(alive).isEqualTo(200);
                assertThat(load.wrong()).isEmpty();
                assertThat(load.cutOff()).isEmpty();
                assertThat(load.acknowledged()).hasSizeGreaterThanOrEqualTo(acknowledgedWhenFull + 100);
                installation.nothingIsLostOrDoubled(load.acknowledged());
            }
        }
    }

    private void commitsAreCutOff(int cuts) throws Exception {
        try (CommitCutter cutter = new CommitCutter(installation.databasePort());
                PackagedService replica = installation.replica()) {
            String address = installation.settings().get("QUARKUS_DATASOURCE_JDBC_URL");
            replica.with("QUARKUS_DATASOURCE_JDBC_URL", cutter.through(address)).start();
            replica.putSite();
            Set<String> acknowledged = new ConcurrentSkipListSet<>();
            BooleanSupplier enough = () -> cutter.answersLost() + cutter.commitsLost() >= cuts;

            cutter.cut(true);
            ExecutorService senders = Executors.newFixedThreadPool(SENDERS);
            List<Future<Integer>> retries = new ArrayList<>();
            for (int sender = 0; sender < SENDERS; sender++) {
                int own = sender;
                retries.add(senders.submit(() -> sendUntil(enough, replica, own, acknowledged)));
            }
            int retried = 0;
            for (Future<Integer> ended : retries) {
                retried += ended.get();
            }
            senders.shutdown();
            cutter.cut(false);

            System.out.printf(
                    "%d commits done unheard, %d never begun; %d events acknowledged after %d retries%n",
                    cutter.answersLost(), cutter.commitsLost(), acknowledged.size(), retried);
            assertThat(cutter.answersLost()).isPositive();
            assertThat(cutter.commitsLost()).isPositive();
            assertThat(retried).isPositive();
            installation.nothingIsLostOrDoubled(acknowledged);
        }
    }

    /** Sends events one after another, each until it is acknowledged; how many times one had to be sent again. */
    private static int sendUntil(BooleanSupplier enough, PackagedService replica, int sender, Set<String> acknowledged)
            throws Exception {
        int retries = 0;
        for (int number = 0; !enough.getAsBoolean(); number++) {
            String reference = "CUT-" + sender + "-" + number / 5;
            String id = "cut-" + sender + "-" + number;
            String event = number % 5 == 0
                    ? Load.presented(reference, id)
                    : Load.found(reference, id, number % 5, number % 2 == 0 ? "worn" : "glazed");
            HttpResponse<String> answer = replica.take(event);
            while (answer.statusCode() != 200) {
                assertThat(answer.statusCode()).as(answer.body()).isEqualTo(503);
                assertThat(answer.headers().firstValue("Retry-After")).isPresent();
                retries++;
                answer = replica.take(event);
            }
            acknowledged.add(id);
        }
        return retries;
    }

    private static long answered(List<Future<Answer>> waiting) {
        return waiting.stream().filter(Future::isDone).count();
    }

    private static boolean isTaken(PackagedService replica, String event) {
        try {
            return replica.take(event).statusCode() == 200;
        } catch (IOException | InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Callable<Answer> timed(Callable<HttpResponse<String>> request) {
        return () -> {
            long begin = System.nanoTime();
            HttpResponse<String> answer = request.call();
            return new Answer(
                    answer.statusCode(),
                    answer.headers().firstValue("Retry-After").isPresent(),
                    Duration.ofNanos(System.nanoTime() - begin).toMillis());
        };
    }

    private record Answer(int status, boolean saysWhenToRetry, long millis) {}
}
