package org.axlecause.shared;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A real PostgreSQL in a data folder: durable, reachable over loopback with passwords only, held by one process at a
 * time, and owned by two roles of which the service's own can't step around row-level security.
 */
public final class EmbeddedDatabase implements AutoCloseable {

    private static final String DATABASE = "axlecause";
    private static final String OWNER = "axlecause_owner";
    private static final String SERVICE = "axlecause_service";
    private static final String SUPERUSER = "postgres";
    private static final String READY_MARK = "axlecause-ready";
    private static final Duration START_WAIT = Duration.ofSeconds(60);

    private static final String ACCESS_RULES = """
            # Written at every start: passwords only, over loopback only.
            host all all 127.0.0.1/32 scram-sha-256
            host all all ::1/128      scram-sha-256
            """;

    private static final Map<String, String> SERVER_SETTINGS = Map.ofEntries(
            Map.entry("fsync", "on"),
            Map.entry("synchronous_commit", "on"),
            Map.entry("full_page_writes", "on"),
            Map.entry("listen_addresses", "127.0.0.1"),
            Map.entry("unix_socket_directories", ""),
            Map.entry("password_encryption", "scram-sha-256"),
            Map.entry("max_connections", "60"),
            Map.entry("shared_buffers", "256MB"),
            Map.entry("logging_collector", "on"),
            Map.entry("log_directory", "log"),
            Map.entry("log_filename", "postgresql-%a.log"),
            Map.entry("log_truncate_on_rotation", "on"));

    private final DataFolder folder;
    private final int port;
    private final @Nullable EmbeddedPostgres server;

    private EmbeddedDatabase(DataFolder folder, int port, @Nullable EmbeddedPostgres server) {
        this.folder = folder;
        this.port = port;
        this.server = server;
    }

    /** Starts the server of this data folder; port 0 takes any free one. Refuses when another process has the folder. */
    public static EmbeddedDatabase start(Path path, int port) {
        DataFolder folder = DataFolder.at(path);
        if (!folder.lock()) {
            throw CannotStart.because("The data folder " + folder.path() + " is in use by " + folder.holder()
                    + "; it was left alone. Stop that one first, or set AXLECAUSE_DATA_DIR to another folder,"
                    + " or QUARKUS_DATASOURCE_JDBC_URL to a PostgreSQL that several may share.");
        }
        try {
            return startLocked(folder, port);
        } catch (RuntimeException e) {
            folder.close();
            throw e;
        }
    }

    /** The server that another process runs in this data folder, or a server started here when none does. */
    public static EmbeddedDatabase attachOrStart(Path path, int port) {
        DataFolder folder = DataFolder.at(path);
        if (folder.lock()) {
            folder.close();
            return start(path, port);
        }
        int runningPort = Postmaster.in(clusterOf(folder))
                .map(Postmaster::port)
                .orElseThrow(() -> CannotStart.because("The data folder " + folder.path() + " is held by "
                        + folder.holder() + ", but no database answers there yet. Try again in a moment."));
        return new EmbeddedDatabase(folder, runningPort, null);
    }

    /** What the service needs to know to use this database, as settings. */
    public Map<String, String> settings() {
        Map<String, String> settings = new TreeMap<>();
        settings.put("quarkus.datasource.jdbc.url", url(DATABASE));
        settings.put("quarkus.datasource.username", SERVICE);
        settings.put("quarkus.datasource.password", folder.secret(SERVICE));
        settings.put("quarkus.flyway.username", OWNER);
        settings.put("quarkus.flyway.password", folder.secret(OWNER));
        settings.put("axlecause.identity-key", folder.secret("identity-key"));
        return settings;
    }

    /** The folder that holds the database and its secrets. */
    public Path dataFolder() {
        return folder.path();
    }

    /** A connection as the server's superuser, for what no role of ours may do. */
    Connection superuserConnection(String database) throws SQLException {
        return DriverManager.getConnection(url(database), SUPERUSER, superuserPassword());
    }

    String superuserPassword() {
        return folder.secret(SUPERUSER);
    }

    @Override
    public void close() {
        if (server == null) {
            return;
        }
        try {
            server.close();
            Postmaster.in(clusterOf(folder)).ifPresent(Postmaster::stop);
        } catch (IOException e) {
            throw new UncheckedIOException("The embedded database in " + folder.path() + " can't be closed", e);
        } finally {
            folder.close();
        }
    }

