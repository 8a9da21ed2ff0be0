package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sources: PostgreSQL 17 documentation, 19.5 (durability settings), 20.5 (password authentication), 18.5 (shutdown). */
class EmbeddedDatabaseTest {

    @TempDir
    Path folder;

    @Test
    void it_is_durable_closed_to_strangers_and_kept_between_runs() throws Exception {
        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder, 0)) {
            try (Connection connection = database.superuserConnection("axlecause");
                    Statement statement = connection.createStatement()) {
                assertThat(value(statement, "SHOW fsync")).isEqualTo("on");
                assertThat(value(statement, "SHOW synchronous_commit")).isEqualTo("on");
                assertThat(value(statement, "SHOW full_page_writes")).isEqualTo("on");
                assertThat(value(statement, "SHOW listen_addresses")).isEqualTo("127.0.0.1");
                assertThat(value(statement, "SHOW unix_socket_directories")).isEmpty();
                assertThat(value(statement, "SHOW server_version")).startsWith("17.");
                assertThat(value(statement, "SELECT string_agg(DISTINCT auth_method, ',') FROM pg_hba_file_rules"))
                        .isEqualTo("scram-sha-256");
                assertThat(value(
                                statement,
                                "SELECT datlocprovider::text || ' ' || datlocale FROM pg_database"
                                        + " WHERE datname = 'axlecause'"))
                        .isEqualTo("b C.UTF-8");
                assertThat(value(
                                statement,
                                "SELECT string_agg(rolname, ',' ORDER BY rolname) FROM pg_roles"
                                        + " WHERE rolname LIKE 'axlecause%' AND rolcanlogin AND NOT rolsuper"
                                        + " AND NOT rolbypassrls AND NOT rolcreatedb AND NOT rolcreaterole"))
                        .isEqualTo("axlecause_owner,axlecause_service");
                statement.execute("CREATE TABLE kept (number int)");
                statement.execute("INSERT INTO kept VALUES (1)");
            }
            assertThatThrownBy(() -> connect(database, "axlecause_service", "guess"))
                    .hasMessageContaining("password authentication failed");
            assertThatThrownBy(() -> EmbeddedDatabase.start(folder, 0))
                    .isInstanceOf(EndedAtStartException.class)
                    .hasMessageContaining(folder.toRealPath() + " is in use")
                    .hasMessageContaining("AXLECAUSE_DATA_DIR");
            Map<String, String> settings = database.settings();
            assertThatCode(() -> connect(
                                    database,
                                    settings.get("quarkus.datasource.username"),
                                    settings.get("quarkus.datasource.password"))
                            .close())
                    .doesNotThrowAnyException();
        }
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("secrets.properties"))))
                .isEqualTo("rw-------");
        assertThat(folder.resolve("superuser.password")).doesNotExist();
        assertThat(Postmaster.in(folder.resolve("postgresql"))).isEmpty();

        try (EmbeddedDatabase again = EmbeddedDatabase.start(folder, 0)) {
            assertThat(kept(again)).isEqualTo("1");
        }
    }

    @Test
    void what_a_killed_process_left_behind_is_stopped_and_nothing_is_lost() throws Exception {
        Process killed = holder();
        assertThat(line(killed)).isEqualTo("holding");
        Path cluster = folder.toRealPath().resolve("postgresql");
        Process second = holder();
        assertThat(line(second)).contains("is in use by process " + killed.pid(), "it was left alone");
        assertThat(second.waitFor()).isEqualTo(1);
        try (EmbeddedDatabase attached = EmbeddedDatabase.attachOrStart(folder, 0)) {
            assertThat(kept(attached)).isEqualTo("1");
        }

        killed.destroyForcibly().waitFor();
        ProcessHandle orphan = Postmaster.in(cluster).orElseThrow().process();

        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder, 0)) {
            assertThat(Postmaster.in(cluster).orElseThrow().process()).isNotEqualTo(orphan);
            assertThat(kept(database)).isEqualTo("1");
        }
    }

    @Test
    void an_initialisation_that_was_cut_off_is_set_aside() throws Exception {
        Files.createDirectories(folder.resolve("postgresql/base"));
        Files.writeString(folder.resolve("postgresql/PG_VERSION"), "17\n");

        try (EmbeddedDatabase database = EmbeddedDatabase.start(folder, 0)) {
            assertThatCode(() -> database.superuserConnection("axlecause").close())
                    .doesNotThrowAnyException();
        }

        try (Stream<Path> entries = Files.list(folder)) {
            assertThat(entries.filter(entry -> entry.getFileName().toString().startsWith("unfinished-")))
                    .singleElement()
                    .satisfies(aside ->
                            assertThat(aside.resolve("postgresql/PG_VERSION")).hasContent("17"));
        }
    }

    @Test
    void a_folder_that_cant_be_made_is_named_with_a_remedy() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "");

        assertThatThrownBy(() -> EmbeddedDatabase.start(file.resolve("data"), 0))
                .isInstanceOf(EndedAtStartException.class)
                .hasMessageContaining(file.resolve("data").toString())
                .hasMessageContaining("AXLECAUSE_DATA_DIR");
    }

    @Test
    void root_without_user_namespaces_is_told_of_the_other_ways() {
        assertThat(RootRefusal.refused()).hasMessageContaining("QUARKUS_DATASOURCE_JDBC_URL");
    }

    private Process holder() throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        DatabaseHolder.class.getName(),
                        folder.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    private static String line(Process process) throws IOException {
        BufferedReader reader = process.inputReader(StandardCharsets.UTF_8);
        String line = reader.readLine();
        while (line != null && !line.equals("holding") && !line.contains("in use")) {
            line = reader.readLine();
        }
        return line == null ? "" : line;
    }

    private static Connection connect(EmbeddedDatabase database, String user, String password) throws SQLException {
        return DriverManager.getConnection(database.settings().get("quarkus.datasource.jdbc.url"), user, password);
    }

    private static String kept(EmbeddedDatabase database) throws SQLException {
        try (Connection connection = database.superuserConnection("axlecause");
                Statement statement = connection.createStatement()) {
            return value(statement, "SELECT count(*) FROM kept");
        }
    }

    private static String value(Statement statement, String sql) throws SQLException {
        try (ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getString(1);
        }
    }
}
