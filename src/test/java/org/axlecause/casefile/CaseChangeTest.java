package org.axlecause.casefile;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class CaseChangeTest {

    private static final OffsetDateTime NOON = OffsetDateTime.parse("2026-03-02T12:00:00Z");

    @Test
    void what_differs_is_named_in_order_and_what_only_labels_the_case_is_not() {
        CaseChange change = between(
                "{\"reference\":\"QS-1\",\"version\":1,\"status\":\"open\",\"scope\":[]}",
                "{\"reference\":\"QS-2\",\"version\":2,\"status\":\"scoped\",\"causes\":[1],\"scope\":[]}");

        assertThat(change.changed()).containsExactly("causes", "status");
    }

    @Test
    void a_value_of_the_same_length_is_a_change_too() {
        assertThat(between("{\"causes\":[{\"rank\":1}]}", "{\"causes\":[{\"rank\":2}]}")
                        .changed())
                .containsExactly("causes");
    }

    @Test
    void the_same_in_another_order_of_members_is_no_change() {
        assertThat(between(
                                "{\"policy\":{\"code\":\"a\",\"version\":\"1\"}}",
                                "{\"policy\":{\"version\":\"1\",\"code\":\"a\"}}")
                        .changed())
                .isEmpty();
    }

    @Test
    void an_empty_list_says_as_little_as_none_and_a_filled_one_more() {
        assertThat(between("{}", "{\"scope\":[],\"fitness\":{}}").changed()).isEmpty();
        assertThat(between("{\"scope\":[],\"fitness\":{}}", "{}").changed()).isEmpty();
        assertThat(between(null, "{\"scope\":[\"line\"]}").changed()).containsExactly("scope");
        assertThat(between("{\"scope\":[\"line\"]}", "{\"scope\":[]}").changed())
                .containsExactly("scope");
    }

    @Test
    void a_repair_is_told_as_verified_once() {
        String proven = "{\"verification\":{\"outcome\":\"verified\"}}";

        assertThat(between(null, proven).verified()).isTrue();
        assertThat(between("{\"verification\":{\"outcome\":\"not-verified\"}}", proven)
                        .verified())
                .isTrue();
        assertThat(between(proven, proven).verified()).isFalse();
        assertThat(between(proven, "{}").verified()).isFalse();
    }

    private static CaseChange between(@Nullable String before, String after) {
        CaseColumns columns =
                new CaseColumns("quay-street", "open", NOON, LocalDate.of(2026, 3, 2), 2, "Portal", "Lantern");
        return CaseChange.between(before, columns, "QS-1", new CaseDocument(Json.members(after)));
    }
}
