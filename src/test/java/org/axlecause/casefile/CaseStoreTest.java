package org.axlecause.casefile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.casefile.Cases.NOON;
import static org.axlecause.casefile.Cases.aJudgedCase;
import static org.axlecause.casefile.Cases.aTenant;
import static org.axlecause.casefile.Cases.anEvent;
import static org.axlecause.casefile.Cases.day;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.PreparedStatement;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.axlecause.facts.CauseCode;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.Test;

@QuarkusTest
class CaseStoreTest {

    @Inject
    TenantTransaction transaction;

    @Inject
    CaseStore cases;

    @Inject
    EventStore events;

    private final String tenant = aTenant();

    @Test
    void a_document_is_served_as_the_bytes_that_were_judged() {
        keep("QS-1", aJudgedCase("quay-street", "scoped", NOON, "Portal"));

        StoredCase found = transaction.call(tenant, () -> cases.find("QS-1")).orElseThrow();

        assertThat(found.document()).isEqualTo("{\"z\":1, \"a\":2}");
        assertThat(found.judging()).isEqualTo(Judging.DONE);
        assertThat(found.policy()).isEqualTo("baseline 1");
        assertThat(found.rulebook()).isEqualTo("rules-1");
        assertThat(found.columns())
                .isEqualTo(new CaseColumns("quay-street", "scoped", NOON, day("2026-03-02"), 3, "Corvane", "Portal"));
    }

    @Test
    void a_case_without_a_single_event_is_no_case() {
        transaction.call(tenant, () -> cases.lock("QS-1", List.of(), NOON));

        assertThat(transaction.call(tenant, () -> cases.find("QS-1"))).isEmpty();
        assertThat(list(CaseFilter.ALL)).isEmpty();
    }

    @Test
    void a_failed_judging_keeps_the_last_document() {
        keep("QS-1", aJudgedCase("quay-street", "scoped", NOON, "Portal"));

        transaction.run(tenant, () -> cases.markFailed("QS-1", NOON));

        StoredCase found = transaction.call(tenant, () -> cases.find("QS-1")).orElseThrow();
        assertThat(found.judging()).isEqualTo(Judging.FAILED);
        assertThat(found.document()).isEqualTo("{\"z\":1, \"a\":2}");
        assertThat(list(new CaseFilter(null, null, null, null, null, Judging.FAILED, null)))
                .containsExactly("QS-1");
    }

    @Test
    void a_later_judgement_replaces_the_rows_of_the_one_before() {
        keep("QS-1", aJudgedCase("quay-street", "scoped", NOON, "Portal"));
        JudgedCase judged = aJudgedCase("quay-street", "open", NOON, "Portal");

        transaction.run(
                tenant,
                () -> cases.save(
                        "QS-1",
                        new JudgedCase(judged.columns(), "{}", "baseline 1", "rules-1", Set.of(CauseCode.DRUM_OVAL)),
                        NOON));

        assertThat(list(withCause("hub-seal-leaking"))).isEmpty();
        assertThat(list(withCause("drum-oval"))).containsExactly("QS-1");
        assertThat(list(CaseFilter.ALL)).containsExactly("QS-1");
    }

    @Test
    void a_later_judgement_replaces_what_the_release_before_wrote_of_causes_at_their_places() {
        keep("QS-1", aJudgedCase("quay-street", "scoped", NOON, "Portal"));
        writeAsTheReleaseBefore("QS-1", "hub-seal-leaking", "confirmed");
        writeAsTheReleaseBefore("QS-1", "drum-oval", "likely");
        assertThat(list(withCause("drum-oval"))).containsExactly("QS-1");

        transaction.run(tenant, () -> cases.save("QS-1", aJudgedCase("quay-street", "open", NOON, "Portal"), NOON));

        assertThat(list(withCause("drum-oval"))).isEmpty();
        assertThat(list(withCause("hub-seal-leaking"))).containsExactly("QS-1");
    }

    @Test
    void the_list_is_filtered_by_site_status_cause_day_and_words() {
        keep("QS-1", aJudgedCase("quay-street", "scoped", OffsetDateTime.parse("2026-03-01T10:00:00Z"), "Portal"));
        keep("HM-2", aJudgedCase("hill-mill", "closed", OffsetDateTime.parse("2026-03-02T10:00:00Z"), "Lantern"));

        assertThat(list(CaseFilter.ALL)).containsExactly("HM-2", "QS-1");
        assertThat(list(new CaseFilter(List.of("hill-mill"), null, null, null, null, null, null)))
                .containsExactly("HM-2");
        assertThat(list(new CaseFilter(List.of(), null, null, null, null, null, null)))
                .isEmpty();
        assertThat(list(new CaseFilter(null, "scoped", null, null, null, null, null)))
                .containsExactly("QS-1");
        assertThat(list(new CaseFilter(null, null, "hub-seal-leaking", null, null, null, null)))
                .containsExactly("HM-2", "QS-1");
        assertThat(list(new CaseFilter(null, null, "drum-oval", null, null, null, null)))
                .isEmpty();
        assertThat(list(new CaseFilter(null, null, null, day("2026-03-02"), null, null, null)))
                .containsExactly("HM-2");
        assertThat(list(new CaseFilter(null, null, null, null, day("2026-03-02"), null, null)))
                .containsExactly("QS-1");
        assertThat(list(new CaseFilter(null, null, null, null, null, null, "lantERN")))
                .containsExactly("HM-2");
        assertThat(list(new CaseFilter(null, null, null, null, null, null, "qs-")))
                .containsExactly("QS-1");
        assertThat(list(new CaseFilter(null, null, null, null, null, null, "%")))
                .isEmpty();
    }

