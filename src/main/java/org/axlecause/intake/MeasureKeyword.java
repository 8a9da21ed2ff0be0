package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.AbstractKeyword;
import com.networknt.schema.JsonNodePath;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonValidator;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.ValidationContext;
import java.math.BigDecimal;
import java.util.Optional;
import org.axlecause.shared.Dimension;
import org.axlecause.shared.Units;

/** Schema keyword {@code measure}: the dimension of a quantity and, in base units, its plausible range. */
final class MeasureKeyword extends AbstractKeyword {

    MeasureKeyword() {
        super("measure");
    }

    @Override
    public JsonValidator newValidator(
            SchemaLocation location, JsonNodePath path, JsonNode node, JsonSchema parent, ValidationContext context) {
        Range range = Range.of(node);
        return new WordsValidator(
                location, path, node, parent, context, this, quantity -> whatIsWrong(quantity, range));
    }

    private static Optional<String> whatIsWrong(JsonNode quantity, Range range) {
        JsonNode value = quantity.path("value");
        JsonNode unit = quantity.path("unit");
        if (!value.isNumber() || !unit.isTextual()) {
            return Optional.empty();
        }
        Optional<String> wrongUnit = Units.whatIsWrong(unit.textValue(), range.dimension());
        if (wrongUnit.isPresent()) {
            return Optional.of(wrongUnit.get() + ". Send it in one of these units.");
        }
        return range.whatIsWrong(value.decimalValue(), unit.textValue())
                .map(wrong -> wrong + ". Send the reading again or leave it out if it was not measured.");
    }

    /** A plausible range: beyond it a number must be a slip of pen, unit or wire; no limit of the trade. */
    record Range(Dimension dimension, BigDecimal least, BigDecimal most) {

        static Range of(JsonNode node) {
            return new Range(
                    Dimension.named(node.path("dimension").asText()),
                    node.path("least").decimalValue(),
                    node.path("most").decimalValue());
        }

        Optional<String> whatIsWrong(BigDecimal value, String unit) {
            BigDecimal converted = Units.toBase(value, unit, dimension);
            if (converted.compareTo(least) >= 0 && converted.compareTo(most) <= 0) {
                return Optional.empty();
            }
            return Optional.of(value.toPlainString() + " " + unit + " can't be; expected is " + dimension.words()
                    + " from " + least.toPlainString() + " to " + most.toPlainString()
                    + (dimension.base().equals("1") ? "" : " " + dimension.base()));
        }
    }
}
