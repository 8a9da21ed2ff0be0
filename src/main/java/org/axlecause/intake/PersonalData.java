package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.axlecause.casefile.PersonalValue;
import org.axlecause.facts.EntryType;

/** Knows where personal data stands in an event, and puts tokens in its place before anything is stored or hashed. */
final class PersonalData {

    private PersonalData() {}

    /** The personal values in an event's data. */
    static Map<String, PersonalValue> in(EntryType type, JsonNode data) {
        return switch (type) {
            case VEHICLE_PRESENTED -> {
                Map<String, PersonalValue> found = new TreeMap<>();
                collect(data.path("vehicle"), "registration", found);
                collect(data.path("vehicle"), "vin", found);
                yield found;
            }
            case DEPARTURE_RECORDED, POLICY_ADOPTED -> {
                Map<String, PersonalValue> found = new TreeMap<>();
                collect(data, "by", found);
                yield found;
            }
            default -> Map.of();
        };
    }

    private static void collect(JsonNode object, String member, Map<String, PersonalValue> found) {
        JsonNode value = object.path(member);
        if (value.isTextual()) {
            found.put(member, new PersonalValue(member, value.textValue()));
        }
    }

    /** The data with a token in place of each personal value. */
    static JsonNode replaced(EntryType type, JsonNode data, Function<PersonalValue, String> token) {
        Map<String, PersonalValue> found = in(type, data);
        if (found.isEmpty()) {
            return data;
        }
        ObjectNode copy = data.deepCopy();
        ObjectNode holder = type == EntryType.VEHICLE_PRESENTED ? (ObjectNode) copy.get("vehicle") : copy;
        found.forEach((member, value) -> holder.put(member, token.apply(value)));
        return copy;
    }
}
