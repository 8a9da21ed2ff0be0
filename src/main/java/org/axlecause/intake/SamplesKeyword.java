package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.AbstractKeyword;
import com.networknt.schema.JsonNodePath;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonValidator;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.ValidationContext;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.axlecause.shared.Dimension;
import org.axlecause.shared.Units;

/** Schema keyword {@code samples}: rows of forces of one length, in a plausible range and not too long. */
final class SamplesKeyword extends AbstractKeyword {

    SamplesKeyword() {
        super("samples");
    }

    @Override
    public JsonValidator newValidator(
            SchemaLocation location, JsonNodePath path, JsonNode node, JsonSchema parent, ValidationContext context) {
        Rule rule = Rule.of(node);
        return new WordsValidator(location, path, node, parent, context, this, rule::whatIsWrong);
    }

    private record Rule(List<String> rows, BigDecimal least, BigDecimal most, Optional<BigDecimal> longest) {

        static Rule of(JsonNode node) {
            List<String> rows = new ArrayList<>();
            node.path("rows").forEach(row -> rows.add(row.asText()));
            return new Rule(
                    List.copyOf(rows),
                    node.path("least").decimalValue(),
                    node.path("most").decimalValue(),
                    node.has("longest") ? Optional.of(node.path("longest").decimalValue()) : Optional.empty());
        }

        Optional<String> whatIsWrong(JsonNode trace) {
            JsonNode unit = trace.path("unit");
            if (!unit.isTextual()
                    || rows.stream().anyMatch(row -> !trace.path(row).isArray())) {
                return Optional.empty();
            }
            Optional<String> wrongUnit = Units.whatIsWrong(unit.textValue(), Dimension.FORCE);
            if (wrongUnit.isPresent()) {
                return Optional.of(wrongUnit.get() + ". Send the samples in one of these units.");
            }
            return unequal(trace).or(() -> tooLong(trace)).or(() -> implausible(trace, unit.textValue()));
        }

        private Optional<String> unequal(JsonNode trace) {
            int samples = trace.path(rows.get(0)).size();
            return rows.stream()
                    .filter(row -> trace.path(row).size() != samples)
                    .findFirst()
                    .map(row -> "`" + row + "` has " + trace.path(row).size() + " samples and `" + rows.get(0)
                            + "` has " + samples
                            + "; rows of one length are expected. Fill gaps with null.");
        }

        private Optional<String> tooLong(JsonNode trace) {
            JsonNode period = trace.path("samplePeriod");
            JsonNode value = period.path("value");
            String unit = period.path("unit").asText();
            if (longest.isEmpty()
                    || !value.isNumber()
                    || Units.whatIsWrong(unit, Dimension.TIME).isPresent()) {
                return Optional.empty();
            }
            int samples = trace.path(rows.get(0)).size();
            BigDecimal seconds =
                    Units.toBase(value.decimalValue(), unit, Dimension.TIME).multiply(BigDecimal.valueOf(samples));
            if (seconds.compareTo(longest.get()) <= 0) {
                return Optional.empty();
            }
            return Optional.of(
                    samples + " samples are " + seconds.stripTrailingZeros().toPlainString()
                            + " s; expected are at most " + longest.get().toPlainString()
                            + " s. Cut the trace to the test or send fewer samples per second.");
        }

        private Optional<String> implausible(JsonNode trace, String unit) {
            double perUnit = Units.toBase(BigDecimal.ONE, unit, Dimension.FORCE).doubleValue();
            double low = least.doubleValue();
            double high = most.doubleValue();
            for (String row : rows) {
                JsonNode samples = trace.path(row);
                for (int i = 0; i < samples.size(); i++) {
                    double force = samples.get(i).doubleValue() * perUnit;
                    if (samples.get(i).isNumber() && (force < low || force > high)) {
                        return Optional.of("`" + row + "[" + i + "]` is "
                                + samples.get(i).asText() + " " + unit + ", which can't be; expected are forces from "
                                + least.toPlainString() + " to " + most.toPlainString()
                                + " N. Send null where the reading is lost.");
                    }
                }
            }
            return Optional.empty();
        }
    }
}
