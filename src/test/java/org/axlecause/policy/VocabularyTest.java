package org.axlecause.policy;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.regimes.LegalBound;
import org.axlecause.regimes.Regime;
import org.axlecause.regimes.Regimes;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;
import org.junit.jupiter.api.Test;

class VocabularyTest {

    private static final Path SCHEMA = Path.of("openapi/schemas/policy.json");
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    @Test
    void every_clause_and_threshold_is_in_the_vocabulary_with_its_meaning() {
        TreeSet<String> codes = new TreeSet<>();
        Stream.of(ClauseCode.values()).forEach(code -> codes.add(code.toString()));
        Stream.of(ThresholdCode.values()).forEach(code -> codes.add(code.toString()));

        assertThat(Vocabulary.released().all().keySet()).isEqualTo(codes);
        assertThat(Vocabulary.released().all().values())
                .allSatisfy(word -> assertThat(word.means()).isNotBlank());
    }

    @Test
    void the_schema_gives_each_clause_the_members_that_it_takes() throws IOException {
        JsonNode definitions = Json.mapper().readTree(Files.readString(SCHEMA)).path("$defs");
        TreeMap<String, TreeSet<String>> takes = new TreeMap<>();
        for (JsonNode reference : definitions.at("/clause/oneOf")) {
            String name = reference.path("$ref").asText();
            JsonNode form = definitions.path(name.substring(name.lastIndexOf('/') + 1));
            TreeSet<String> members = new TreeSet<>();
            form.path("properties").fieldNames().forEachRemaining(members::add);
            members.removeAll(List.of("clause", "locked"));
            form.at("/properties/clause/enum").forEach(code -> takes.put(code.asText(), members));
        }

        assertThat(takes.keySet()).isEqualTo(Vocabulary.released().all().keySet());
        Vocabulary.released()
                .all()
                .forEach((code, word) -> assertThat(takes.get(code)).as(code).isEqualTo(new TreeSet<>(word.takes())));
    }

    @Test
    void the_schema_and_the_check_agree_on_what_a_clause_may_be() {
        JsonSchema schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(SchemaLocation.of("classpath:openapi/schemas/policy.json"));
        for (String clause : List.of(
                "{\"clause\": \"twin-hydraulic-part\", \"necessity\": \"required\"}",
                "{\"clause\": \"twin-hydraulic-part\", \"necessity\": \"none\", \"locked\": true}",
                "{\"clause\": \"twin-hydraulic-part\", \"necessity\": \"perhaps\"}",
                "{\"clause\": \"twin-hydraulic-part\"}",
                "{\"clause\": \"twin-hydraulic-part\", \"necessity\": \"required\", \"value\": 3, \"unit\": \"mm\"}",
                "{\"clause\": \"drum-ovality\", \"value\": 0.2, \"unit\": \"mm\"}",
                "{\"clause\": \"drum-ovality\", \"value\": -0.2, \"unit\": \"mm\"}",
                "{\"clause\": \"drum-ovality\", \"value\": 0.2}",
                "{\"clause\": \"pad-renewal-thickness\", \"value\": 3, \"unit\": \"mm\"}",
                "{\"clause\": \"pad-renewal-thickness\", \"value\": 3, \"unit\": \"mm\", \"necessity\": \"optional\"}",
                "{\"clause\": \"pipe-extent\", \"extent\": \"axle\"}",
                "{\"clause\": \"pipe-extent\", \"extent\": \"circuit\"}",
                "{\"clause\": \"workshop-limit\", \"figure\": \"imbalance\", \"brake\": \"service\", \"axle\": 1,"
                        + " \"value\": 20, \"unit\": \"%\"}",
                "{\"clause\": \"workshop-limit\", \"figure\": \"hysteresis\", \"brake\": \"service\", \"value\": 20,"
                        + " \"unit\": \"%\"}",
                "{\"clause\": \"workshop-limit\", \"figure\": \"imbalance\", \"brake\": \"secondary\", \"value\": 20,"
                        + " \"unit\": \"%\"}",
                "{\"clause\": \"consent\", \"action\": \"renew\", \"item\": \"drum\", \"by\": \"customer\"}",
                "{\"clause\": \"consent\", \"action\": \"renew\", \"item\": \"gearbox\", \"by\": \"customer\"}",
                "{\"clause\": \"labour-cap\", \"action\": \"renew\", \"item\": \"drum\", \"value\": 1, \"unit\": \"h\"}",
                "{\"clause\": \"labour-cap\", \"action\": \"renew\", \"item\": \"drum\", \"value\": 1, \"unit\": \"s\"}",
                "{\"clause\": \"needed-photo\", \"action\": \"renew\", \"item\": \"drum\"}",
                "{\"clause\": \"needed-measurement\", \"action\": \"renew\", \"item\": \"drum\"}",
                "{\"clause\": \"nothing\", \"necessity\": \"required\"}")) {
            ObjectNode document = Json.mapper().createObjectNode().put("means", "a test");
            document.putArray("chain").add(Json.read(clause));
            List<Problem.Cause> causes = new ArrayList<>();
            new ClauseCheck(causes)
                    .layer("/chain", PolicyDocument.of(document.toString()).ofChain());

            assertThat(schema.validate(document).isEmpty()).as(clause).isEqualTo(causes.isEmpty());
        }
    }

