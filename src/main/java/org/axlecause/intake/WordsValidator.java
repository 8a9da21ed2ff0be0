package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.BaseJsonValidator;
import com.networknt.schema.ErrorMessageType;
import com.networknt.schema.ExecutionContext;
import com.networknt.schema.JsonNodePath;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.Keyword;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.ValidationContext;
import com.networknt.schema.ValidationMessage;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** A schema keyword of our own, made of a function that says what is wrong with a value. */
final class WordsValidator extends BaseJsonValidator {

    private final Function<JsonNode, Optional<String>> whatIsWrong;

    WordsValidator(
            SchemaLocation location,
            JsonNodePath path,
            JsonNode schema,
            JsonSchema parent,
            ValidationContext context,
            Keyword keyword,
            Function<JsonNode, Optional<String>> whatIsWrong) {
        super(location, path, schema, parent, type(keyword), keyword, context, false);
        this.whatIsWrong = whatIsWrong;
    }

    private static ErrorMessageType type(Keyword keyword) {
        return keyword::getValue;
    }

    @Override
    public Set<ValidationMessage> validate(
            ExecutionContext execution, JsonNode node, JsonNode root, JsonNodePath instanceLocation) {
        return whatIsWrong
                .apply(node)
                .map(words -> Set.of(message()
                        .instanceNode(node)
                        .instanceLocation(instanceLocation)
                        .message("{1}")
                        .arguments(words)
                        .build()))
                .orElse(Set.of());
    }
}
