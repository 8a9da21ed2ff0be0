package org.axlecause.intake;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.axlecause.casefile.EventType;
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
        JsonNode listed = common().at("/$defs/" + lowerCamel(codes.getSimpleName()) + "/enum");

        List<String> inSchema = new ArrayList<>();
        listed.forEach(code -> inSchema.add(code.asText()));

        assertThat(inSchema)
                .containsExactly(Arrays.stream(codes.getEnumConstants())
                        .map(Object::toString)
                        .toArray(String[]::new));
    }

    @Test
    void every_list_of_codes_in_the_shared_words_is_held_to_its_facts() throws IOException {
        List<String> checked =
                codes().map(code -> lowerCamel(code.getSimpleName())).toList();

        TreeSet<String> listed = new TreeSet<>();
        common().path("$defs").properties().forEach(definition -> {
            if (definition.getValue().has("enum")) {
                listed.add(definition.getKey());
            }
        });
        listed.remove("regime");

        assertThat(listed).containsExactlyInAnyOrderElementsOf(checked);
    }

    @Test
    void every_event_type_has_its_schema_and_every_schema_its_event_type() throws IOException {
        try (Stream<Path> files = Files.list(SCHEMAS)) {
            assertThat(files.map(file -> file.getFileName().toString()).filter(name -> !name.equals("common.json")))
                    .containsExactlyInAnyOrder(Arrays.stream(EventType.values())
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

    private static JsonNode common() throws IOException {
        return Json.mapper().readTree(SCHEMAS.resolve("common.json").toFile());
    }

    private static String lowerCamel(String name) {
        return name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1);
    }
}
