package org.axlecause.regimes;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged service beside an operator's own regimes. */
class WrongRegimeIT {

    @Test
    void a_wrong_regime_file_stops_the_start_with_file_line_and_remedy(@TempDir Path folder) throws Exception {
        Path file = Files.createDirectories(folder.resolve("regimes")).resolve("own-regime.yaml");
        Files.writeString(file, """
                regime: own-regime
                name: an operator's own
                imbalance:
                  formula: relative-to-hihger
                  verified: read
                  source: own rule
                """);

        String said = saidByTheServiceWith(file.getParent(), folder);

        assertThat(said)
                .contains(file + ":4: ")
                .contains("relative-to-hihger")
                .contains("relative-to-higher")
                .doesNotContain("Axlecause serves at")
                .as("nothing is judged before the knowledge is read")
                .doesNotContain("Judging faulted");
    }

    /** What the service says until it ends by itself; fails where it goes on. */
    private static String saidByTheServiceWith(Path regimes, Path folder) throws IOException, InterruptedException {
        Path log = folder.resolve("log");
        ProcessBuilder start = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-jar",
                        "target/quarkus-app/quarkus-run.jar")
                .redirectErrorStream(true)
                .redirectOutput(log.toFile());
        start.environment().put("AXLECAUSE_REGIMES_DIR", regimes.toString());
        start.environment().put("AXLECAUSE_DATA_DIR", folder.resolve("data").toString());
        start.environment().put("QUARKUS_HTTP_PORT", "0");
        Process service = start.start();
        try {
            assertThat(service.waitFor(120, TimeUnit.SECONDS))
                    .as("the service ends by itself")
                    .isTrue();
            assertThat(service.exitValue()).isNotZero();
        } finally {
            service.destroyForcibly();
        }
        return Files.readString(log, StandardCharsets.UTF_8);
    }
}
