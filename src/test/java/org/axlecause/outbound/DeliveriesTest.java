package org.axlecause.outbound;

import static java.util.stream.Collectors.toList;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.standardwebhooks.Webhook;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.casefile.CaseChange;
import org.axlecause.outbound.DeliveryStore.Listed;
import org.axlecause.outbound.ManageSubscriptions.WithSecret;
import org.axlecause.outbound.Receiver.Behaviour;
import org.axlecause.outbound.Receiver.Message;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Deliveries to an endpoint of this machine, on a clock that the test moves. */
@QuarkusTest
@TestProfile(VirtualTime.class)
class DeliveriesTest {

    @Inject
    VirtualClock clock;

    @Inject
    NameServer names;

    @Inject
    Outbound outbound;

    @Inject
    SendDeliveries sendDeliveries;

    @Inject
    Dispatch dispatch;

    @Inject
    ManageSubscriptions manage;

    @Inject
    DeliveryStore deliveries;

    @Inject
    OutboxStore outbox;

    @Inject
    RemoveOldEvents removeOldEvents;

    @Inject
    TenantTransaction transaction;

    private Receiver receiver;
    private Actor actor;
    private WithSecret made;

    @BeforeEach
    void subscribe() throws IOException {
        clock.set(VirtualClock.START);
        receiver = Receiver.open();
        actor = outbound.aTenant();
        made = outbound.subscribe(actor, receiver.address());
    }

    @AfterEach
    void unsubscribe() {
        receiver.close();
        manage.all(actor).forEach(left -> manage.remove(left.id(), left.version(), actor));
    }

    @Test
    void a_message_is_a_cloud_event_signed_by_standard_webhooks() throws Exception {
        OutgoingEvent event = outbound.announce(actor, "QS-1");

        send();

        Message message = receiver.messages().get(0);
        assertThat(receiver.messages()).hasSize(1);
        assertThat(message.path()).isEqualTo("/hook");
        assertThat(message.headers())
                .containsEntry("Content-Type", "application/cloudevents+json; charset=UTF-8")
                .containsEntry("webhook-id", event.id().toString())
                .containsEntry("webhook-timestamp", Long.toString(VirtualClock.START.getEpochSecond()));
        assertThat(message.headers().get("webhook-signature"))
                .isEqualTo(new Webhook(made.secret().text())
                        .sign(message.id(), VirtualClock.START.getEpochSecond(), message.body()));
        assertThat(message.body()).isEqualTo(event.body());
        JsonNode body = Json.mapper().readTree(message.body());
        assertThat(body.path("data").toString())
                .isEqualTo("{\"reference\":\"QS-1\",\"version\":1,\"status\":\"open\",\"link\":\"/v1/cases/QS-1\","
                        + "\"changed\":[\"causes\",\"timeline\"]}");
        assertThat(listed())
                .singleElement()
                .returns(DeliveryState.DELIVERED, Listed::state)
                .returns("HTTP 204", Listed::outcome);
    }

    /** By the Java library of Standard Webhooks, which asks the real clock. */
    @Test
    void the_library_of_the_standard_verifies_a_message_and_both_secrets_during_a_change() throws Exception {
        clock.set(Instant.now());
        outbound.announce(actor, "QS-1");
        send();
        WithSecret rotated = manage.rotate(made.subscription().id(), actor);
        outbound.announce(actor, "QS-2");
        send();
        clock.pass(Duration.ofHours(24));
        outbound.announce(actor, "QS-3");
        send();

        List<Message> messages = receiver.messages();
        verify(made, messages.get(0));
        verify(made, messages.get(1));
        verify(rotated, messages.get(1));
        assertThat(messages.get(2).headers().get("webhook-signature"))
                .isEqualTo(new Webhook(rotated.secret().text())
                        .sign(
                                messages.get(2).id(),
                                clock.instant().getEpochSecond(),
                                messages.get(2).body()));
    }

