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
    void what_is_kept_of_a_document_tells_the_same_as_the_document() {
        DocumentDigest digest = DocumentDigest.of(Json.members(
                "{\"version\":3,\"causes\":[1],\"scope\":[],\"verification\":{\"outcome\":\"verified\"}}"));

        assertThat(DocumentDigest.read(digest.text())).isEqualTo(digest);
        assertThat(digest.members()).containsOnlyKeys("causes", "verification");
        assertThat(DocumentDigest.read(DocumentDigest.NONE.text())).isEqualTo(DocumentDigest.NONE);
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
        return CaseChange.between(
                before == null ? DocumentDigest.NONE : digest(before), columns, "QS-1", digest(after));
    }

    private static DocumentDigest digest(String document) {
        return DocumentDigest.of(Json.members(document));
    }
}
