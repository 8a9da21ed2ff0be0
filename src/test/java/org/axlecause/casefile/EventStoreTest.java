package org.axlecause.casefile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.axlecause.casefile.Cases.NOON;
import static org.axlecause.casefile.Cases.aTenant;
import static org.axlecause.casefile.Cases.anEvent;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.Test;

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
                        java.time.OffsetDateTime.parse("2026-03-02T09:00:00+01:00"),
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
                tenant, () -> events.known(List.of(known, new EntryId("/sites/quay-street", "never-sent"))));

        assertThat(found).containsOnlyKeys(known);
        assertThat(found.get(known).reference()).isEqualTo("QS-1");
        assertThat(found.get(known).digest()).isEqualTo(Cases.sha256("{\"id\":\"x\"}"));
    }

    @Test
    void an_identity_is_taken_once_in_a_tenant_and_free_in_another() {
        append("QS-1", anEvent("x", "2026-03-02T08:00:00Z"));

        assertThatThrownBy(() -> append("QS-2", anEvent("x", "2026-03-02T08:00:00Z")))
                .isInstanceOf(IdentityTakenException.class);
        assertThat(transaction.call(tenant, () -> events.history("QS-2"))).isEmpty();

        String other = aTenant();
        transaction.run(other, () -> {
            cases.lock(List.of("QS-1"), NOON);
            events.append("QS-1", List.of(anEvent("x", "2026-03-02T08:00:00Z")));
        });
        assertThat(transaction.call(other, () -> events.history("QS-1"))).hasSize(1);
    }

    @Test
    void an_unbroken_chain_is_found_whole() {
        append("QS-1", anEvent("a", "2026-03-02T08:00:00Z"), anEvent("b", "2026-03-02T08:30:00.123456789Z"));
        append("QS-1", anEvent("c", "2026-03-02T07:00:00Z"));

        assertThat(transaction.call(tenant, () -> events.firstBreak("QS-1"))).isEmpty();
    }

    private void append(String reference, NewEvent... added) {
        transaction.run(tenant, () -> {
            cases.lock(List.of(reference), NOON);
            events.append(reference, List.of(added));
        });
    }
}