    @Test
    void a_failed_delivery_is_repeated_by_the_table_until_the_last_attempt_ends_the_subscription() {
        receiver.behave(Behaviour.status(500));
        OutgoingEvent event = outbound.announce(actor, "QS-1");

        List<Instant> attempts = new ArrayList<>();
        while (outbound.now(actor, made).terms().state() == SubscriptionState.ACTIVE) {
            clock.set(listed().get(0).dueAt().toInstant().minusMillis(1));
            send();
            assertThat(receiver.messages()).as("not before it is due").hasSize(attempts.size());
            clock.pass(Duration.ofMillis(1));
            attempts.add(clock.instant());
            send();
        }

        assertThat(receiver.messages().stream().map(Message::id))
                .containsOnly(event.id().toString());
        assertThat(receiver.messages().stream().map(message -> message.headers().get("webhook-timestamp")))
                .containsExactlyElementsOf(attempts.stream()
                        .map(moment -> Long.toString(moment.getEpochSecond()))
                        .toList());
        List<Duration> waits = IntStream.range(1, attempts.size())
                .mapToObj(index -> Duration.between(attempts.get(index - 1), attempts.get(index)))
                .toList();
        assertThat(waits)
                .isEqualTo(IntStream.rangeClosed(1, 9)
                        .mapToObj(attempt ->
                                RetryTable.waitAfter(attempt, event.id()).orElseThrow())
                        .toList());
        assertThat(outbound.now(actor, made).terms().state()).isEqualTo(SubscriptionState.FAILED);
        assertThat(listed())
                .singleElement()
                .returns(DeliveryState.FAILED, Listed::state)
                .returns(10, Listed::attempts);
    }

    @Test
    void an_endpoint_that_is_gone_is_told_nothing_any_more() {
        receiver.behave(Behaviour.status(410));
        outbound.announce(actor, "QS-1");
        send();
        outbound.announce(actor, "QS-2");
        clock.pass(Duration.ofDays(4));
        send();

        assertThat(receiver.messages()).hasSize(1);
        assertThat(outbound.now(actor, made).terms().state()).isEqualTo(SubscriptionState.GONE);
        assertThat(listed())
                .singleElement()
                .returns(DeliveryState.FAILED, Listed::state)
                .returns("HTTP 410", Listed::outcome);
    }

