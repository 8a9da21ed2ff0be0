package org.axlecause;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** What of a contract would break those who wrote against an older form of it; adding is fine. */
final class ContractChanges {

    private static final Set<String> METHODS = Set.of("get", "put", "post", "delete", "patch", "head");

    private final JsonNode older;
    private final JsonNode newer;
    private final Set<String> breaks = new TreeSet<>();
    private final Set<String> compared = new HashSet<>();

    private ContractChanges(JsonNode older, JsonNode newer) {
        this.older = older;
        this.newer = newer;
    }

    /** A sentence for each change that breaks, in alphabetical order. */
    static List<String> breaking(JsonNode older, JsonNode newer) {
        ContractChanges changes = new ContractChanges(older, newer);
        older.path("paths").properties().forEach(path -> changes.path(path.getKey(), path.getValue()));
        return List.copyOf(changes.breaks);
    }

    private void path(String address, JsonNode before) {
        before.properties().forEach(operation -> {
            if (METHODS.contains(operation.getKey())) {
                String name = operation.getKey() + " " + address;
                JsonNode now = newer.path("paths").path(address).path(operation.getKey());
                if (now.isMissingNode()) {
                    breaks.add(name + " is gone");
                } else {
                    operation(name, operation.getValue(), now);
                }
            }
        });
    }

    private void operation(String name, JsonNode before, JsonNode now) {
        parameters(name, before.path("parameters"), now.path("parameters"));
        content(name + " takes", before.path("requestBody"), now.path("requestBody"), true);
        before.path("responses").properties().forEach(response -> {
            JsonNode answer = now.path("responses").path(response.getKey());
            if (answer.isMissingNode()) {
                breaks.add(name + " no longer answers " + response.getKey());
            } else {
                content(name + " answers " + response.getKey(), response.getValue(), answer, false);
            }
        });
    }

    private void parameters(String name, JsonNode before, JsonNode now) {
        for (JsonNode parameter : before) {
            String key =
                    parameter.path("in").asText() + " " + parameter.path("name").asText();
            JsonNode found = parameter(now, parameter);
            if (found == null) {
                breaks.add(name + ": the parameter " + key + " is gone");
            } else {
                schema(name + ": the parameter " + key, parameter.path("schema"), found.path("schema"), true);
            }
        }
        for (JsonNode parameter : now) {
            JsonNode known = parameter(before, parameter);
            if (parameter.path("required").asBoolean()
                    && (known == null || !known.path("required").asBoolean())) {
                breaks.add(name + ": the parameter " + parameter.path("in").asText() + " "
                        + parameter.path("name").asText() + " is now required");
            }
        }
    }

    private static JsonNode parameter(JsonNode parameters, JsonNode wanted) {
        for (JsonNode parameter : parameters) {
            if (parameter.path("name").equals(wanted.path("name"))
                    && parameter.path("in").equals(wanted.path("in"))) {
                return parameter;
            }
        }
        return null;
    }

    private void content(String name, JsonNode before, JsonNode now, boolean request) {
        before.path("content").properties().forEach(content -> {
            JsonNode type = now.path("content").path(content.getKey());
            if (type.isMissingNode()) {
                breaks.add(name + ": the media type " + content.getKey() + " is gone");
            } else {
                schema(name, content.getValue().path("schema"), type.path("schema"), request);
            }
        });
    }

    private void schema(String name, JsonNode before, JsonNode now, boolean request) {
        String reference = before.path("$ref").asText("");
        String nameNow = reference.isEmpty() ? name : reference.replaceFirst(".*/", "");
        if (!reference.isEmpty() && !compared.add(reference + request)) {
            return;
        }
        JsonNode one = resolved(older, before);
        JsonNode other = resolved(newer, now);
        if (!one.path("type").equals(other.path("type"))) {
            breaks.add(nameNow + ": the type " + one.path("type") + " has become " + other.path("type"));
        }
        codes(nameNow, one.path("enum"), other.path("enum"), request);
        required(nameNow, texts(one.path("required")), texts(other.path("required")), request);
        one.path("properties").properties().forEach(member -> {
            JsonNode found = other.path("properties").path(member.getKey());
            if (found.isMissingNode()) {
                breaks.add(nameNow + ": the member " + member.getKey() + " is gone");
            } else {
                schema(nameNow + "." + member.getKey(), member.getValue(), found, request);
            }
        });
        for (String part : List.of("items", "additionalProperties")) {
            if (one.path(part).isObject() && other.path(part).isObject()) {
                schema(nameNow + " " + part, one.path(part), other.path(part), request);
            }
        }
        for (String choice : List.of("oneOf", "anyOf", "allOf")) {
            for (int i = 0;
                    i < Math.min(one.path(choice).size(), other.path(choice).size());
                    i++) {
                schema(
                        nameNow + " " + choice,
                        one.path(choice).get(i),
                        other.path(choice).get(i),
                        request);
            }
        }
    }

    private void codes(String name, JsonNode before, JsonNode now, boolean request) {
        if (!before.isMissingNode()) {
            Set<String> gone = new TreeSet<>(texts(before));
            gone.removeAll(texts(now));
            if (!now.isMissingNode()) {
                gone.forEach(code -> breaks.add(name + ": the code " + code + " is gone"));
            }
        } else if (!now.isMissingNode() && request) {
            breaks.add(name + ": only some values are taken now");
        }
    }

    private void required(String name, Set<String> before, Set<String> now, boolean request) {
        Set<String> changed = new TreeSet<>(request ? now : before);
        changed.removeAll(request ? before : now);
        changed.forEach(member ->
                breaks.add(name + ": the member " + member + (request ? " is now required" : " may now be left out")));
    }

    private static JsonNode resolved(JsonNode contract, JsonNode schema) {
        JsonNode found = schema;
        while (found.has("$ref")) {
            found = contract.at(found.path("$ref").asText().substring(1));
        }
        return found;
    }

    private static Set<String> texts(JsonNode values) {
        List<String> texts = new ArrayList<>();
        values.forEach(value -> texts.add(value.asText()));
        return new TreeSet<>(texts);
    }
}
