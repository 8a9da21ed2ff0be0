package org.axlecause.measurement;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;

/** The trade values that the making of figures reads; every one is there. */
public final class TradeValues {

    private final Map<TradeValueCode, TradeValue> values;

    private TradeValues(Map<TradeValueCode, TradeValue> values) {
        this.values = Collections.unmodifiableMap(values);
    }

    /** The values that the release carries in {@code rules/measurement/trade-values.yaml}. */
    public static TradeValues released() {
        return Released.VALUES;
    }

    /** The values of a file; throws where one is missing, unknown or wrong. */
    public static TradeValues of(YamlFile file) {
        YamlNode root = file.root()
                .only(Arrays.stream(TradeValueCode.values())
                        .map(TradeValueCode::toString)
                        .toArray(String[]::new));
        Map<TradeValueCode, TradeValue> values = new EnumMap<>(TradeValueCode.class);
        for (TradeValueCode code : TradeValueCode.values()) {
            YamlNode node = root.member(code.toString()).only("value", "verified", "source");
            values.put(
                    code,
                    new TradeValue(
                            code, node.decimal("value"), node.code("verified", Verified.class), node.text("source")));
        }
        return new TradeValues(values);
    }

    /** The value with its source. */
    public TradeValue get(TradeValueCode code) {
        TradeValue found = values.get(code);
        if (found == null) {
            throw new IllegalStateException(code + " is missing");
        }
        return found;
    }

    double of(TradeValueCode code) {
        return get(code).value().doubleValue();
    }

    private static final class Released {
        static final TradeValues VALUES = TradeValues.of(YamlFile.onClassPath("rules/measurement/trade-values.yaml"));
    }
}
