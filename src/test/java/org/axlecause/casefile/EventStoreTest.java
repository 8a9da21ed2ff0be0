package org.axlecause.casefile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.axlecause.casefile.Cases.NOON;
import static org.axlecause.casefile.Cases.aTenant;
import static org.axlecause.casefile.Cases.anEvent;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.DatabaseException;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class EventStoreTest {

    @Inject
    TenantTransaction transaction;

    @Inject
    CaseStore cases;

    @Inject
    EventStore events;

    private final String tenant = aTenant();

    @Test
    void a_history_comes_back_in_the_order_that_counts() {
        append("QS-1", anEvent("c", "2026-03-02T09:00:00+01:00"), anEvent("b", "2026-03-02T08:30:00Z"));
        append("QS-1", anEvent("a", "2026-03-02T08:00:00.000000001Z"));

        List<StoredEvent> history = transaction.call(tenant, () -> events.history("QS-1"));

        assertThat(history).extracting(event -> event.id().id()).containsExactly("c", "a", "b");
        assertThat(history.get(0))
                .isEqualTo(new StoredEvent(
                        1,
                        new EntryId("/sites/quay-street", "c"),
                        "org.axlecause.finding.recorded.v1",
                        OffsetDateTime.parse("2026-03-02T09:00:00+01:00"),
                        NOON,
                        "open",
                        "{\"id\":\"c\"}"));
    }

    @Test
    void a_body_is_kept_byte_for_byte() {
        String body = "{\"b\":1.50,\"a\":\"\\u00e9 é\",\"a2\":[1,  2]}";
        append("QS-1", anEvent("x", "2026-03-02T08:00:00Z", body));

        assertThat(transaction.call(tenant, () -> events.history("QS-1")))
                .singleElement()
                .returns(body, StoredEvent::body);
    }

    @Test
    void identities_are_known_with_digest_and_case() {
        append("QS-1", anEvent("x", "2026-03-02T08:00:00Z"));
        EntryId known = new EntryId("/sites/quay-street", "x");

        Map<EntryId, KnownIdentity> found = transaction.call(
                tenant,
                () -> cases.lock("QS-2", List.of(known, new EntryId("/sites/quay-street", "never-sent")), NOON)
                        .known());

        assertThat(found).containsOnlyKeys(known);
        assertThat(found.get(known).reference()).isEqualTo("QS-1");
        assertThat(found.get(known).digest()).isEqualTo(Cases.sha256("{\"id\":\"x\"}"));
    }

    @Test
    void an_identity_is_taken_once_in_a_tenant_and_free_in_another() {
        append("QS-1", anEvent("x", "2026-03-02T08:00:00Z"));

        assertThatThrownBy(() -> append("QS-2", anEvent("x", "2026-03-02T08:00:00Z")))
                .isInstanceOfSatisfying(
                        DatabaseException.class,
                        fault -> assertThat(EventStore.isTaken(fault)).isTrue());
        assertThat(transaction.call(tenant, () -> events.history("QS-2"))).isEmpty();

        String other = aTenant();
        transaction.run(other, () -> {
            events.append(cases.lock("QS-1", List.of(), NOON), List.of(anEvent("x", "2026-03-02T08:00:00Z")));
        });
        assertThat(transaction.call(other, () -> events.history("QS-1"))).hasSize(1);
    }

    @Test
    void an_unbroken_chain_is_found_whole() {
        append("QS-1", anEvent("a", "2026-03-02T08:00:00Z"), anEvent("b", "2026-03-02T08:30:00.123456789Z"));
        append("QS-1", anEvent("c", "2026-03-02T07:00:00Z"));

        assertThat(transaction.call(tenant, () -> events.firstBreak("QS-1"))).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPDATE event SET body = '{\"id\":\"B\"}' WHERE id = 'b'",
                "UPDATE event SET actor = 'somebody' WHERE id = 'b'",
                "UPDATE event SET time_sent = '2026-03-02T08:30:01Z' WHERE id = 'b'",
                "UPDATE event SET received_at = received_at + interval '1 microsecond' WHERE id = 'b'",
                "UPDATE event SET digest = set_byte(digest, 7, 255 - get_byte(digest, 7)) WHERE id = 'b'",
                "UPDATE event SET hash = set_byte(hash, 0, 255 - get_byte(hash, 0)) WHERE id = 'c'",
                "UPDATE event SET id = CASE id WHEN 'a' THEN 'b' WHEN 'b' THEN 'a' ELSE id END WHERE true",
                "DELETE FROM event WHERE id = 'b'",
                "DELETE FROM event WHERE id = 'c'"
            })
    void whatever_is_changed_in_a_history_behind_the_services_back_is_found(String change) throws SQLException {
        append("QS-1", anEvent("a", "2026-03-02T08:00:00Z"), anEvent("b", "2026-03-02T08:30:00Z"));
        append("QS-1", anEvent("c", "2026-03-02T07:00:00Z"));

        try (Connection superuser = TestDatabase.superuser();
                Statement statement = superuser.createStatement()) {
            statement.execute("SET session_replication_role = replica");
            assertThat(statement.executeUpdate(change + " AND tenant_id = '" + tenant + "'"))
                    .isPositive();
        }

        assertThat(transaction.call(tenant, () -> events.firstBreak("QS-1"))).isPresent();
    }

    @Test
    void not_even_the_owner_of_the_tables_changes_history() throws SQLException {
        append("QS-1", anEvent("a", "2026-03-02T08:00:00Z"));

        try (Connection superuser = TestDatabase.superuser();
                Statement statement = superuser.createStatement()) {
            assertThatThrownBy(() -> statement.execute("UPDATE event SET actor = 'x'"))
                    .hasMessageContaining("history is append only");
            assertThatThrownBy(() -> statement.execute("DELETE FROM event"))
                    .hasMessageContaining("history is append only");
            assertThatThrownBy(() -> statement.execute("DELETE FROM event_identity"))
                    .hasMessageContaining("history is append only");
        }
    }

    @Test
    void hundred_that_append_to_one_case_at_once_make_one_chain() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try {
            List<Callable<Boolean>> senders = new ArrayList<>();
            for (int number = 0; number < 100; number++) {
                NewEvent event = anEvent("e" + number, "2026-03-02T08:00:00Z");
                senders.add(() -> {
                    append("QS-1", event);
                    return true;
                });
            }
            for (Future<Boolean> sent : threads.invokeAll(senders)) {
                assertThat(sent.get()).isTrue();
            }
        } finally {
            threads.shutdown();
        }

        assertThat(transaction.call(tenant, () -> events.history("QS-1"))).hasSize(100);
        assertThat(transaction.call(tenant, () -> events.firstBreak("QS-1"))).isEmpty();
    }

    private void append(String reference, NewEvent... added) {
        transaction.run(tenant, () -> {
            events.append(cases.lock(reference, List.of(), NOON), List.of(added));
        });
    }
}
