package org.axlecause.casefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.axlecause.facts.Place;
import org.axlecause.facts.Samples;
import org.axlecause.facts.Side;
import org.axlecause.facts.Spot;
import org.axlecause.shared.Dimension;
import org.axlecause.shared.Units;
import org.jspecify.annotations.Nullable;

/** The members of one JSON object, read by name; a null member is an absent one. */
record Members(JsonNode object) {

    private @Nullable JsonNode member(String name) {
        JsonNode member = object.get(name);
        return member == null || member.isNull() ? null : member;
    }

    private JsonNode required(String name) {
        JsonNode member = member(name);
        if (member == null) {
            throw new IllegalArgumentException("member " + name + " is missing");
        }
        return member;
    }

    @Nullable
    String textOrNull(String name) {
        JsonNode member = member(name);
        return member == null ? null : member.textValue();
    }

    String text(String name) {
        return required(name).textValue();
    }

    @Nullable
    Boolean flagOrNull(String name) {
        JsonNode member = member(name);
        return member == null ? null : member.booleanValue();
    }

    @Nullable
    Integer integerOrNull(String name) {
        JsonNode member = member(name);
        return member == null ? null : member.decimalValue().intValueExact();
    }

    int integer(String name) {
        return required(name).decimalValue().intValueExact();
    }

    @Nullable
    BigDecimal decimalOrNull(String name) {
        JsonNode member = member(name);
        return member == null ? null : member.decimalValue();
    }

    BigDecimal decimal(String name) {
        return required(name).decimalValue();
    }

    @Nullable
    LocalDate dayOrNull(String name) {
        String day = textOrNull(name);
        return day == null ? null : LocalDate.parse(day);
    }

    <E extends Enum<E>> @Nullable E codeOrNull(String name, Class<E> codes) {
        String code = textOrNull(name);
        return code == null ? null : constant(code, codes);
    }

    <E extends Enum<E>> E code(String name, Class<E> codes) {
        return constant(text(name), codes);
    }

    <E extends Enum<E>> List<E> codes(String name, Class<E> codes) {
        return texts(name).stream().map(code -> constant(code, codes)).toList();
    }

    private static <E extends Enum<E>> E constant(String code, Class<E> codes) {
        for (E constant : codes.getEnumConstants()) {
            if (constant.toString().equals(code)) {
                return constant;
            }
        }
        throw new IllegalArgumentException("no " + codes.getSimpleName() + " has the code " + code);
    }

    List<String> texts(String name) {
        return items(name).stream().map(JsonNode::textValue).toList();
    }

    <T> List<T> objects(String name, Function<Members, T> reader) {
        return items(name).stream().map(item -> reader.apply(new Members(item))).toList();
    }

    private List<JsonNode> items(String name) {
        JsonNode member = member(name);
        List<JsonNode> items = new ArrayList<>();
        if (member != null) {
            member.forEach(items::add);
        }
        return items;
    }

    Members object(String name) {
        return new Members(required(name));
    }

    <T> @Nullable T objectOrNull(String name, Function<Members, T> reader) {
        JsonNode member = member(name);
        return member == null ? null : reader.apply(new Members(member));
    }

    Place place() {
        Place place = new Place(
                integerOrNull("axle"),
                codeOrNull("side", Side.class),
                codeOrNull("spot", Spot.class),
                integerOrNull("circuit"));
        return place.equals(Place.VEHICLE) ? Place.VEHICLE : place;
    }

    /** The value of this quantity in the base unit. */
    BigDecimal converted(Dimension dimension) {
        return Units.toBase(decimal("value"), text("unit"), dimension);
    }

    BigDecimal quantity(String name, Dimension dimension) {
        return object(name).converted(dimension);
    }

    @Nullable
    BigDecimal quantityOrNull(String name, Dimension dimension) {
        return objectOrNull(name, quantity -> quantity.converted(dimension));
    }

    /** A row of forces in newtons; a gap is NaN. */
    Samples samples(String name, String unit) {
        JsonNode row = required(name);
        double perUnit = Units.toBase(BigDecimal.ONE, unit, Dimension.FORCE).doubleValue();
        double[] values = new double[row.size()];
        for (int i = 0; i < values.length; i++) {
            JsonNode sample = row.get(i);
            values[i] = sample.isNull() ? Double.NaN : sample.doubleValue() * perUnit;
        }
        return Samples.of(values);
    }
}
