package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Source: Kubernetes documentation, Pod Security Standards, level "restricted". */
class DeploymentTest {

    private static final Path DEPLOY = Path.of("deploy");
    private static final Path KUBERNETES = DEPLOY.resolve("kubernetes");

    @Test
    void the_kustomization_names_every_manifest_and_no_secret() throws IOException {
        List<String> named = new ArrayList<>();
        only(KUBERNETES.resolve("kustomization.yaml")).path("resources").forEach(name -> named.add(name.asText()));

        try (var files = Files.list(KUBERNETES)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrderElementsOf(with(named, "kustomization.yaml", "secret.example.yaml"));
        }
        for (String name : named) {
            assertThat(only(KUBERNETES.resolve(name)).path("kind").asText())
                    .as(name)
                    .isNotEmpty()
                    .isNotEqualTo("Secret");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"deployment.yaml", "migration.yaml"})
    void every_container_is_restricted_and_limited(String name) throws IOException {
        JsonNode pod = only(KUBERNETES.resolve(name)).at("/spec/template/spec");
        JsonNode container = pod.at("/containers/0");

        assertThat(pod.at("/securityContext/runAsNonRoot").asBoolean()).isTrue();
        assertThat(pod.at("/securityContext/runAsUser").asInt()).isEqualTo(10001);
        assertThat(pod.at("/securityContext/seccompProfile/type").asText()).isEqualTo("RuntimeDefault");
        assertThat(pod.path("automountServiceAccountToken").asBoolean(true)).isFalse();
        assertThat(pod.path("containers")).hasSize(1);
        assertThat(container.at("/securityContext/allowPrivilegeEscalation").asBoolean(true))
                .isFalse();
        assertThat(container.at("/securityContext/readOnlyRootFilesystem").asBoolean())
                .isTrue();
        assertThat(container.at("/securityContext/capabilities/drop/0").asText())
                .isEqualTo("ALL");
        assertThat(container.at("/resources/limits/memory").asText()).isNotEmpty();
        assertThat(container.at("/resources/requests/cpu").asText()).isNotEmpty();
    }

    @Test
    void the_service_is_probed_where_it_answers_and_never_holds_the_owners_password() throws IOException {
        JsonNode container = only(KUBERNETES.resolve("deployment.yaml")).at("/spec/template/spec/containers/0");

        assertThat(container.at("/livenessProbe/httpGet/path").asText()).isEqualTo("/q/health/live");
        assertThat(container.at("/readinessProbe/httpGet/path").asText()).isEqualTo("/q/health/ready");
        assertThat(container.path("envFrom").findValuesAsText("name")).containsExactly("axlecause", "axlecause");
    }

    @Test
    void the_container_file_and_the_compose_file_run_it_without_rights() throws IOException {
        JsonNode service = only(DEPLOY.resolve("compose.yaml")).at("/services/service");

        assertThat(Files.readAllLines(DEPLOY.resolve("Containerfile")))
                .contains("USER 10001:10001", "ENTRYPOINT [\"java\", \"@jvm.options\", \"-jar\", \"quarkus-run.jar\"]");
        assertThat(service.path("read_only").asBoolean()).isTrue();
        assertThat(service.at("/cap_drop/0").asText()).isEqualTo("ALL");
    }

    private static List<String> with(List<String> names, String... more) {
        List<String> all = new ArrayList<>(names);
        all.addAll(List.of(more));
        return all;
    }

    private static JsonNode only(Path file) throws IOException {
        YAMLMapper mapper = new YAMLMapper();
        try (MappingIterator<JsonNode> documents =
                mapper.readerFor(JsonNode.class).readValues(file.toFile())) {
            List<JsonNode> all = documents.readAll();
            assertThat(all).as(file.toString()).hasSize(1);
            return all.get(0);
        }
    }
}
