package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The contract against its last released form, and the comparison itself. */
class ContractChangesTest {

    private static final ObjectMapper YAML = new ObjectMapper(new YAMLFactory());
    private static final Path FOLDER = Path.of("openapi");
    private static final String CONTRACT = """
            paths:
              /axles:
                get:
                  parameters: [{in: query, name: site, schema: {type: string}}]
                  responses:
                    "200": {content: {application/json: {schema: {$ref: "#/components/schemas/Axle"}}}}
                put:
                  requestBody: {content: {application/json: {schema: {$ref: "#/components/schemas/AxleWanted"}}}}
                  responses: {"204": {}}
            components:
              schemas:
                Axle: {type: object, required: [number], properties: {number: {type: integer}, brake: {type: string, enum: [disc, drum]}}}
                AxleWanted: {type: object, required: [number], properties: {number: {type: integer}, spot: {type: string}}}
            """;

    @Test
    void nothing_that_was_released_is_broken() throws IOException {
        assertThat(ContractChanges.breaking(
                        YAML.readTree(FOLDER.resolve("released.yaml").toFile()),
                        YAML.readTree(FOLDER.resolve("axlecause.yaml").toFile())))
                .isEmpty();
    }

    @ParameterizedTest(name = "{2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "/axles: | /wheels: | get /axles is gone",
                "put: | post: | put /axles is gone",
                "name: site | name: place | get /axles: the parameter query site is gone",
                "name: site, | name: site, required: true, | get /axles: the parameter query site is now required",
                "'\"200\"' | '\"201\"' | get /axles no longer answers 200",
                "'brake: {type: string, enum: [disc, drum]}' | 'brakes: {type: string}' | Axle: the member brake is gone",
                "'[disc, drum]' | '[disc]' | Axle.brake: the code drum is gone",
                "'number: {type: integer}, brake' | 'number: {type: string}, brake' | Axle.number: the type \"integer\" has become \"string\"",
                "'Axle: {type: object, required: [number]' | 'Axle: {type: object, required: []' | Axle: the member number may now be left out",
                "'AxleWanted: {type: object, required: [number]' | 'AxleWanted: {type: object, required: [number, spot]' | AxleWanted: the member spot is now required",
            })
    void a_change_that_breaks_is_told(String before, String now, String told) throws IOException {
        assertThat(ContractChanges.breaking(contract(CONTRACT), contract(CONTRACT.replace(before, now))))
                .contains(told);
    }

    @ParameterizedTest(name = "{0} to {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "/axles: | '/wheels: {get: {responses: {}}}\n  /axles:'",
                "'[disc, drum]' | '[disc, drum, electric]'",
                "'spot: {type: string}' | 'spot: {type: string}, side: {type: string}'",
                "'Axle: {type: object, required: [number]' | 'Axle: {type: object, required: [number, brake]'",
                "'AxleWanted: {type: object, required: [number]' | 'AxleWanted: {type: object, required: []'",
            })
    void adding_and_asking_for_less_break_nothing(String before, String now) throws IOException {
        assertThat(ContractChanges.breaking(contract(CONTRACT), contract(CONTRACT.replace(before, now))))
                .isEmpty();
    }

    private static JsonNode contract(String text) throws IOException {
        return YAML.readTree(text);
    }
}
