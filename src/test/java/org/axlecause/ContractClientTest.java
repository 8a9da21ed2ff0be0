package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.IOException;
import java.io.StringWriter;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A client generated from the contract by OpenAPI Generator compiles and does the main job. */
@QuarkusTest
class ContractClientTest {

    private static final Path GENERATED = Path.of("target", "contract-client", "src", "main", "java");
    private static final Path MAIN_JOB = Path.of("src", "test", "client", "MainJob.java");

    @TempDir
    Path classes;

    @Test
    void a_generated_client_does_the_main_job() throws Exception {
        compile();

        try (URLClassLoader loader = new URLClassLoader(
                new URL[] {classes.toUri().toURL()}, getClass().getClassLoader())) {
            Object answer = loader.loadClass("MainJob")
                    .getMethod("run", String.class)
                    .invoke(null, "http://127.0.0.1:" + RestAssured.port);

            assertThat(answer).isEqualTo("scoped 3 [wheel-cylinder-leaking]");
        }
    }

    private void compile() throws IOException {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        StringWriter messages = new StringWriter();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null);
                Stream<Path> generated = Files.walk(GENERATED)) {
            List<Path> sources = Stream.concat(
                            generated.filter(file -> file.toString().endsWith(".java")), Stream.of(MAIN_JOB))
                    .toList();
            boolean compiled = compiler.getTask(
                            messages,
                            files,
                            null,
                            List.of(
                                    "-proc:none",
                                    "-nowarn",
                                    "-d",
                                    classes.toString(),
                                    "-classpath",
                                    System.getProperty(
                                            "surefire.test.class.path", System.getProperty("java.class.path"))),
                            null,
                            files.getJavaFileObjectsFromPaths(sources))
                    .call();

            assertThat(compiled).as(messages.toString()).isTrue();
        }
    }
}
