package org.axlecause.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.Agent;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.CloseOutcome;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Decision;
import org.axlecause.facts.Deviation;
import org.axlecause.facts.Drive;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.Extent;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.Gearbox;
import org.axlecause.facts.InspectionResult;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Party;
import org.axlecause.facts.PresentationReason;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Side;
import org.axlecause.facts.Spot;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Surface;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SchemaCodesTest {

    private static final Path SCHEMAS = Path.of("openapi", "schemas");

    private static final Path CODES = SCHEMAS.resolve("codes.json");
    private static final List<String> SHARED = List.of("common.json", "codes.json", "policy.json");
    private static final String REFRESH = "mvn -q -o test -Dtest=SchemaCodesTest -Dcodes.write=true";

    static Stream<Class<? extends Enum<?>>> codes() {
        return Stream.of(
                Accuracy.class,
                Agent.class,
                BrakeLayout.class,
                BrakeSystem.class,
                CauseCode.class,
                CheckCode.class,
                CircuitSplit.class,
                ClauseCode.class,
                CloseOutcome.class,
                ComplaintCode.class,
                Component.class,
                Condition.class,
                Decision.class,
                Deviation.class,
                Drive.class,
                Extent.class,
                FindingStage.class,
                Gearbox.class,
                InspectionResult.class,
                MeasuredQuantity.class,
                Necessity.class,
                ParkingLayout.class,
                Party.class,
                PresentationReason.class,
                ScopeItem.class,
                Side.class,
                Spot.class,
                Stage.class,
                Surface.class,
                TestCondition.class,
                WorkOutcome.class);
    }

    @ParameterizedTest
    @MethodSource("codes")
    void the_schema_lists_exactly_the_codes_that_the_facts_know(Class<? extends Enum<?>> codes) throws IOException {
        if (Boolean.getBoolean("codes.write")) {
            write(codes);
        }

        List<String> inSchema = new ArrayList<>();
        listed().at("/$defs/" + lowerCamel(codes.getSimpleName()) + "/enum")
                .forEach(code -> inSchema.add(code.asText()));

        assertThat(inSchema)
                .as("%s differs from the facts; if the change is meant, run: %s", CODES, REFRESH)
                .containsExactly(Arrays.stream(codes.getEnumConstants())
                        .map(Object::toString)
                        .toArray(String[]::new));
    }

    @Test
    void every_list_of_codes_is_held_to_its_facts() throws IOException {
        assertThat(listed().path("$defs").fieldNames())
                .toIterable()
                .containsExactlyInAnyOrderElementsOf(
                        codes().map(code -> lowerCamel(code.getSimpleName())).toList());
    }

    @Test
    void every_event_type_has_its_schema_and_every_schema_its_event_type() throws IOException {
        try (Stream<Path> files = Files.list(SCHEMAS)) {
            assertThat(files.map(file -> file.getFileName().toString()).filter(name -> !SHARED.contains(name)))
                    .containsExactlyInAnyOrder(Arrays.stream(EntryType.values())
                            .map(type -> type.shortName() + ".json")
                            .toArray(String[]::new));
        }
    }

    @Test
    void every_measured_quantity_has_its_dimension_in_the_schema() throws IOException {
        JsonNode rules = Json.mapper()
                .readTree(SCHEMAS.resolve("finding.recorded.v1.json").toFile())
                .at("/properties/measurement/allOf");

        List<String> covered = new ArrayList<>();
        rules.forEach(
                rule -> rule.at("/if/properties/quantity/enum").forEach(quantity -> covered.add(quantity.asText())));

        assertThat(covered)
                .containsExactlyInAnyOrder(Arrays.stream(MeasuredQuantity.values())
                        .map(Object::toString)
                        .toArray(String[]::new));
    }

    private static JsonNode listed() throws IOException {
        return Json.mapper().readTree(CODES.toFile());
    }

    private static void write(Class<? extends Enum<?>> codes) throws IOException {
        JsonNode document = listed();
        ObjectNode definition = (ObjectNode) document.path("$defs").path(lowerCamel(codes.getSimpleName()));
        ArrayNode list = definition.putArray("enum");
        Arrays.stream(codes.getEnumConstants()).map(Object::toString).forEach(list::add);
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter()
                .withArrayIndenter(DefaultIndenter.SYSTEM_LINEFEED_INSTANCE)
                .withSeparators(
                        Separators.createDefaultInstance().withObjectFieldValueSpacing(Separators.Spacing.AFTER));
        Files.writeString(CODES, Json.mapper().writer(printer).writeValueAsString(document) + "\n");
    }

    private static String lowerCamel(String name) {
        return name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1);
    }
}
