package org.axlecause;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Holds code and committed contract to each other: neither changes without the other. */
@QuarkusTest
class ContractTest {

    private static final Path COMMITTED = Path.of("openapi", "axlecause.yaml");
    private static final String REFRESH = "mvn -q -o test -Dtest=ContractTest -Dcontract.write=true";
    private static final YAMLMapper YAML = new YAMLMapper();

    @Test
    void the_committed_contract_is_what_the_code_serves() throws IOException {
        String served = given().queryParam("format", "yaml")
                .when()
                .get("/q/openapi")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        if (Boolean.getBoolean("contract.write")) {
            Files.writeString(COMMITTED, served);
        }

        String committed = Files.readString(COMMITTED);

        assertThat(differences(leaves(committed), leaves(served)))
                .as("%s differs from the code; if the change is meant, run: %s", COMMITTED, REFRESH)
                .isEmpty();
    }

    private static List<String> differences(Map<String, String> committed, Map<String, String> served) {
        List<String> differences = new ArrayList<>();
        committed.forEach((pointer, value) -> {
            if (!served.containsKey(pointer)) {
                differences.add("only in the contract: " + pointer + " = " + value);
            } else if (!value.equals(served.get(pointer))) {
                differences.add("contract says " + value + ", code says " + served.get(pointer) + ": " + pointer);
            }
        });
        served.forEach((pointer, value) -> {
            if (!committed.containsKey(pointer)) {
                differences.add("only in the code: " + pointer + " = " + value);
            }
        });
        return differences;
    }

    private static Map<String, String> leaves(String yaml) throws IOException {
        Map<String, String> leaves = new TreeMap<>();
        collect("", YAML.readTree(yaml), leaves);
        return leaves;
    }

    private static void collect(String pointer, JsonNode node, Map<String, String> leaves) {
        if (node.isObject() && !node.isEmpty()) {
            node.properties()
                    .forEach(member -> collect(pointer + "/" + escaped(member.getKey()), member.getValue(), leaves));
        } else if (node.isArray() && !node.isEmpty()) {
            for (int index = 0; index < node.size(); index++) {
                collect(pointer + "/" + index, node.get(index), leaves);
            }
        } else {
            leaves.put(pointer, node.toString());
        }
    }

    private static String escaped(String name) {
        return name.replace("~", "~0").replace("/", "~1");
    }
}
