package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.math.BigDecimal;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Consumer;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class YamlFileTest {

    private static final String TEXT = """
            name: no
            day: 2012-01-01
            limit: 0.30
            weekday: MONDAY
            list:
              - limit: abc
                count: 1.5
                flag: yes
            empty:
            """;

    @Test
    void words_decimals_days_and_codes_keep_what_was_written() {
        YamlNode root = YamlFile.ofText("a.yaml", TEXT).root();

        assertThat(root.text("name")).isEqualTo("no");
        assertThat(root.date("day")).isEqualTo(LocalDate.of(2012, 1, 1));
        assertThat(root.decimal("limit")).isEqualTo(new BigDecimal("0.30"));
        assertThat(root.code("weekday", DayOfWeek.class)).isEqualTo(DayOfWeek.MONDAY);
        assertThat(root.optionalText("other")).isNull();
        assertThat(root.items("other")).isEmpty();
    }

    @Test
    void the_same_value_as_json_has_numbers_words_and_nulls() {
        YamlNode root = YamlFile.ofText("a.yaml", "a: 0.30\nb: '0.30'\nc: true\nd:\ne: [1, two]\n")
                .root();

        assertThat(root.toJson()).hasToString("{\"a\":0.30,\"b\":\"0.30\",\"c\":true,\"d\":null,\"e\":[1,\"two\"]}");
    }

    static Stream<Arguments> faults() {
        return Stream.of(
                Arguments.of(
                        (Consumer<YamlNode>) root -> root.items("list").get(0).decimal("limit"),
                        "a.yaml:6: value 'abc' of 'limit' is not a number; write a decimal such as 0.30"),
                Arguments.of(
                        (Consumer<YamlNode>) root -> root.items("list").get(0).whole("count"),
                        "a.yaml:7: value '1.5' of 'count' is not a whole number; write digits such as 12"),
                Arguments.of(
                        (Consumer<YamlNode>) root -> root.items("list").get(0).optionalFlag("flag"),
                        "a.yaml:8: value 'yes' of 'flag' is neither true nor false; write true or false"),
                Arguments.of(
                        (Consumer<YamlNode>) root -> root.date("limit"),
                        "a.yaml:3: value '0.30' of 'limit' is not a day; write a date such as 2012-01-01"),
                Arguments.of(
                        (Consumer<YamlNode>) root -> root.code("name", DayOfWeek.class),
                        "a.yaml:1: value 'no' of 'name' is not a known code; write one of MONDAY, TUESDAY, WEDNESDAY,"
                                + " THURSDAY, FRIDAY, SATURDAY, SUNDAY"),
                Arguments.of(
                        (Consumer<YamlNode>) root -> root.member("colour"),
                        "a.yaml:1: 'the file' lacks the member 'colour'; add 'colour:' with its value"),
                Arguments.of(
                        (Consumer<YamlNode>) root -> root.items("list").get(0).only("limit", "count"),
                        "a.yaml:8: member 'flag' of 'list' is not known; remove it or write one of limit, count"),
                Arguments.of(
                        (Consumer<YamlNode>) root -> root.items("name"),
                        "a.yaml:1: 'name' is not a list; write each item on a line of its own behind a dash"),
                Arguments.of(
                        (Consumer<YamlNode>) root -> root.text("empty"),
                        "a.yaml:9: 'empty' is empty; write its value or remove the line"));
    }

    @ParameterizedTest
    @MethodSource("faults")
    void a_wrong_value_is_named_with_file_line_and_remedy(Consumer<YamlNode> reading, String message) {
        YamlNode root = YamlFile.ofText("a.yaml", TEXT).root();

        assertThatThrownBy(() -> reading.accept(root))
                .isInstanceOf(YamlException.class)
                .hasMessage(message);
    }

    @Test
    void a_key_that_stands_twice_is_refused() {
        assertThatThrownBy(() -> YamlFile.ofText("a.yaml", "a: 1\nb: 2\na: 3\n"))
                .hasMessage("a.yaml:3: 'a' stands twice; keep one of the two");
    }

    @Test
    void broken_text_and_an_empty_file_are_refused_with_their_line() {
        assertThatThrownBy(() -> YamlFile.ofText("a.yaml", "a: [1, 2\nb: 3\n"))
                .hasMessageStartingWith("a.yaml:2: this is not YAML: ");
        assertThatThrownBy(() -> YamlFile.ofText("a.yaml", "# nothing\n"))
                .hasMessage("a.yaml:1: the file is empty; write its members or remove it");
    }

    @Test
    void a_list_used_twice_by_an_alias_is_refused() {
        assertThatThrownBy(() -> YamlFile.ofText("a.yaml", "a: &x [1]\nb: *x\n"))
                .isInstanceOf(YamlException.class)
                .hasMessageStartingWith("a.yaml:");
    }

    @Test
    void a_missing_file_is_named() {
        assertThatThrownBy(() -> YamlFile.onClassPath("rules/nowhere.yaml"))
                .hasMessage("rules/nowhere.yaml:1: there is no such file on the class path; add it or mend the name");
    }

    @Test
    void the_files_of_a_folder_come_sorted_by_name(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("b.yaml"), "a: 1\n");
        Files.writeString(folder.resolve("a.yaml"), "a: 1\n");
        Files.writeString(folder.resolve("c.txt"), "a: 1\n");

        assertThat(YamlFile.inFolder(folder)).extracting(YamlFile::stem).containsExactly("a", "b");
    }

    @Test
    void the_rules_folder_is_found_on_the_class_path() {
        assertThat(YamlFile.textsInRules("", ".md")).containsKey("rules/README.md");
        assertThat(YamlFile.textsInRules("nowhere", ".yaml")).isEmpty();
    }

    @Test
    void the_rules_folder_is_found_inside_a_packed_application(@TempDir Path folder) throws IOException {
        Path jar = folder.resolve("application with blanks.jar");
        try (JarOutputStream packed = new JarOutputStream(Files.newOutputStream(jar))) {
            for (String name : List.of("rules/README.md", "rules/regimes/b.yaml", "rules/regimes/a.yaml")) {
                packed.putNextEntry(new JarEntry(name));
                packed.write("a: 1\n".getBytes(StandardCharsets.UTF_8));
            }
        }
        ClassLoader before = Thread.currentThread().getContextClassLoader();
        try (URLClassLoader application =
                new URLClassLoader(new URL[] {jar.toUri().toURL()}, null)) {
            Thread.currentThread().setContextClassLoader(application);

            assertThat(YamlFile.inRules("regimes"))
                    .extracting(YamlFile::name)
                    .containsExactly("rules/regimes/a.yaml", "rules/regimes/b.yaml");
        } finally {
            Thread.currentThread().setContextClassLoader(before);
        }
    }
}
