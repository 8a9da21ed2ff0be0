package org.axlecause.shared;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import java.util.stream.Stream;

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
