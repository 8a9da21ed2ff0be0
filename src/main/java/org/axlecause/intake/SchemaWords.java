package org.axlecause.intake;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.facts.EntryType;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;

/** Says in words what a schema found wrong: what, which value, what is expected, what to do. */
final class SchemaWords {

    private static final String FOLDER = "openapi/schemas/";
    private static final List<String> SHARED = List.of("common.json", "codes.json", "policy.json");
    private static final int SHOWN_VALUE = 80;

    private final Map<String, JsonNode> documents = new TreeMap<>();

    SchemaWords() {
        SHARED.forEach(file -> documents.put(file, read(file)));
        for (EntryType type : EntryType.values()) {
            documents.put(file(type), read(file(type)));
        }
    }

    /** The schema documents by file name. */
    Map<String, JsonNode> documents() {
        return Map.copyOf(documents);
    }

    static String location(EntryType type) {
        return "classpath:" + FOLDER + file(type);
    }

    private static String file(EntryType type) {
        return type.shortName() + ".json";
    }

    private static JsonNode read(String file) {
        try (InputStream in = SchemaWords.class.getClassLoader().getResourceAsStream(FOLDER + file)) {
            if (in == null) {
                throw new IllegalStateException("schema " + file + " is missing");
            }
            return Json.mapper().readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Whether this only repeats that the value is of the wrong JSON type. */
    boolean isSaidByItsType(ValidationMessage message, JsonNode data) {
        return message.getType().equals("enum")
                && !data.at(JsonPointer.compile(message.getInstanceLocation().toString()))
                        .isTextual();
    }

    Problem.Cause cause(ValidationMessage message, JsonNode data) {
        String pointer = message.getInstanceLocation().toString();
        Schema holder = holder(
                message.getSchemaLocation().toString(),
                message.getEvaluationPath().toString());
        JsonNode value = data.at(JsonPointer.compile(pointer));
        String name = name(pointer);
        return switch (message.getType()) {
            case "required" -> {
                String missing = message.getProperty();
                yield missing == null || holder.isChoice()
                        ? new Problem.Cause(pointer, incomplete(name, holder))
                        : new Problem.Cause(
                                pointer + "/" + escaped(missing),
                                "`" + missing + "` is missing; " + expected(holder.property(missing)) + ". Add it.");
            }
            case "additionalProperties" -> {
                String unknown = message.getProperty() == null ? "" : message.getProperty();
                yield new Problem.Cause(
                        pointer + "/" + escaped(unknown),
                        "`" + unknown + "` is an unknown member of " + name + "; the known ones are "
                                + String.join(", ", holder.members())
                                + ". Correct its spelling or leave it out.");
            }
            case "enum" ->
                new Problem.Cause(
                        pointer,
                        name + " is " + shown(value) + "; expected is one of the codes " + holder.codes()
                                + ". Send one of them.");
            case "anyOf", "minProperties" -> new Problem.Cause(pointer, incomplete(name, holder));
            case "dependentRequired" ->
                new Problem.Cause(
                        pointer,
                        name + " names a side or a spot without its axle; a wheel is `axle` and `side`. Add `axle`.");
            case "measure", "samples" -> new Problem.Cause(pointer, name + ": " + message.getMessage());
            default ->
                new Problem.Cause(
                        pointer,
                        name + " is " + shown(value) + "; " + expected(holder) + ". "
                                + (value.isNull() ? "Leave it out where it is not known." : "Correct it."));
        };
    }

    private static String incomplete(String name, Schema holder) {
        return name + " is incomplete; " + expected(holder) + ". Add what is missing.";
    }

    private static String expected(Schema schema) {
        return "expected is " + schema.description();
    }

    /** The schema that holds the failed keyword; of a choice, the schema that offers it. */
    private Schema holder(String schemaLocation, String evaluationPath) {
        int hash = schemaLocation.indexOf('#');
        String file = schemaLocation.substring(schemaLocation.lastIndexOf('/', hash) + 1, hash);
        String path = schemaLocation.substring(hash + 1);
        int choice = path.indexOf("/anyOf/");
        JsonPointer keyword = JsonPointer.compile(choice < 0 ? path : path.substring(0, choice + "/anyOf".length()));
        JsonNode document = documents.get(file);
        if (document == null) {
            throw new IllegalStateException("no schema document " + file + " for " + evaluationPath);
        }
        return new Schema(document.at(keyword.head()), file, choice >= 0);
    }

    private static String name(String pointer) {
        if (pointer.isEmpty()) {
            return "`data`";
        }
        String last = pointer.substring(pointer.lastIndexOf('/') + 1);
        if (last.chars().allMatch(Character::isDigit)) {
            String list = pointer.substring(0, pointer.lastIndexOf('/'));
            String listName = list.substring(list.lastIndexOf('/') + 1);
            return "`" + listName + "[" + last + "]`";
        }
        return "`" + last.replace("~1", "/").replace("~0", "~") + "`";
    }

    static String escaped(String member) {
        return member.replace("~", "~0").replace("/", "~1");
    }

    static String shown(JsonNode value) {
        if (value.isMissingNode()) {
            return "missing";
        }
        if (value.isObject()) {
            return "an object";
        }
        if (value.isArray()) {
            return "a list of " + value.size();
        }
        if (value.isTextual()) {
            String text = value.textValue();
            return text.length() <= SHOWN_VALUE ? "\"" + text + "\"" : "a text of " + text.length() + " characters";
        }
        String text = value.toString();
        return text.length() <= SHOWN_VALUE ? text : text.substring(0, SHOWN_VALUE) + "…";
    }

    private final class Schema {

        private final JsonNode node;
        private final String file;
        private final boolean choice;

        Schema(JsonNode node, String file, boolean choice) {
            this.node = node;
            this.file = file;
            this.choice = choice;
        }

        boolean isChoice() {
            return choice;
        }

        String description() {
            return resolved().node.path("description").asText("something else");
        }

        String codes() {
            List<String> codes = new ArrayList<>();
            node.path("enum").forEach(code -> codes.add(code.asText()));
            return String.join(", ", codes);
        }

        List<String> members() {
            List<String> names = new ArrayList<>();
            node.path("properties").fieldNames().forEachRemaining(names::add);
            return names;
        }

        Schema property(String name) {
            return new Schema(node.path("properties").path(name), file, false).resolved();
        }

        private Schema resolved() {
            String reference = node.path("$ref").asText("");
            if (reference.isEmpty() || node.has("description")) {
                return this;
            }
            int hash = reference.indexOf('#');
            String target = hash == 0 ? file : reference.substring(0, hash);
            JsonNode document = documents.get(target);
            if (document == null) {
                throw new IllegalStateException("no schema document " + target);
            }
            return new Schema(document.at(reference.substring(hash + 1)), target, false).resolved();
        }
    }
}
