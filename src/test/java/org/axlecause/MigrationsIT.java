package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** Migrations as a job of their own, so that the service needs no role that owns tables. */
class MigrationsIT {

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    private Path folder;

    @Test
    void a_service_that_may_not_migrate_refuses_an_empty_schema_and_starts_after_the_command() throws Exception {
        try (PackagedService service = new PackagedService(folder).with("QUARKUS_FLYWAY_MIGRATE_AT_START", "false")) {
            assertThat(service.run()).isEqualTo(1);
            assertThat(service.log())
                    .contains("The schema of the database is empty, and this release needs version ")
                    .contains("Run the command migrate of this release with QUARKUS_FLYWAY_USERNAME")
                    .doesNotContain("\tat ");

            assertThat(service.run("migrate")).as(service.log()).isZero();
            assertThat(service.log()).contains("The schema is at version ");
            assertThat(service.run("migrate")).as("a second run").isZero();

            service.start();
            assertThat(service.get("/v1/cases").statusCode()).isEqualTo(200);
        }
    }
}
