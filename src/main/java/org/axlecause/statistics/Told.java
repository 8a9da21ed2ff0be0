package org.axlecause.statistics;

import java.io.IOException;
import java.io.StringWriter;
import java.time.OffsetDateTime;
import java.util.List;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;

/**
 * An answer as it is told.
 *
 * @param asOf its moment
 * @param json as it stands on the wire
 * @param charts what it can be drawn as; empty where a table says it better
 * @param next cursor of the next page, where there is one
 */
public record Told(
        OffsetDateTime asOf,
        String json,
        List<Chart> charts,
        @Nullable String next) {

    /** The lists of the answers that become tables. */
    private static final List<String> LISTS =
            List.of("shares", "trends", "comparisons", "pareto", "pairs", "lines", "groups", "sites", "checks");

    public Told {
        charts = List.copyOf(charts);
    }

    static Told of(OffsetDateTime asOf, Object view, List<? extends Chart> charts, @Nullable String next) {
        return new Told(asOf, Json.text(view), List.copyOf(charts), next);
    }

    /** Its list as CSV, a row for each item. */
    public String csv() {
        Flattened table = Flattened.of(Json.read(json), LISTS);
        StringWriter text = new StringWriter();
        try {
            CsvTable.write(text, table.columns(), table.rows().iterator());
        } catch (IOException impossible) {
            throw new IllegalStateException("A text in memory can be written", impossible);
        }
        return text.toString();
    }
}
