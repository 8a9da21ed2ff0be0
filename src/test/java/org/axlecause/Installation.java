package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.axlecause.shared.EmbeddedDatabase;
import org.axlecause.shared.FreePort;

/** Replicas of the packaged service on one database of their own, and what that database holds. */
final class Installation implements Closeable {

    private final Path folder;
    private final int databasePort = FreePort.find();
    private EmbeddedDatabase database;

    /** Starts the database; it and the replicas keep their files in this folder. */
    Installation(Path folder) {
        this.folder = folder;
        this.database = EmbeddedDatabase.start(folder.resolve("data"), databasePort);
    }

    /** A replica that isn't started yet. */
    PackagedService replica() throws IOException {
        PackagedService replica = new PackagedService(Files.createTempDirectory(folder, "replica-"));
        settings().forEach(replica::with);
        return replica;
    }

    /** A replica that is ready, and the site that the events name. */
    PackagedService started() throws IOException, InterruptedException {
        PackagedService replica = replica().start();
        replica.putSite();
        return replica;
    }

    EmbeddedDatabase database() {
        return database;
    }

    int databasePort() {
        return databasePort;
    }

    /** What a replica of this installation needs in its environment. */
    Map<String, String> settings() {
        Map<String, String> settings = new TreeMap<>();
        database.settings()
                .forEach((name, value) ->
                        settings.put(name.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "_"), value));
        return settings;
    }

    void nothingIsLostOrDoubled(Set<String> acknowledged) throws SQLException {
        List<String> stored = texts("SELECT id FROM event WHERE tenant_id = 'demo'");
        assertThat(stored).doesNotHaveDuplicates();
        Set<String> lost = new HashSet<>(acknowledged);
        lost.removeAll(Set.copyOf(stored));
        assertThat(lost).as("acknowledged and not stored").isEmpty();
        assertThat(texts("SELECT reference FROM case_file WHERE tenant_id = 'demo'"
                        + " AND chain_length > 0 AND (judging <> 'done' OR version <> chain_length)"))
                .as("cases whose judgement lacks an event")
                .isEmpty();
    }

    /** The first column of what the service's own role sees of its tenant. */
    List<String> texts(String sql) throws SQLException {
        try (Connection connection = connection();
                Statement statement = connection.createStatement()) {
            List<String> found = new ArrayList<>();
            try (ResultSet rows = statement.executeQuery(sql)) {
                while (rows.next()) {
                    found.add(rows.getString(1));
                }
            }
            return found;
        }
    }

    List<Integer> numbers(String sql) throws SQLException {
        return texts(sql).stream().map(Integer::valueOf).toList();
    }

    /** A connection of the service's own role, for its tenant. */
    Connection connection() throws SQLException {
        Map<String, String> settings = database.settings();
        Connection connection = DriverManager.getConnection(
                settings.get("quarkus.datasource.jdbc.url"),
                settings.get("quarkus.datasource.username"),
                settings.get("quarkus.datasource.password"));
        try (Statement statement = connection.createStatement()) {
            statement.execute("SELECT set_config('axlecause.tenant', 'demo', false)");
        }
        return connection;
    }

    /** Kills the server's processes, waits until they are gone, and starts it again on the same files and port. */
    void killDatabase() throws IOException, InterruptedException {
        Path pidFile = folder.resolve("data").resolve("postgresql").resolve("postmaster.pid");
        long pid;
        try (Stream<String> lines = Files.lines(pidFile)) {
            pid = Long.parseLong(lines.findFirst().orElseThrow().strip());
        }
        ProcessHandle postmaster = ProcessHandle.of(pid).orElseThrow();
        List<ProcessHandle> backends = postmaster.children().toList();
        postmaster.destroyForcibly();
        for (ProcessHandle process :
                Stream.concat(Stream.of(postmaster), backends.stream()).toList()) {
            long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
            while (process.isAlive() && System.nanoTime() < deadline) {
                TimeUnit.MILLISECONDS.sleep(20);
            }
        }
        try {
            database.close();
        } catch (RuntimeException killedAlready) {
            // There is nothing to stop any more; the folder is free again.
        }
        database = EmbeddedDatabase.start(folder.resolve("data"), databasePort);
    }

    @Override
    public void close() {
        database.close();
    }
}
