package org.axlecause;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * An empty service with the extensions of this one and a single endpoint, which inserts what it is sent: what the platform
 * itself costs. It is built by the project's own build file, so that it never has other extensions.
 */
final class BaselineService {

    static final String TYPE = "application/cloudevents+json";
    static final String PATH = "/rows";

    private static final Path SOURCES = Path.of("src", "bench", "baseline");
    private static final Path PROJECT = Path.of("target", "baseline").toAbsolutePath();

    private BaselineService() {}

    /** Builds it, unless it was built from the same sources; the folder that is started. */
    static Path built() throws IOException, InterruptedException {
        boolean same = put(Path.of("pom.xml"), PROJECT.resolve("pom.xml"));
        for (Path folder : List.of(SOURCES, Path.of(".mvn"))) {
            try (Stream<Path> files = Files.list(folder)) {
                for (Path file : files.toList()) {
                    same &= put(file, PROJECT.resolve(placeOf(file)));
                }
            }
        }
        Path application = PROJECT.resolve(Path.of("target", "quarkus-app"));
        if (same && Files.exists(application.resolve("quarkus-run.jar"))) {
            return application;
        }
        Path log = PROJECT.resolve("build.log");
        Process build = new ProcessBuilder(
                        "mvn",
                        "-q",
                        "-B",
                        "-Dquick",
                        "-Dmaven.test.skip",
                        "-Dquarkus.package.jar.type=aot-jar",
                        "package")
                .directory(PROJECT.toFile())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        if (build.waitFor() != 0) {
            throw new IllegalStateException("The baseline service wasn't built: " + Files.readString(log));
        }
        return application;
    }

    private static Path placeOf(Path file) {
        String name = file.getFileName().toString();
        if (name.endsWith(".java")) {
            return Path.of("src", "main", "java", "org", "axlecause", "baseline", name);
        }
        return name.endsWith(".properties") ? Path.of("src", "main", "resources", name) : Path.of(".mvn", name);
    }

    /** Whether the same file was there already. */
    private static boolean put(Path file, Path place) throws IOException {
        if (Files.exists(place) && Files.mismatch(file, place) < 0) {
            return true;
        }
        Files.createDirectories(place.getParent());
        Files.copy(file, place, StandardCopyOption.REPLACE_EXISTING);
        return false;
    }

    /** A baseline service on the database of an installation, not yet started. */
    static PackagedService on(Installation installation) throws IOException, InterruptedException, SQLException {
        Path application = built();
        Map<String, String> settings = installation.database().settings();
        try (Connection owner = DriverManager.getConnection(
                        settings.get("quarkus.datasource.jdbc.url"),
                        settings.get("quarkus.flyway.username"),
                        settings.get("quarkus.flyway.password"));
                Statement statement = owner.createStatement()) {
            statement.execute("CREATE TABLE IF NOT EXISTS baseline_row (id uuid PRIMARY KEY, body jsonb NOT NULL)");
            statement.execute("GRANT INSERT ON baseline_row TO axlecause_service");
        }
        return installation.replica().from(application).atFullSpeed();
    }
}