    private String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database + "?reWriteBatchedInserts=true";
    }

    private static Path clusterOf(DataFolder folder) {
        return folder.resolve("postgresql");
    }

    private static EmbeddedDatabase startLocked(DataFolder folder, int port) {
        RootRefusal.check();
        Path cluster = clusterOf(folder);
        Postmaster.in(cluster).ifPresent(Postmaster::stop);
        setUnfinishedAside(cluster);
        if (Files.exists(cluster) && !folder.hasSecrets()) {
            throw CannotStart.because("The data folder " + folder.path() + " holds a database but not the file"
                    + " secrets.properties that opens it. Bring that file back from where the folder was copied.");
        }
        EmbeddedPostgres server = startServer(folder, cluster, port);
        EmbeddedDatabase database = new EmbeddedDatabase(folder, server.getPort(), server);
        try {
            database.prepareRoles();
            return database;
        } catch (SQLException | IOException e) {
            database.close();
            throw CannotStart.because("The roles of the embedded database in " + folder.path() + " can't be made ("
                    + e.getMessage() + ").");
        }
    }

    private static EmbeddedPostgres startServer(DataFolder folder, Path cluster, int port) {
        Path startLog = folder.resolve("postgresql-start.log");
        try {
            Path binaries = Files.createDirectories(folder.resolve("binaries"));
            System.setProperty("ot.epg.working-dir", binaries.toString());
            Path password = folder.privateFile("superuser.password", folder.secret(SUPERUSER));
            Files.deleteIfExists(startLog);
            EmbeddedPostgres.Builder builder = EmbeddedPostgres.builder()
                    .setDataDirectory(cluster)
                    .setCleanDataDirectory(false)
                    .setRegisterShutdownHook(false)
                    .setPGStartupWait(START_WAIT)
                    .setPort(port)
                    .setOutputRedirector(ProcessBuilder.Redirect.appendTo(startLog.toFile()))
                    .setErrorRedirector(ProcessBuilder.Redirect.appendTo(startLog.toFile()))
                    .setConnectConfig("password", folder.secret(SUPERUSER))
                    .setLocaleConfig("locale", "C")
                    .setLocaleConfig("locale-provider", "builtin")
                    .setLocaleConfig("builtin-locale", "C.UTF-8")
                    .setLocaleConfig("auth-local", "scram-sha-256")
                    .setLocaleConfig("auth-host", "scram-sha-256")
                    .setLocaleConfig("pwfile", password.toString())
                    .setDataDirectoryCustomizer(EmbeddedDatabase::markReady);
            SERVER_SETTINGS.forEach(builder::setServerConfig);
            try {
                return builder.start();
            } finally {
                Files.deleteIfExists(password);
            }
        } catch (IOException | RuntimeException e) {
            Postmaster.in(cluster).ifPresent(Postmaster::stop);
            throw CannotStart.because("The embedded database in " + folder.path() + " didn't start (" + e.getMessage()
                    + "). Its own words are in " + startLog + " and " + cluster.resolve("log")
                    + ". Set QUARKUS_DATASOURCE_JDBC_URL to use a PostgreSQL of your own.");
        }
    }

    private static void markReady(File cluster) {
        try {
            Files.writeString(cluster.toPath().resolve("pg_hba.conf"), ACCESS_RULES);
            Files.writeString(cluster.toPath().resolve(READY_MARK), "initialised completely\n");
        } catch (IOException e) {
            throw new UncheckedIOException("The embedded database's access rules can't be written", e);
        }
    }

    /** A folder whose first initialisation was cut off has never held a row; PostgreSQL would refuse it for ever. */
    private static void setUnfinishedAside(Path cluster) {
        if (!Files.isDirectory(cluster) || Files.exists(cluster.resolve(READY_MARK))) {
            return;
        }
        try {
            Files.move(
                    cluster,
                    Files.createTempDirectory(cluster.getParent(), "unfinished-")
                            .resolve("postgresql"));
        } catch (IOException e) {
            throw new UncheckedIOException("The unfinished database in " + cluster + " can't be moved aside", e);
        }
    }

    private void prepareRoles() throws SQLException, IOException {
        try (Connection connection = superuserConnection("postgres");
                Statement statement = connection.createStatement()) {
            statement.execute(resource("/db/roles.sql"));
            statement.execute("ALTER ROLE " + OWNER + " PASSWORD '" + folder.secret(OWNER) + "'");
            statement.execute("ALTER ROLE " + SERVICE + " PASSWORD '" + folder.secret(SERVICE) + "'");
            if (!exists(connection)) {
                statement.execute("CREATE DATABASE " + DATABASE + " OWNER " + OWNER);
            }
        }
        try (Connection connection = superuserConnection(DATABASE);
                Statement statement = connection.createStatement()) {
            statement.execute(resource("/db/database.sql"));
        }
    }

    private static boolean exists(Connection connection) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement("SELECT 1 FROM pg_database WHERE datname = ?")) {
            query.setString(1, DATABASE);
            try (ResultSet found = query.executeQuery()) {
                return found.next();
            }
        }
    }

    private static String resource(String name) throws IOException {
        try (InputStream stream = EmbeddedDatabase.class.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IOException(name + " is missing in the class path");
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
