package org.axlecause.outbound;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.axlecause.access.TenantStore;
import org.axlecause.access.Tenants;
import org.axlecause.casefile.CaseChange;
import org.axlecause.shared.BareDatabase;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The wall of the statements alone, in a database of its own where row-level security is switched off. */
@QuarkusTest
class OutboundStatementsTest {

    private static final OffsetDateTime NOON = OffsetDateTime.parse("2026-03-02T12:00:00Z");
    private static final String ID = "s-1";

    @ConfigProperty(name = "axlecause.identity-key")
    String identityKey;

    private BareDatabase database;

    @BeforeEach
    void makeDatabaseWithoutWalls() throws SQLException {
        database = BareDatabase.made();
    }

    @AfterEach
    void dropIt() throws SQLException {
        database.close();
    }

    @Test
    void every_store_sees_and_changes_one_tenant_without_row_level_security() {
        TenantTransaction transaction = TestDatabase.transactionOn(database.source());
        OutboxStore outbox = new OutboxStore(transaction);
        SubscriptionStore subscriptions = new SubscriptionStore(transaction, Optional.of(identityKey));
        DeliveryStore deliveries = new DeliveryStore(transaction);
        TenantStore tenants = Tenants.storeOn(transaction);
        SubscriptionTerms terms = new SubscriptionTerms(
                "https://hooks.example.org/", "d", List.of(Outbound.JUDGED), null, SubscriptionState.ACTIVE);
        Secret secretOfA = Secret.made();
        tenants.open("a", "A");
        tenants.open("b", "B");
        transaction.run("a", () -> subscriptions.add(ID, terms, secretOfA, "key", NOON));
        transaction.run("b", () -> subscriptions.add(ID, terms, Secret.made(), "key", NOON));
        OutgoingEvent ofA = event("a");
        transaction.run("a", () -> outbox.add(ofA));

        transaction.run("b", () -> {
            assertThat(deliveries.list(ID, null, Long.MAX_VALUE, 10)).isEmpty();
            assertThat(deliveries.claim(ID, NOON, NOON.plusMinutes(2), 10)).isEmpty();
            assertThat(deliveries.count(ID, Replay.of(ofA.id()))).isZero();
            assertThat(deliveries.replay(ID, Replay.of(ofA.id()), NOON)).isZero();
            assertThat(subscriptions.all()).hasSize(1);
            assertThat(subscriptions.secrets(ID, NOON)).doesNotContain(secretOfA);
            assertThat(outbox.claim(NOON, NOON.plusMinutes(1), 10)).isEmpty();
            outbox.published(List.of(ofA.id()), NOON);
            assertThat(outbox.removeBefore(NOON.plusDays(1), false)).isZero();
            subscriptions.failing(ID, NOON);
            subscriptions.hold(ID, NOON.plusDays(1));
            assertThat(subscriptions.disable(ID, SubscriptionState.GONE, NOON)).isTrue();
            assertThat(subscriptions.rotate(ID, 3, Secret.made(), NOON)).isTrue();
            subscriptions.well(ID);
            assertThat(subscriptions.change(ID, 5, terms, NOON)).isTrue();
            assertThat(subscriptions.remove(ID, 6)).isTrue();
        });

        transaction.run("a", () -> {
            assertThat(subscriptions.find(ID))
                    .hasValueSatisfying(found -> assertThat(found.version()).isEqualTo(1));
            assertThat(subscriptions.secrets(ID, NOON)).containsExactly(secretOfA);
            assertThat(outbox.claim(NOON, NOON.plusMinutes(1), 10)).hasSize(1);
            List<Delivery> claimed = deliveries.claim(ID, NOON, NOON.plusMinutes(2), 10);
            assertThat(claimed).singleElement().returns(ofA.body(), Delivery::body);
            deliveries.settle(ID, claimed.get(0), DeliveryState.DELIVERED, NOON, "HTTP 200");
            assertThat(deliveries.list(ID, DeliveryState.DELIVERED, Long.MAX_VALUE, 10))
                    .hasSize(1);
        });
        transaction.run("b", () -> outbox.release(List.of(ofA.id())));
        transaction.run(
                "a",
                () -> assertThat(outbox.claim(NOON, NOON.plusMinutes(1), 10)).isEmpty());
    }

    private static OutgoingEvent event(String tenant) {
        return OutgoingEvent.of(new CaseChange("QS-1", null, 1, "open", List.of("causes"), false), tenant, NOON)
                .get(0);
    }
}
