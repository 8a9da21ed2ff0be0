package org.axlecause.statistics;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.SequenceWriter;
import com.fasterxml.jackson.dataformat.csv.CsvGenerator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Rows as CSV of RFC 4180: a header, lines that end with CR LF, texts in quotation marks, numbers and empty cells without.
 * A text that a spreadsheet would take for a formula gets an apostrophe before it, so that opening the file runs nothing.
 */
final class CsvTable {

    /** Characters that begin a formula, the full-width ones among them (OWASP, CSV Injection). */
    private static final String BEGIN_A_FORMULA = "=+-@\uFF1D\uFF0B\uFF0D\uFF20";

    private static final CsvMapper MAPPER = CsvMapper.builder()
            .enable(CsvGenerator.Feature.ALWAYS_QUOTE_STRINGS)
            .enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build();

    private CsvTable() {}

    /**
     * Writes a table row by row and leaves the writer open.
     *
     * @param columns names, one at least
     * @param rows cells in the order of the columns: text, number, truth value, or null where nothing is known
     */
    static void write(Writer out, List<String> columns, Iterator<? extends List<? extends @Nullable Object>> rows)
            throws IOException {
        CsvSchema.Builder cells = CsvSchema.builder().setLineSeparator("\r\n");
        for (int column = 0; column < columns.size(); column++) {
            cells.addColumn(Integer.toString(column));
        }
        try (SequenceWriter writer = MAPPER.writer(cells.build())
                .without(JsonGenerator.Feature.AUTO_CLOSE_TARGET)
                .writeValues(out)) {
            writer.write(columns.stream().map(CsvTable::harmless).toList());
            while (rows.hasNext()) {
                writer.write(row(columns, rows.next()));
            }
        }
    }

    private static List<@Nullable Object> row(List<String> columns, List<? extends @Nullable Object> cells) {
        if (cells.size() != columns.size()) {
            throw new IllegalArgumentException(
                    "%d cells for %d columns: give one for each".formatted(cells.size(), columns.size()));
        }
        List<@Nullable Object> row = new ArrayList<>();
        for (Object cell : cells) {
            row.add(cell(cell));
        }
        return row;
    }

    private static @Nullable Object cell(@Nullable Object cell) {
        if (cell == null || cell instanceof Boolean || cell instanceof Integer || cell instanceof Long) {
            return cell;
        }
        if (cell instanceof Double number) {
            return new BigDecimal(number.toString());
        }
        return cell instanceof BigDecimal ? cell : harmless(cell.toString());
    }

    private static String harmless(String text) {
        String stripped = text.strip();
        boolean formula = !stripped.isEmpty() && BEGIN_A_FORMULA.indexOf(stripped.charAt(0)) >= 0;
        boolean control = !text.isEmpty() && "\t\r\n".indexOf(text.charAt(0)) >= 0;
        return formula || control ? "'" + text : text;
    }
}
