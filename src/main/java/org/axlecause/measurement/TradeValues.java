package org.axlecause.measurement;

import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/**
 * The trade values of {@code rules/measurement/trade-values.yaml}; every one must be there.
 *
 * @param swingWorthNoting swing within a wheel turn from which it is pointed out
 * @param swingShiftOfImbalance change of the imbalance by swing from which it is pointed out
 * @param imbalanceWorthNoting imbalance from which a false one matters
 * @param lockOnLightLoadShare share of the wheel load below which a lock says little about the brake
 * @param repeatShare share of the force within which two runs agree
 * @param repeatForce difference in newtons within which two runs agree
 */
public record TradeValues(
        TradeValue swingWorthNoting,
        TradeValue swingShiftOfImbalance,
        TradeValue imbalanceWorthNoting,
        TradeValue lockOnLightLoadShare,
        TradeValue repeatShare,
        TradeValue repeatForce) {

    private static final String FILE = "/rules/measurement/trade-values.yaml";

    /** The values that the release carries. */
    public static TradeValues released() {
        return Released.VALUES;
    }

    private static TradeValues read() {
        YAMLMapper mapper = YAMLMapper.builder(YAMLFactory.builder()
                        .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                        .build())
                .propertyNamingStrategy(PropertyNamingStrategies.KEBAB_CASE)
                .enable(DeserializationFeature.READ_ENUMS_USING_TO_STRING)
                .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
                .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
                .build();
        try (InputStream file = TradeValues.class.getResourceAsStream(FILE)) {
            if (file == null) {
                throw new IllegalStateException(FILE + " is missing from the class path");
            }
            return mapper.readValue(file, TradeValues.class);
        } catch (IOException e) {
            throw new UncheckedIOException(FILE + " can't be read", e);
        }
    }

    private static final class Released {
        static final TradeValues VALUES = read();
    }
}