    @ParameterizedTest
    @ValueSource(ints = {301, 302, 307, 308})
    void a_redirect_is_a_failure_and_never_followed(int status) throws IOException {
        try (Receiver other = Receiver.open()) {
            receiver.behave(Behaviour.status(status, "Location", other.address()));
            outbound.announce(actor, "QS-1");

            send();

            assertThat(other.messages()).isEmpty();
            assertThat(listed())
                    .singleElement()
                    .returns("HTTP " + status, Listed::outcome)
                    .returns(DeliveryState.PENDING, Listed::state);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {429, 502, 504})
    void an_overloaded_endpoint_is_left_alone_for_other_cases_too(int status) {
        receiver.behave(Behaviour.status(status));
        outbound.announce(actor, "QS-1");
        send();
        receiver.behave(Behaviour.status(200));
        outbound.announce(actor, "QS-2");

        send();
        int meanwhile = receiver.messages().size();
        clock.pass(Duration.ofSeconds(6));
        send();

        assertThat(meanwhile).isEqualTo(1);
        assertThat(receiver.messages()).hasSize(3);
        assertThat(outbound.now(actor, made).failingSince()).isNull();
    }

    @ParameterizedTest
    @ValueSource(strings = {"900", "Mon, 2 Mar 2026 12:15:00 GMT"})
    void a_retry_after_is_honoured(String retryAfter) {
        receiver.behave(Behaviour.status(503, "Retry-After", retryAfter));
        outbound.announce(actor, "QS-1");
        send();
        receiver.behave(Behaviour.status(200));
        outbound.announce(actor, "QS-2");

        clock.pass(Duration.ofSeconds(899));
        send();
        int meanwhile = receiver.messages().size();
        clock.pass(Duration.ofSeconds(1));
        send();

        assertThat(meanwhile).isEqualTo(1);
        assertThat(receiver.messages()).hasSize(3);
    }

    @Test
    void an_endpoint_that_says_nothing_has_failed_after_the_time_out() {
        receiver.behave(Behaviour.silence());
        outbound.announce(actor, "QS-1");

        send();

        assertThat(listed()).singleElement().returns("no answer within 5 s", Listed::outcome);
    }

    @Test
    void a_long_answer_is_cut_and_its_status_counts() {
        receiver.behave(Behaviour.talk(1024 * 1024));
        outbound.announce(actor, "QS-1");

        send();

        assertThat(listed())
                .singleElement()
                .returns("HTTP 200", Listed::outcome)
                .returns(DeliveryState.DELIVERED, Listed::state);
    }

    @Test
    void nothing_listens_where_the_endpoint_was() {
        receiver.close();
        outbound.announce(actor, "QS-1");

        send();

        assertThat(listed()).singleElement().returns("the connection failed", Listed::outcome);
    }

    @Test
    void the_connection_goes_to_the_address_that_was_checked_under_the_name_that_was_asked_for() {
        names.answer("hooks.example.test", "127.0.0.1");
        outbound.subscribe(actor, "http://hooks.example.test:" + receiver.port() + "/by-name");
        outbound.announce(actor, "QS-1");

        manage.all(actor).forEach(subscription -> sendDeliveries.send(actor.tenant(), subscription.id()));

        assertThat(receiver.messages())
                .filteredOn(message -> message.path().equals("/by-name"))
                .singleElement()
                .returns(
                        "hooks.example.test:" + receiver.port(),
                        message -> message.headers().get("Host"));
    }

    @Test
    void the_events_of_a_case_arrive_in_their_order_and_wait_for_each_other() {
        receiver.behave(Behaviour.status(500));
        List<String> ofFirstCase =
                Stream.of("QS-1", "QS-1", "QS-1").map(this::announced).collect(toList());
        String ofSecondCase = announced("QS-2");
        send();
        assertThat(ids()).containsExactlyInAnyOrder(ofFirstCase.get(0), ofSecondCase);

        receiver.behave(Behaviour.status(200));
        clock.pass(Duration.ofSeconds(6));
        send();

        assertThat(ids()).hasSize(6);
        assertThat(ids().subList(2, 6).stream().filter(ofFirstCase::contains)).containsExactlyElementsOf(ofFirstCase);
    }

    @Test
    void an_attempt_that_nobody_finished_is_made_again_when_its_claim_has_run_out() {
        OutgoingEvent event = outbound.announce(actor, "QS-1");
        OffsetDateTime now = OffsetDateTime.now(clock);
        String id = made.subscription().id();
        List<Delivery> lost = transaction.call(actor.tenant(), () -> deliveries.claim(id, now, now.plusMinutes(2), 8));

        send();
        int meanwhile = receiver.messages().size();
        clock.pass(Duration.ofMinutes(2));
        send();
        transaction.run(
                actor.tenant(),
                () -> deliveries.settle(id, lost.get(0), DeliveryState.PENDING, OffsetDateTime.now(clock), "too late"));

        assertThat(meanwhile).isZero();
        assertThat(ids()).containsExactly(event.id().toString());
        assertThat(listed()).singleElement().returns(2, Listed::attempts).returns("HTTP 204", Listed::outcome);
    }

    @Test
    void what_one_replica_has_claimed_no_other_can() {
        IntStream.range(0, 20).forEach(number -> outbound.announce(actor, "QS-" + number));
        OffsetDateTime now = OffsetDateTime.now(clock);
        String id = made.subscription().id();

        List<Delivery> claimed = new ArrayList<>();
        for (int replica = 0; replica < 4; replica++) {
            claimed.addAll(transaction.call(actor.tenant(), () -> deliveries.claim(id, now, now.plusMinutes(2), 6)));
        }

        assertThat(claimed).hasSize(20);
        assertThat(claimed.stream().map(Delivery::event)).doesNotHaveDuplicates();
    }

    @Test
    void a_dead_endpoint_does_not_delay_another() throws IOException {
        receiver.behave(Behaviour.silence());
        try (Receiver other = Receiver.open()) {
            WithSecret toOther = outbound.subscribe(actor, other.address());
            IntStream.range(0, 20).forEach(number -> outbound.announce(actor, "QS-" + number));

            List<CompletableFuture<Void>> rounds = dispatch.round(false);
            while (listedOf(toOther).stream().anyMatch(delivery -> delivery.state() == DeliveryState.PENDING)) {
                Thread.onSpinWait();
            }
            long stillWaiting = listed().stream()
                    .filter(delivery -> delivery.outcome() == null)
                    .count();
            rounds.forEach(CompletableFuture::join);

            assertThat(other.messages()).hasSize(20);
            assertThat(stillWaiting)
                    .as("deliveries to the dead endpoint without an answer")
                    .isEqualTo(20);
        }
    }

    @Test
    void one_event_or_a_time_range_is_sent_once_more() {
        String first = announced("QS-1");
        clock.pass(Duration.ofHours(1));
        String second = announced("QS-2");
        send();
        String id = made.subscription().id();

        int one = manage.replay(id, Replay.of(UUID.fromString(first)), actor);
        send();
        OffsetDateTime from = VirtualClock.START.atOffset(ZoneOffset.UTC).plusMinutes(1);
        int ofRange = manage.replay(id, Replay.between(from, from.plusHours(1)), actor);
        send();

        assertThat(one).isEqualTo(1);
        assertThat(ofRange).isEqualTo(1);
        assertThat(ids()).hasSize(4);
        assertThat(ids().subList(2, 4)).containsExactly(first, second);
    }

    @Test
    void a_later_subscription_is_told_of_the_past_by_a_replay() throws IOException {
        String past = announced("QS-1");
        try (Receiver other = Receiver.open()) {
            WithSecret later = outbound.subscribe(actor, other.address());
            OffsetDateTime start = VirtualClock.START.atOffset(ZoneOffset.UTC);

            int replayed = manage.replay(later.subscription().id(), Replay.between(start, start.plusSeconds(1)), actor);
            sendDeliveries.send(actor.tenant(), later.subscription().id());

            assertThat(replayed).isEqualTo(1);
            assertThat(other.messages().stream().map(Message::id)).containsExactly(past);
        }
    }

    @Test
    void a_subscription_of_some_sites_is_told_of_no_other() {
        Actor ofOneSite = new Actor(actor.tenant(), "key", actor.roles(), Set.of("quay-street"));
        WithSecret limited = manage.make(
                new SubscriptionWanted(receiver.address(), "one site", List.of(Outbound.JUDGED), null, null),
                ofOneSite);
        outbound.announce(actor, "QS-1", "quay-street");
        outbound.announce(actor, "ML-1", "mill-lane");
        outbound.announce(actor, "NO-1", null);

        assertThat(listedOf(limited)).singleElement().returns("QS-1", Listed::reference);
        assertThat(listed()).hasSize(3);
        assertThat(manage.all(ofOneSite))
                .extracting(Subscription::id)
                .containsExactly(limited.subscription().id());
    }

    @Test
    void an_event_that_was_rolled_back_is_sent_to_nobody() {
        try {
            transaction.run(actor.tenant(), () -> {
                outbox.add(OutgoingEvent.of(
                                new CaseChange("QS-1", null, 1, "open", List.of("causes"), false),
                                actor.tenant(),
                                OffsetDateTime.now(clock))
                        .get(0));
                throw new IllegalStateException("the judging transaction fails after the outbox was written");
            });
        } catch (IllegalStateException expected) {
            send();
        }

        assertThat(receiver.messages()).isEmpty();
        assertThat(listed()).isEmpty();
    }

    @Test
    void old_events_are_removed_with_their_deliveries() {
        announced("QS-1");
        clock.pass(Duration.ofDays(30));
        String young = announced("QS-2");
        clock.pass(Duration.ofSeconds(1));

        removeOldEvents.remove();

        assertThat(listed())
                .singleElement()
                .returns(young, delivery -> delivery.event().toString());
    }

    private void send() {
        sendDeliveries.send(actor.tenant(), made.subscription().id());
    }

    private String announced(String reference) {
        return outbound.announce(actor, reference).id().toString();
    }

    private List<Listed> listed() {
        return listedOf(made);
    }

    private List<Listed> listedOf(WithSecret subscription) {
        return outbound.deliveries(actor, subscription);
    }

    private List<String> ids() {
        return receiver.messages().stream().map(Message::id).toList();
    }

    private static void verify(WithSecret secret, Message message) throws Exception {
        new Webhook(secret.secret().text())
                .verify(
                        message.body(),
                        Map.of(
                                "webhook-id", List.of(message.id()),
                                "webhook-timestamp", List.of(message.headers().get("webhook-timestamp")),
                                "webhook-signature", List.of(message.headers().get("webhook-signature"))));
    }
}
