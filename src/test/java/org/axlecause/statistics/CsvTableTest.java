package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvTableTest {

    @Test
    void numbers_stand_bare_and_texts_in_quotation_marks() throws IOException {
        assertThat(written("cause", "cases", "share", "confirmed", "note")
                        .with("lining-glazed", 12, 0.00001, true, null)
                        .text())
                .isEqualTo("""
                        "cause","cases","share","confirmed","note"\r
                        "lining-glazed",12,0.000010,true,\r
                        """);
    }

    /** RFC 4180, rules 6 and 7. */
    @Test
    void commas_line_ends_and_quotation_marks_come_back_as_they_were() throws IOException {
        String text = "so-called \"Simplex\", left\r\nand right";

        String csv = written("words").with(text).text();

        assertThat(csv).isEqualTo("\"words\"\r\n\"so-called \"\"Simplex\"\", left\r\nand right\"\r\n");
        try (MappingIterator<String[]> rows = new CsvMapper()
                .readerFor(String[].class)
                .with(CsvParser.Feature.WRAP_AS_ARRAY)
                .readValues(csv)) {
            assertThat(rows.readAll()).containsExactly(new String[] {"words"}, new String[] {text});
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "=1+1",
                "+cmd|' /C calc'!A0",
                "-2+3",
                "@SUM(A1)",
                "\t=1",
                "\rx",
                "\nx",
                "  =1+1",
                "\uFF1D1+1",
                "\uFF20SUM(A1)",
                "=HYPERLINK(\"http://example.org\",\"x\")"
            })
    void what_a_spreadsheet_would_run_gets_an_apostrophe(String text) throws IOException {
        assertThat(written("words").with(text).text())
                .isEqualTo("\"words\"\r\n\"'" + text.replace("\"", "\"\"") + "\"\r\n");
        assertThat(written(text).text()).startsWith("\"'");
    }

    @ParameterizedTest
    @ValueSource(strings = {"lining-glazed", "3 = 3", "a@b", "", " ", "'quoted", "\u00e9t\u00e9 \u6e2c\u5b9a"})
    void harmless_words_stay_as_they_are(String text) throws IOException {
        assertThat(written("words").with(text).text()).isEqualTo("\"words\"\r\n\"" + text + "\"\r\n");
    }

    @Test
    void a_negative_number_is_no_formula() throws IOException {
        assertThat(written("a", "b", "c", "d")
                        .with(-3, -2L, -0.5, new BigDecimal("-1E+3"))
                        .text())
                .isEqualTo("\"a\",\"b\",\"c\",\"d\"\r\n-3,-2,-0.5,-1000\r\n");
    }

    @Test
    void a_row_of_another_length_is_refused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> written("a", "b").with(1).text())
                .withMessageContaining("1 cells for 2 columns");
    }

    @Test
    void the_writer_stays_open_for_what_comes_after() throws IOException {
        boolean[] closed = {false};
        StringWriter out = new StringWriter() {
            @Override
            public void close() {
                closed[0] = true;
            }
        };

        CsvTable.write(out, List.of("a"), List.<List<Object>>of().iterator());

        assertThat(closed[0]).isFalse();
        assertThat(out).hasToString("\"a\"\r\n");
    }

    private static Written written(String... columns) {
        return new Written(List.of(columns), new ArrayList<>());
    }

    private record Written(List<String> columns, List<List<Object>> rows) {

        private Written with(Object... cells) {
            rows.add(Arrays.asList(cells));
            return this;
        }

        private String text() throws IOException {
            StringWriter out = new StringWriter();
            CsvTable.write(out, columns, rows.iterator());
            return out.toString();
        }
    }
}
