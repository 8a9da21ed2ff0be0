package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Two replicas behind a balancer are replaced one after the other while workshops post. */
class RollingUpdateIT extends WithInstallation {

    private static final String MIGRATIONS = "src/main/resources/db/migration";
    private static final int ACKNOWLEDGED_BETWEEN = 60;

    @Test
    void replicas_are_restarted_one_after_the_other_without_a_failed_request() throws Exception {
        replicasAreReplaced(PackagedService.APPLICATION);
    }

    /** The older release is built from the commit before the newest migration, so that the schema changes under it. */
    @Test
    @Tag("durability")
    void the_release_before_the_newest_migration_is_replaced_without_a_failed_request() throws Exception {
        String newest = output(List.of("git", "log", "-1", "--diff-filter=A", "--format=%H", "--", MIGRATIONS));
        String before = output(List.of("git", "rev-parse", newest + "^"));
        Path sources = folder.resolve("before");
        output(List.of("git", "worktree", "add", "--detach", sources.toString(), before));
        try {
            output(List.of(
                    "mvn",
                    "-q",
                    "-B",
                    "-Dquick",
                    "-Dmaven.test.skip",
                    "-f",
                    sources.resolve("pom.xml").toString(),
                    "package"));
            System.out.printf("replaced release: commit %s%n", before);

            replicasAreReplaced(sources.resolve("target").resolve("quarkus-app"));
        } finally {
            output(List.of("git", "worktree", "remove", "--force", sources.toString()));
        }
    }

    private void replicasAreReplaced(Path older) throws Exception {
        List<PackagedService> running = new ArrayList<>();
        try (Balancer balancer = new Balancer();
                Load load = new Load(balancer::pick)) {
            for (int number = 0; number < 2; number++) {
                PackagedService replica = installation.replica().from(older).start();
                replica.putSite();
                running.add(replica);
                balancer.add(replica);
            }
            load.awaitAcknowledged(ACKNOWLEDGED_BETWEEN);

            assertThat(installation.replica().run("migrate")).isZero();
            load.awaitAcknowledged(2 * ACKNOWLEDGED_BETWEEN);
            for (int number = 0; number < 2; number++) {
                PackagedService fresh = installation
                        .replica()
                        .with("QUARKUS_FLYWAY_MIGRATE_AT_START", "false")
                        .start();
                running.add(fresh);
                balancer.add(fresh);
                int before = load.acknowledged().size();
                load.awaitAcknowledged(before + ACKNOWLEDGED_BETWEEN);
                running.get(number).stop();
                balancer.remove(running.get(number));
                load.awaitAcknowledged(load.acknowledged().size() + ACKNOWLEDGED_BETWEEN);
            }
            load.stop();

            System.out.printf("answers by status: %s, cut off: %s%n", load.statuses(), load.cutOff());
            assertThat(load.wrong()).isEmpty();
            assertThat(load.cutOff()).isEmpty();
            assertThat(load.statuses()).containsOnlyKeys(200);
            installation.nothingIsLostOrDoubled(load.acknowledged());
        } finally {
            running.forEach(PackagedService::close);
        }
    }

    private String output(List<String> line) throws IOException, InterruptedException {
        Path output = Files.createTempFile(folder, "output-", ".txt");
        Process process = new ProcessBuilder(line)
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
        int code = process.waitFor();
        String text = Files.readString(output).strip();
        assertThat(code).as("%s: %s", line, text).isZero();
        return text;
    }
}
