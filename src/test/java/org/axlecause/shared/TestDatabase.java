package org.axlecause.shared;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Comparator;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.eclipse.microprofile.config.Config;
import org.eclipse.microprofile.config.ConfigProvider;

/** One embedded PostgreSQL per test run, in a folder of its own that goes away with it; used by every Quarkus test. */
@QuarkusTestResource(TestDatabase.class)
public class TestDatabase implements QuarkusTestResourceLifecycleManager {

    private static final String PREFIX = "axlecause.test-database.";

    @Override
    public Map<String, String> start() {
        // Why system properties: test classes are loaded anew per Quarkus profile, the server must not be.
        Properties known = System.getProperties();
        if (!known.containsKey(PREFIX + "running")) {
            settingsOfNewServer().forEach((name, value) -> System.setProperty(PREFIX + name, value));
            System.setProperty(PREFIX + "running", "true");
        }
        Map<String, String> settings = new TreeMap<>();
        known.stringPropertyNames().stream()
                .filter(name -> name.startsWith(PREFIX))
                .forEach(name -> settings.put(name.substring(PREFIX.length()), known.getProperty(name)));
        return settings;
    }

    /** Transactions of tenants on another database, each statement for itself. */
    public static TenantTransaction transactionOn(DataSource dataSource) {
        return new TenantTransaction(dataSource);
    }

    /** The server's superuser, who alone can do what the tests must show to be noticed. */
    public static Connection superuser() throws SQLException {
        Config config = ConfigProvider.getConfig();
        return DriverManager.getConnection(
                config.getValue("quarkus.datasource.jdbc.url", String.class),
                "postgres",
                config.getValue("axlecause.test.superuser-password", String.class));
    }

    @Override
    public void stop() {
        // The server stops with the virtual machine, since the next profile uses it again.
    }

    private static Map<String, String> settingsOfNewServer() {
        try {
            Path folder = Files.createTempDirectory("axlecause-test-");
            EmbeddedDatabase database = EmbeddedDatabase.start(folder, 0);
            Runtime.getRuntime().addShutdownHook(new Thread(() -> {
                database.close();
                delete(folder);
            }));
            Map<String, String> settings = new TreeMap<>(database.settings());
            settings.put("axlecause.data-dir", folder.toString());
            settings.put("axlecause.test.superuser-password", database.superuserPassword());
            return settings;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void delete(Path folder) {
        try (Stream<Path> paths = Files.walk(folder)) {
            for (Path path : paths.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
