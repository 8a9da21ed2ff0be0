package org.axlecause.outbound;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.axlecause.access.Actor;
import org.axlecause.outbound.Receiver.Behaviour;
import org.axlecause.outbound.Receiver.Message;
import org.axlecause.shared.Await;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** T13 in real time: endpoints that are dead in every way beside healthy ones. */
@QuarkusTest
@TestProfile(DeadEndpointsTest.RealTime.class)
@Tag("durability")
class DeadEndpointsTest {

    private static final int EVENTS = 300;
    private static final Duration BETWEEN_EVENTS = Duration.ofMillis(200);
    private static final Duration LONGEST_DELAY = Duration.ofSeconds(2);

    @Inject
    Outbound outbound;

    @Inject
    ManageSubscriptions manage;

    private final List<Receiver> receivers = new ArrayList<>();
    private Actor actor;

    /** As a service is set up, but for endpoints of this machine. */
    public static class RealTime implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of(
                    "axlecause.outbound.insecure-addresses", "true",
                    "axlecause.outbound.interval", "1s",
                    "axlecause.outbound.interval-of-failing", "5s");
        }
    }

    @AfterEach
    void close() {
        manage.all(actor).forEach(left -> manage.remove(left.id(), left.version(), actor));
        receivers.forEach(Receiver::close);
    }

    @Test
    void dead_endpoints_of_every_kind_do_not_delay_the_healthy_ones() throws Exception {
        actor = outbound.aTenant();
        for (Behaviour dead : List.of(
                Behaviour.status(500),
                Behaviour.silence(),
                Behaviour.status(410),
                Behaviour.status(429),
                Behaviour.status(302, "Location", "http://127.0.0.1:1/"),
                Behaviour.silence(),
                Behaviour.silence())) {
            opened().behave(dead);
        }
        List<Receiver> healthy = List.of(opened(), opened(), opened());
        healthy.get(2).behave(Behaviour.talk(1024 * 1024));
        Map<String, Long> announced = new ConcurrentHashMap<>();

        for (int number = 0; number < EVENTS; number++) {
            String id = outbound.announce(actor, "CASE-" + number % 60).id().toString();
            announced.put(id, System.nanoTime());
            TimeUnit.MILLISECONDS.sleep(BETWEEN_EVENTS.toMillis());
        }
        healthy.forEach(receiver -> Await.until(
                "a healthy endpoint has everything", () -> receiver.messages().size() >= EVENTS));

        List<Duration> delays = healthy.stream()
                .flatMap(receiver -> receiver.messages().stream())
                .map(message -> Duration.ofNanos(message.arrived() - announced.get(message.id())))
                .sorted()
                .toList();
        assertThat(healthy)
                .allSatisfy(receiver -> assertThat(
                                receiver.messages().stream().map(Message::id).collect(Collectors.toSet()))
                        .isEqualTo(announced.keySet()));
        assertThat(delays.get(delays.size() * 95 / 100))
                .as("95th percentile of the delay")
                .isLessThan(LONGEST_DELAY);
    }

    private Receiver opened() throws IOException {
        Receiver receiver = Receiver.open();
        receivers.add(receiver);
        outbound.subscribe(actor, receiver.address());
        return receiver;
    }
}
