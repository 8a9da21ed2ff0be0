package org.axlecause.shared;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.cfg.JsonNodeFeature;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.deser.std.StringDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The one JSON behaviour of the service: strict on the way in, plain decimals and kebab-case codes on the way out. */
public final class Json {

    /** Deepest nesting that is read. */
    public static final int MAX_DEPTH = 64;

    private static final int MAX_STRING = 256 * 1024;
    private static final int MAX_NUMBER = 64;
    private static final long MAX_DOCUMENT = 16L * 1024 * 1024;

    private static final ObjectMapper MAPPER = configured(JsonMapper.builder());

    /** Digits of the smallest number above zero that is written here, as the probability of a rare chance can be. */
    private static final int MAX_NUMBER_WRITTEN = 400;

    /** For what was written here, in which no name comes twice and a small number has many digits. */
    private static final ObjectReader KEPT = MAPPER.reader()
            .with(JsonFactory.builder()
                    .streamReadConstraints(constraints(MAX_NUMBER_WRITTEN))
                    .build());

    private Json() {}

    /** The shared mapper; enums are read and written by their {@code toString}. */
    public static ObjectMapper mapper() {
        return MAPPER;
    }

    /** The JSON text of a value that is known to have one. */
    public static String text(Object value) {
        try {
            return MAPPER.writeValueAsString(value);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("No JSON of " + value.getClass().getName(), e);
        }
    }

    /** The tree of a text that is known to be JSON, since it was written here. */
    public static JsonNode read(String text) {
        try {
            return KEPT.readTree(text);
        } catch (JsonProcessingException e) {
            throw unreadable(e);
        }
    }

    /** The members of an object that is known to be JSON, each as it is written, in their order. */
    public static Map<String, String> members(String object) {
        Map<String, String> members = new LinkedHashMap<>();
        try (JsonParser parser = KEPT.createParser(object)) {
            parser.nextToken();
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                String name = parser.currentName();
                parser.nextToken();
                long from = parser.currentTokenLocation().getCharOffset();
                parser.skipChildren();
                parser.finishToken();
                long to = parser.currentLocation().getCharOffset();
                members.put(name, object.substring((int) from, (int) to));
            }
            return members;
        } catch (IOException e) {
            throw unreadable(e);
        }
    }

    /** The members of a record as it is written, each by itself, in their order. */
    public static Map<String, String> members(Record written) {
        Map<String, String> members = new LinkedHashMap<>();
        for (RecordComponent component : written.getClass().getRecordComponents()) {
            try {
                Object member = component.getAccessor().invoke(written);
                if (member != null) {
                    members.put(component.getName(), text(member));
                }
            } catch (ReflectiveOperationException e) {
                throw new IllegalArgumentException("No member " + component.getName() + " of " + written.getClass(), e);
            }
        }
        return members;
    }

    private static IllegalStateException unreadable(IOException fault) {
        return new IllegalStateException("Kept JSON can't be read", fault);
    }

    /** Reads texts that can be stored: no U+0000 and no half of a surrogate pair. */
    private static final class TextReader extends StdScalarDeserializer<String> {

        private static final long serialVersionUID = 1L;

        TextReader() {
            super(String.class);
        }

        @Override
        public @Nullable String deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            String text = StringDeserializer.instance.deserialize(parser, context);
            if (text != null
                    && text.codePoints()
                            .anyMatch(c -> c == 0 || (c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE))) {
                throw context.weirdStringException(
                        text, String.class, "a text holds neither U+0000 nor half of a surrogate pair; leave it out");
            }
            return text;
        }
    }

    private static ObjectMapper configured(JsonMapper.Builder builder) {
        JsonMapper mapper = builder.addModule(new Jdk8Module())
                .addModule(new SimpleModule("texts").addDeserializer(String.class, new TextReader()))
                .addModule(new JavaTimeModule())
                .disable(MapperFeature.AUTO_DETECT_IS_GETTERS)
                .enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION)
                .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                .enable(DeserializationFeature.READ_ENUMS_USING_TO_STRING)
                .enable(SerializationFeature.WRITE_ENUMS_USING_TO_STRING)
                .enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN)
                .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
                .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
                .disable(SerializationFeature.WRITE_DURATIONS_AS_TIMESTAMPS)
                .defaultPropertyInclusion(
                        JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.NON_NULL))
                .build();
        mapper.getFactory().setStreamReadConstraints(constraints(MAX_NUMBER));
        return mapper;
    }

    private static StreamReadConstraints constraints(int longestNumber) {
        return StreamReadConstraints.builder()
                .maxNestingDepth(MAX_DEPTH)
                .maxStringLength(MAX_STRING)
                .maxNumberLength(longestNumber)
                .maxDocumentLength(MAX_DOCUMENT)
                .build();
    }
}
