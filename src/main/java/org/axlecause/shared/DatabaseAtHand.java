package org.axlecause.shared;

import io.quarkus.runtime.Application;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.eclipse.microprofile.config.Config;
import org.eclipse.microprofile.config.ConfigProvider;

/** Sees to it, before the service starts, that a database address is set: the operator's, or the embedded server's. */
public final class DatabaseAtHand {

    /** First word of the command that runs the migrations, as the owner of the tables, and ends. */
    public static final String MIGRATE = "migrate";

    private static final String ADDRESS = "quarkus.datasource.jdbc.url";
    private static final Duration SERVICE_STOP_WAIT = Duration.ofSeconds(30);
    private static final long POLL_MILLIS = 20;

    private DatabaseAtHand() {}

    /** For the service: starts the embedded server unless an address is set, and stops it after the service. */
    public static void forService() {
        makeReady(EmbeddedDatabase::start);
    }

    /** For a command, which serves nothing: uses the embedded server of a running service, or starts it. */
    public static void forCommand() {
        System.setProperty("quarkus.http.host-enabled", "false");
        System.setProperty("quarkus.log.level", "WARN");
        System.setProperty("quarkus.scheduler.enabled", "false");
        System.setProperty("axlecause.kafka.in", "");
        makeReady(EmbeddedDatabase::attachOrStart);
    }

    /**
     * For the command that runs the migrations: the role that owns the tables is all that it needs. It ends in
     * {@link SchemaCheck}, before anything asks for the service's own role or secrets.
     */
    public static void forMigrations() {
        System.setProperty(SchemaCheck.MIGRATE_ONLY, "true");
        System.setProperty("quarkus.flyway.migrate-at-start", "true");
        forCommand();
        Config config = ConfigProvider.getConfig();
        for (String term : List.of("username", "password")) {
            config.getOptionalValue("quarkus.flyway." + term, String.class)
                    .ifPresent(value -> System.setProperty("quarkus.datasource." + term, value));
        }
    }

    private static void makeReady(Opening opening) {
        Config config = ConfigProvider.getConfig();
        if (config.getOptionalValue(ADDRESS, String.class).isPresent()) {
            return;
        }
        Path folder = Path.of(
                config.getOptionalValue("axlecause.data-dir", String.class).orElse("data"));
        int port = config.getOptionalValue("axlecause.database.port", Integer.class)
                .orElse(0);
        try {
            EmbeddedDatabase database = opening.open(folder, port);
            database.settings().forEach(System::setProperty);
            System.setProperty("axlecause.data-dir", database.dataFolder().toString());
            System.setProperty("axlecause.database.embedded", "true");
            Runtime.getRuntime()
                    .addShutdownHook(new Thread(() -> stopAfterService(database), "embedded-database-stop"));
        } catch (EndedAtStartException e) {
            System.err.println(e.getMessage());
            System.exit(e.exitCode());
        }
    }

    private static void stopAfterService(EmbeddedDatabase database) {
        long deadline = System.nanoTime() + SERVICE_STOP_WAIT.toNanos();
        try {
            while (Application.currentApplication() != null && System.nanoTime() < deadline) {
                Thread.sleep(POLL_MILLIS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        database.close();
    }

    private interface Opening {
        EmbeddedDatabase open(Path folder, int port);
    }
}
