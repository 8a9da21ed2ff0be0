package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** Liveness restarts a process, readiness takes it off the list: a dead database is no reason for a restart. */
class HealthIT {

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    private Path folder;

    @Test
    void a_dead_database_makes_the_service_unready_and_leaves_it_alive() throws Exception {
        try (PackagedService service = new PackagedService(folder).start()) {
            assertThat(service.json("/q/health/ready").findValuesAsText("name")).contains("database", "rules");
            assertThat(service.json("/q/health/live").path("checks")).isEmpty();
            ProcessHandle database = database();

            database.destroyForcibly();
            database.onExit().get(30, TimeUnit.SECONDS);

            assertThat(service.get("/q/health/ready").statusCode()).isEqualTo(503);
            assertThat(service.get("/q/health/live").statusCode()).isEqualTo(200);
            assertThat(service.get("/v1/cases").statusCode()).isEqualTo(503);
        }
    }

    private ProcessHandle database() throws Exception {
        long id = Long.parseLong(Files.readAllLines(folder.resolve("embedded/postgresql/postmaster.pid"))
                .get(0));
        return ProcessHandle.of(id).orElseThrow();
    }
}