    @Test
    void words_are_found_in_one_piece_wherever_they_stand() {
        keep("abcbcd", aJudgedCase("quay-street", "open", NOON, "Portal"));

        assertThat(Stream.of("d corvane por", "cbc", "bc", "\u00e9", "abcd", "portal corvane", "corvane  portal", "c%d")
                        .filter(words -> list(withWords(words)).contains("abcbcd")))
                .containsExactly("d corvane por", "cbc", "bc");
    }

    @Test
    void a_case_is_found_by_the_vehicle_that_it_has_now() {
        keep("QS-1", aJudgedCase("quay-street", "open", NOON, "Portal"));
        keep("QS-2", aJudgedCase("quay-street", "open", NOON, "Portal"));
        transaction.run(tenant, () -> cases.save("QS-1", aJudgedCase("quay-street", "open", NOON, "Lantern"), NOON));

        assertThat(list(withWords("lantern"))).containsExactly("QS-1");
        assertThat(list(withWords("portal"))).containsExactly("QS-2");
    }

    @Test
    void words_are_found_in_a_case_behind_a_thousand_newer_ones() {
        keep("OLD-1", aJudgedCase("quay-street", "open", NOON.minusYears(1), "Lantern"));
        keepMany("NEW-", "open", "Portal");

        assertThat(list(withWords("lantern"))).containsExactly("OLD-1");
        assertThat(list(withWords("la"))).containsExactly("OLD-1");
        assertThat(list(new CaseFilter(null, "closed", null, null, null, null, "lantern")))
                .isEmpty();
    }

    @Test
    void words_that_more_than_a_thousand_cases_have_are_found_behind_a_thousand_others_of_a_status() {
        keep("OLD-1", aJudgedCase("quay-street", "closed", NOON.minusYears(1), "Portal"));
        keepMany("NEW-", "open", "Portal");
        keepMany("DONE-", "closed", "Lantern");

        assertThat(list(new CaseFilter(null, "closed", null, null, null, null, "portal")))
                .containsExactly("OLD-1");
    }

    @Test
    void one_tenant_never_finds_the_words_of_another() {
        keep("QS-1", aJudgedCase("quay-street", "open", NOON, "Portal"));

        assertThat(transaction.call(aTenant(), () -> cases.list(withWords("portal"), null, 10)))
                .isEmpty();
    }

    @Test
    void pages_walk_newest_first_over_every_case_once() {
        Stream.of("A", "B", "C", "D", "E")
                .forEach(reference -> keep(reference, aJudgedCase("quay-street", "open", NOON, "Portal")));

        List<String> walked = new ArrayList<>();
        ListPosition after = null;
        while (true) {
            ListPosition from = after;
            List<StoredCase> page = transaction.call(tenant, () -> cases.list(CaseFilter.ALL, from, 2));
            if (page.isEmpty()) {
                break;
            }
            page.forEach(found -> walked.add(found.reference()));
            StoredCase last = page.get(page.size() - 1);
            after = ListPosition.of(new ListPosition(last.columns().opened(), last.reference()).cursor())
                    .orElseThrow();
        }

        assertThat(walked).containsExactly("E", "D", "C", "B", "A");
    }

    @Test
    void a_cursor_that_was_not_made_here_is_none() {
        assertThat(Stream.of("", "!", "QUJD", "MjAyNi0wMy0wMiBB").map(ListPosition::of))
                .allMatch(Optional::isEmpty);
    }

    @Test
    void one_tenant_never_lists_the_cases_of_another() {
        keep("QS-1", aJudgedCase("quay-street", "open", NOON, "Portal"));

        String other = aTenant();

        assertThat(transaction.call(other, () -> cases.list(CaseFilter.ALL, null, 10)))
                .isEmpty();
        assertThat(transaction.call(other, () -> cases.find("QS-1"))).isEmpty();
    }

    private void keepMany(String prefix, String status, String model) {
        transaction.run(
                tenant,
                () -> IntStream.rangeClosed(1, 1001).forEach(number -> {
                    String reference = prefix + number;
                    events.append(
                            cases.lock(reference, List.of(), NOON),
                            List.of(anEvent(reference, "2026-03-02T08:00:00Z")));
                    cases.save(reference, aJudgedCase("quay-street", status, NOON, model), NOON);
                }));
    }

    private void keep(String reference, JudgedCase judged) {
        transaction.run(tenant, () -> {
            events.append(cases.lock(reference, List.of(), NOON), List.of(anEvent(reference, "2026-03-02T08:00:00Z")));
            cases.save(reference, judged, NOON);
        });
    }

    /** A row of a cause at a place, in the rank that this release would give to another. */
    private void writeAsTheReleaseBefore(String reference, String cause, String standing) {
        transaction.run(
                tenant,
                () -> transaction.jdbc((connection, own) -> {
                    try (PreparedStatement write = connection.prepareStatement("""
                            INSERT INTO case_cause (tenant_id, reference, rank, code, axle, standing, probability, root)
                            SELECT ?, ?, coalesce(max(rank), 0) + 1, ?, 2, ?, 0.9, true
                              FROM case_cause WHERE tenant_id = ? AND reference = ?
                            """)) {
                        write.setString(1, own);
                        write.setString(2, reference);
                        write.setString(3, cause);
                        write.setString(4, standing);
                        write.setString(5, own);
                        write.setString(6, reference);
                        return write.executeUpdate();
                    }
                }));
    }

    private static CaseFilter withCause(String cause) {
        return new CaseFilter(null, null, cause, null, null, null, null);
    }

    private static CaseFilter withWords(String words) {
        return new CaseFilter(null, null, null, null, null, null, words);
    }

    private List<String> list(CaseFilter filter) {
        return transaction.call(tenant, () -> cases.list(filter, null, 10)).stream()
                .map(StoredCase::reference)
                .toList();
    }
}