    @Test
    void a_number_that_must_be_a_slip_and_a_unit_of_another_kind_are_refused() {
        assertThat(wrong("{\"clause\": \"retest-imbalance\", \"value\": 151, \"unit\": \"%\"}"))
                .singleElement()
                .satisfies(cause -> assertThat(cause.text()).contains("more than ten times the usual 15 %"));
        assertThat(wrong("{\"clause\": \"retest-imbalance\", \"value\": 150, \"unit\": \"%\"}"))
                .isEmpty();
        assertThat(wrong("{\"clause\": \"retest-imbalance\", \"value\": 12, \"unit\": \"mm\"}"))
                .singleElement()
                .satisfies(cause -> assertThat(cause.pointer()).isEqualTo("/chain/0/unit"));
        assertThat(wrong("{\"clause\": \"fluid-age\", \"value\": 3, \"unit\": \"s\"}"))
                .singleElement()
                .satisfies(cause -> assertThat(cause.text()).contains("expected is a"));
    }

    /** Values of the baseline that three regimes go beyond; there the law speaks for itself, in judging as well. */
    @Test
    void the_baseline_is_nowhere_else_weaker_than_a_regime() {
        LawCheck law = new LawCheck(Regimes.released());
        TreeSet<String> weaker = new TreeSet<>();
        Vocabulary.released()
                .all()
                .forEach((code, word) -> Regimes.released().codes().stream()
                        .filter(regime -> law.weakerThanLaw(word.baseline(), List.of(regime), DAY)
                                .isPresent())
                        .forEach(regime -> weaker.add(code + " in " + regime)));

        assertThat(weaker)
                .containsExactly(
                        "fluctuation-fault in cz-periodic",
                        "friction-danger-thickness in us-commercial",
                        "lining-thickness-least in us-commercial",
                        "pad-thickness-least in us-commercial",
                        "retest-parking-efficiency in gb-annual");
    }

    /** Regulation values: 30 % by Directive 2014/45/EU, annex I, 1.2.1; 1.5 mm by the MOT inspection manual, 1.1.13. */
    @Test
    void what_is_weaker_than_the_law_is_named_with_the_source_of_the_law() {
        LawCheck law = new LawCheck(Regimes.released());

        assertThat(law.weakerThanLaw(
                        read("{\"clause\": \"retest-imbalance\", \"value\": 31, \"unit\": \"%\"}"),
                        List.of("gb-annual"),
                        DAY))
                .hasValueSatisfying(
                        words -> assertThat(words).contains("gb-annual", "at most 30 %", "MOT inspection manual"));
        assertThat(law.weakerThanLaw(
                        read("{\"clause\": \"retest-imbalance\", \"value\": 30, \"unit\": \"%\"}"),
                        List.of("gb-annual"),
                        DAY))
                .isEmpty();
        assertThat(law.weakerThanLaw(
                        read(
                                "{\"clause\": \"pad-renewal-thickness\", \"value\": 1.4, \"unit\": \"mm\", \"necessity\": \"required\"}"),
                        List.of("gb-annual"),
                        DAY))
                .hasValueSatisfying(words -> assertThat(words).contains("at least 1.5 mm", "1.1.13"));
        assertThat(law.weakerThanLaw(
                        read(
                                "{\"clause\": \"pad-renewal-thickness\", \"value\": 1.5, \"unit\": \"mm\", \"necessity\": \"required\"}"),
                        List.of("gb-annual"),
                        DAY))
                .isEmpty();
        assertThat(law.weakerThanLaw(
                        read("{\"clause\": \"lining-thickness-least\", \"value\": 1.4, \"unit\": \"mm\"}"),
                        List.of("gb-annual"),
                        DAY))
                .hasValueSatisfying(words -> assertThat(words).contains("at least 1.5 mm", "1.1.13"));
        assertThat(law.weakerThanLaw(
                        read("{\"clause\": \"lining-thickness-least\", \"value\": 1.5, \"unit\": \"mm\"}"),
                        List.of("gb-annual"),
                        DAY))
                .isEmpty();
        assertThat(law.weakerThanLaw(
                        read("{\"clause\": \"workshop-limit\", \"figure\": \"efficiency\", \"brake\": \"service\","
                                + " \"value\": 49, \"unit\": \"%\"}"),
                        List.of("gb-annual"),
                        DAY))
                .isPresent();
    }

    @Test
    void the_strictest_value_of_a_regime_is_found_for_a_figure_and_for_a_part() {
        Regime regime = Regimes.released().find("gb-annual");

        assertThat(regime.strictest(FigureKind.IMBALANCE, BrakeSystem.SERVICE, null, DAY)
                        .map(LegalBound::value))
                .hasValueSatisfying(value -> assertThat(value).isEqualByComparingTo("0.30"));
        assertThat(regime.strictest(MeasuredQuantity.PAD_THICKNESS).map(LegalBound::value))
                .hasValueSatisfying(value -> assertThat(value).isEqualByComparingTo("0.0015"));
        assertThat(regime.strictest(FigureKind.HYSTERESIS, BrakeSystem.SERVICE, null, DAY))
                .isEmpty();
    }

    private static List<Problem.Cause> wrong(String clause) {
        List<Problem.Cause> causes = new ArrayList<>();
        new ClauseCheck(causes).layer("/chain", List.of(read(clause)));
        return causes;
    }

    private static ClauseWanted read(String clause) {
        return PolicyDocument.of("{\"means\": \"a test\", \"chain\": [" + clause + "]}")
                .ofChain()
                .get(0);
    }
}
