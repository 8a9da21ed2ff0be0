package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** Source: PostgreSQL documentation, 26.1 (SQL dump) and 26.2 (file system level backup). */
class BackupIT {

    private static final List<String> SCENARIOS =
            List.of("leaking-cylinder-and-tight-twin", "oiled-lining-and-seized-cable-repaired");

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    private Path folder;

    private Path first;
    private Path second;

    @BeforeEach
    void makeFolders() throws IOException {
        first = Files.createDirectory(folder.resolve("first"));
        second = Files.createDirectory(folder.resolve("second"));
        for (Path passage : List.of(folder, first, second)) {
            Files.setPosixFilePermissions(passage, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    @Test
    void what_is_dumped_by_postgres_own_tools_is_served_alike_from_another_cluster() throws Exception {
        Optional<Path> programs = DebianPostgres.programs();
        assumeTrue(programs.isPresent(), "skipped: no PostgreSQL 15 or newer below /usr/lib/postgresql");
        Path dump = folder.resolve("axlecause.dump");
        Map<String, String> documents;
        try (DebianPostgres cluster = DebianPostgres.start(programs.get(), first.resolve("cluster"));
                PackagedService service = on(cluster, first).start()) {
            documents = documentsOfScenarios(service);

            cluster.client("pg_dump", "--format=custom", "--file=" + dump, "axlecause");
        }

        try (DebianPostgres cluster = DebianPostgres.start(programs.get(), second.resolve("cluster"))) {
            cluster.client("pg_restore", "--exit-on-error", "--dbname=axlecause", dump.toString());
            try (PackagedService service = on(cluster, second).start()) {
                assertThat(documents(service)).isEqualTo(documents);
                assertThat(service.run("verify")).as(service.log()).isZero();
                assertThat(service.present("AFTER-RESTORE").body()).contains("\"accepted\"");
            }
        }
    }

    @Test
    void a_data_folder_copied_while_stopped_starts_elsewhere() throws Exception {
        Map<String, String> documents;
        try (PackagedService service = new PackagedService(first).start()) {
            documents = documentsOfScenarios(service);
        }

        Process copy = new ProcessBuilder(
                        "cp",
                        "-a",
                        first.resolve("embedded").toString(),
                        second.resolve("embedded").toString())
                .inheritIO()
                .start();

        assertThat(copy.waitFor()).isZero();
        try (PackagedService service = new PackagedService(second).start()) {
            assertThat(documents(service)).isEqualTo(documents);
            assertThat(service.present("AFTER-COPY").body()).contains("\"accepted\"");
        }
    }

    private static PackagedService on(DebianPostgres cluster, Path folder) {
        return new PackagedService(folder)
                .with("AXLECAUSE_IDENTITY_KEY", "AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8=")
                .with("QUARKUS_DATASOURCE_JDBC_URL", cluster.url())
                .with("QUARKUS_DATASOURCE_USERNAME", "axlecause_service")
                .with("QUARKUS_DATASOURCE_PASSWORD", "not-asked-for")
                .with("QUARKUS_FLYWAY_USERNAME", "axlecause_owner")
                .with("QUARKUS_FLYWAY_PASSWORD", "not-asked-for");
    }

    private static Map<String, String> documentsOfScenarios(PackagedService service) throws Exception {
        service.putSite();
        for (String scenario : SCENARIOS) {
            String events = Files.readString(Path.of("src/test/resources/scenarios", scenario, "given.json"));
            assertThat(service.batch(events).statusCode()).as(scenario).isEqualTo(200);
        }
        Map<String, String> documents = documents(service);
        assertThat(documents).hasSameSizeAs(SCENARIOS);
        return documents;
    }

    private static Map<String, String> documents(PackagedService service) throws Exception {
        Map<String, String> documents = new TreeMap<>();
        for (String reference : service.json("/v1/cases").findValuesAsText("reference")) {
            documents.put(reference, service.get("/v1/cases/" + reference).body());
        }
        return documents;
    }
}
