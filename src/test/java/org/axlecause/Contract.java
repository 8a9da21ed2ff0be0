package org.axlecause;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;

/** The committed contract as tests use it: its operations, and what is wrong with an answer by it. */
public final class Contract {

    private static final List<String> METHODS = List.of("get", "put", "post", "delete", "patch");
    private static final Contract COMMITTED = read();

    private final JsonNode document;
    private final List<Operation> operations = new ArrayList<>();
    private final Map<String, JsonSchema> schemas = new ConcurrentHashMap<>();
    private final JsonSchemaFactory factory = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012);

    private Contract(JsonNode document) {
        this.document = document;
        document.path("paths")
                .properties()
                .forEach(path -> METHODS.forEach(method -> {
                    JsonNode operation = path.getValue().path(method);
                    if (!operation.isMissingNode()) {
                        operations.add(
                                new Operation(method.toUpperCase(java.util.Locale.ROOT), path.getKey(), operation));
                    }
                }));
    }

    /**
     * One operation of the contract.
     *
     * @param method in capitals
     * @param path with its parameters in braces
     * @param content what the contract says of it
     */
    public record Operation(String method, String path, JsonNode content) {

        /** Codes of the roles that may use it. */
        public List<String> roles() {
            return texts(content.path("x-roles"));
        }

        /** Names of the parameters in the path. */
        public List<String> pathParameters() {
            return Pattern.compile("\\{([^}]+)}")
                    .matcher(path)
                    .results()
                    .map(found -> found.group(1))
                    .toList();
        }

        /** The path with these values; every parameter must have one. */
        public String pathWith(Map<String, String> values) {
            String filled = path;
            for (String name : pathParameters()) {
                String value = values.get(name);
                if (value == null) {
                    throw new IllegalArgumentException("The test knows no value of {" + name + "} in " + path);
                }
                filled = filled.replace("{" + name + "}", value);
            }
            return filled;
        }

        @Override
        public String toString() {
            return method + " " + path;
        }
    }

    /** The contract as it is committed. */
    public static Contract committed() {
        return COMMITTED;
    }

    /** Its operations in the order of their paths. */
    public List<Operation> operations() {
        return List.copyOf(operations);
    }

    /** A schema of the components by its name, with all references resolved against the whole document. */
    public JsonNode component(String name) {
        return document.path("components").path("schemas").path(name);
    }

    /** The operation that answers this request; a path without parameters is preferred. */
    public Optional<Operation> operation(String method, String path) {
        return operations.stream()
                .filter(operation -> operation.method().equals(method) && matches(operation.path(), path))
                .min((one, other) -> Integer.compare(
                        one.pathParameters().size(), other.pathParameters().size()));
    }

    private static boolean matches(String template, String path) {
        return Pattern.matches(
                Pattern.compile("\\{[^}]+}")
                        .splitAsStream(template + "\u0000")
                        .map(part -> part.replace("\u0000", ""))
                        .map(Pattern::quote)
                        .reduce((one, other) -> one + "[^/]+" + other)
                        .orElseThrow(),
                path);
    }

    /** Everything that an answer to the operation has against the contract; empty where nothing is. */
    public List<String> faults(Operation operation, int status, @Nullable String contentType, String body) {
        JsonNode responses = operation.content().path("responses");
        JsonNode response = responses.path(String.valueOf(status));
        if (response.isMissingNode() && status >= 400) {
            response = responses.path("default");
        }
        if (response.isMissingNode()) {
            return List.of(operation + " answers " + status + ", which the contract doesn't list");
        }
        JsonNode content = response.path("content");
        if (content.isMissingNode() || content.isEmpty() || operation.method().equals("HEAD")) {
            return body.isEmpty() ? List.of() : List.of(operation + " answers " + status + " with a body");
        }
        String essence = contentType == null ? "" : contentType.split(";", -1)[0].strip();
        JsonNode media = content.path(essence);
        if (media.isMissingNode()) {
            return List.of(operation + " answers " + status + " as '" + essence + "', which the contract doesn't list");
        }
        return essence.endsWith("json") ? against(operation + " " + status, media.path("schema"), body) : List.of();
    }

    private List<String> against(String what, JsonNode schema, String body) {
        JsonNode sent;
        try {
            sent = Json.mapper().readTree(body);
        } catch (IOException e) {
            return List.of(what + " is no JSON: " + e.getMessage());
        }
        return schemas.computeIfAbsent(schema.toString(), text -> compiled(schema)).validate(sent).stream()
                .map(message -> what + ": " + message.getMessage())
                .limit(10)
                .toList();
    }

    private JsonSchema compiled(JsonNode schema) {
        ObjectNode whole = schema.deepCopy();
        whole.set("components", document.path("components"));
        return factory.getSchema(
                whole,
                SchemaValidatorsConfig.builder().formatAssertionsEnabled(true).build());
    }

    private static List<String> texts(JsonNode list) {
        return StreamSupport.stream(list.spliterator(), false)
                .map(JsonNode::asText)
                .toList();
    }

    private static Contract read() {
        try {
            return new Contract(new YAMLMapper()
                    .readTree(Path.of("openapi", "axlecause.yaml").toFile()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
