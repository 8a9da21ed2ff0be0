package org.axlecause.statistics;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A question as it was sent: the values of each parameter, blank ones left out.
 *
 * @param values values by the names of the parameters
 */
public record Asked(Map<String, List<String>> values) {

    public Asked {
        Map<String, List<String>> copy = new TreeMap<>();
        values.forEach((name, given) -> {
            List<String> kept = given.stream()
                    .map(String::strip)
                    .filter(value -> !value.isEmpty())
                    .distinct()
                    .toList();
            if (!kept.isEmpty()) {
                copy.put(name, kept);
            }
        });
        values = copy;
    }

    List<String> all(String name) {
        return values.getOrDefault(name, List.of());
    }

    @Nullable
    String one(String name) {
        List<String> given = all(name);
        return given.isEmpty() ? null : given.get(0);
    }
}
