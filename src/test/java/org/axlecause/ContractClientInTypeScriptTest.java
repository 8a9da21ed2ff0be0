package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A client in TypeScript, generated from the contract by OpenAPI Generator, compiles and does the main job. */
@QuarkusTest
class ContractClientInTypeScriptTest {

    private static final Path SOURCES = Path.of("src", "test", "client-typescript");
    private static final Path PROJECT = Path.of("target", "contract-client-typescript");

    @Test
    void a_generated_client_does_the_main_job() throws Exception {
        assumeTrue(onPath("node") && onPath("npm"), "skipped: Node.js with npm is missing");
        for (String file : List.of("package.json", "package-lock.json", "tsconfig.json", "main-job.ts")) {
            Files.copy(SOURCES.resolve(file), PROJECT.resolve(file), StandardCopyOption.REPLACE_EXISTING);
        }
        output("npm", "ci", "--no-audit", "--no-fund", "--ignore-scripts");
        output("node", "node_modules/typescript/bin/tsc", "--project", "tsconfig.json");

        String answer = output("node", "compiled/main-job.js", "http://127.0.0.1:" + RestAssured.port);

        assertThat(answer).isEqualTo("scoped 3 [wheel-cylinder-leaking]");
    }

    private static boolean onPath(String program) {
        return Stream.of(System.getenv("PATH").split(File.pathSeparator))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    }

    private static String output(String... line) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(line)
                .directory(PROJECT.toFile())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as("%s: %s", List.of(line), said).isZero();
        return said.strip();
    }
}
