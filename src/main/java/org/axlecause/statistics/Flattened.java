package org.axlecause.statistics;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * An answer as a table: a row for each item of its list, and for each item of a list within an item. Members of members
 * are joined by points, lists of words by blanks.
 *
 * @param columns names of the columns, in the order they first come
 * @param rows cells in the order of the columns; null where an item has no such member
 */
record Flattened(List<String> columns, List<List<@Nullable Object>> rows) {

    private static final String AS_OF = "asOf";

    Flattened {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
    }

    /** The table of an answer, which holds one of these lists; the moment of the answer stands in each row. */
    static Flattened of(JsonNode answer, List<String> lists) {
        JsonNode items = lists.stream()
                .map(answer::path)
                .filter(JsonNode::isArray)
                .findFirst()
                .orElseThrow();
        List<Map<String, Object>> rows = new ArrayList<>();
        for (JsonNode item : items) {
            Map<String, Object> row = new LinkedHashMap<>();
            row.put(AS_OF, answer.path(AS_OF).asText());
            rows.addAll(flat(row, "", item));
        }
        Set<String> columns = new LinkedHashSet<>(List.of(AS_OF));
        rows.forEach(row -> columns.addAll(row.keySet()));
        List<List<@Nullable Object>> cells = new ArrayList<>();
        for (Map<String, Object> row : rows) {
            List<@Nullable Object> line = new ArrayList<>();
            columns.forEach(column -> line.add(row.get(column)));
            cells.add(line);
        }
        return new Flattened(List.copyOf(columns), cells);
    }

    /** The rows that an object adds to a row begun. */
    private static List<Map<String, Object>> flat(Map<String, Object> begun, String prefix, JsonNode object) {
        List<Map<String, Object>> rows = new ArrayList<>(List.of(new LinkedHashMap<>(begun)));
        object.properties().forEach(member -> {
            String name = prefix + member.getKey();
            JsonNode value = member.getValue();
            if (value.isObject()) {
                replace(rows, name + ".", List.of(value));
            } else if (value.isArray() && value.path(0).isValueNode()) {
                List<String> words = new ArrayList<>();
                value.forEach(word -> words.add(word.asText()));
                rows.forEach(row -> row.put(name, String.join(" ", words)));
            } else if (value.isArray()) {
                replace(rows, name + ".", value);
            } else if (!value.isNull()) {
                rows.forEach(row -> row.put(name, cell(value)));
            }
        });
        return rows;
    }

    /** Each row becomes as many as there are items; without items it stays as it is. */
    private static void replace(List<Map<String, Object>> rows, String prefix, Iterable<JsonNode> items) {
        List<Map<String, Object>> more = new ArrayList<>();
        for (Map<String, Object> row : rows) {
            int before = more.size();
            items.forEach(item -> more.addAll(flat(row, prefix, item)));
            if (more.size() == before) {
                more.add(row);
            }
        }
        rows.clear();
        rows.addAll(more);
    }

    private static Object cell(JsonNode value) {
        if (value.isBoolean()) {
            return value.asBoolean();
        }
        return value.isNumber() ? value.decimalValue() : value.asText();
    }
}
