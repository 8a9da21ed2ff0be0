package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.JsonMetaSchema;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.PathType;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.EntryType;
import org.axlecause.shared.Problem;

/** Checks the data of an event against its published schema, its quantities against plausible ranges. */
@Singleton
final class PayloadCheck {

    private static final int MOST_CAUSES = 100;

    private final Map<EntryType, JsonSchema> schemas = new EnumMap<>(EntryType.class);
    private final SchemaWords words = new SchemaWords();

    PayloadCheck() {
        JsonMetaSchema meta = JsonMetaSchema.builder(JsonMetaSchema.getV202012())
                .keyword(new MeasureKeyword())
                .keyword(new SamplesKeyword())
                .build();
        JsonSchemaFactory factory =
                JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012, builder -> builder.metaSchema(meta));
        SchemaValidatorsConfig config = SchemaValidatorsConfig.builder()
                .pathType(PathType.JSON_POINTER)
                .formatAssertionsEnabled(true)
                .build();
        for (EntryType type : EntryType.values()) {
            JsonSchema schema = factory.getSchema(SchemaLocation.of(SchemaWords.location(type)), config);
            schema.initializeValidators();
            schemas.put(type, schema);
        }
    }

    /** Everything that is wrong with the data, in the order of its place; empty where nothing is. */
    List<Problem.Cause> causes(EntryType type, JsonNode data) {
        JsonSchema schema = schemas.get(type);
        if (schema == null) {
            throw new IllegalStateException("no schema for " + type);
        }
        List<Problem.Cause> causes = new ArrayList<>();
        for (ValidationMessage message : schema.validate(data)) {
            if (words.isSaidByItsType(message, data)) {
                continue;
            }
            Problem.Cause cause = words.cause(message, data);
            if (!causes.contains(cause)) {
                causes.add(cause);
            }
        }
        causes.addAll(ContentCheck.causes(type, data));
        return causes.size() <= MOST_CAUSES ? causes : List.copyOf(causes.subList(0, MOST_CAUSES));
    }
}
