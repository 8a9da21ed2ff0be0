package org.axlecause.policy;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.policy.ChainMessages.leak;
import static org.axlecause.policy.ChainMessages.presentation;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Versions are published while cases are judged: nothing fails, and each judgement names exactly one version. */
@QuarkusTest
@TestProfile(WithKeys.class)
class PublishUnderLoadTest {

    private static final int SENDERS = 2;
    private static final int REQUESTS_OF_A_KEY = 100;
    private static final String TWIN = "renew-wheel-cylinder-axle-2-right";

    @Inject
    MakeKey makeKey;

    private final String tenant = "load-" + UUID.randomUUID().toString().substring(0, 8);
    private final AtomicBoolean published = new AtomicBoolean();
    private final ConcurrentLinkedQueue<String> wrong = new ConcurrentLinkedQueue<>();
    private final Map<String, String> judged = new ConcurrentHashMap<>();

    @Test
    void versions_are_published_while_cases_are_judged() throws InterruptedException {
        publishUnderLoad(20);
    }

    @Test
    @Tag("durability")
    void two_hundred_versions_are_published_while_cases_are_judged() throws InterruptedException {
        publishUnderLoad(200);
    }

    private void publishUnderLoad(int count) throws InterruptedException {
        String author = key(Role.ADMIN);
        assertThat(given().header("Authorization", "Bearer " + author)
                        .contentType("application/json")
                        .body("{\"name\": \"Site\", \"timeZone\": \"Etc/UTC\", \"currency\": \"GBP\", \"regime\":"
                                + " \"gb-annual\"}")
                        .put("/v1/sites/quay-street")
                        .statusCode())
                .isEqualTo(200);
        List<Thread> senders = new ArrayList<>();
        for (int sender = 0; sender < SENDERS; sender++) {
            List<String> keys =
                    Stream.generate(() -> key(Role.SENDER)).limit(count).toList();
            senders.add(new Thread(() -> sendCases(keys)));
        }
        senders.forEach(Thread::start);
        for (int version = 1; version <= count; version++) {
            publish(version);
        }
        published.set(true);
        for (Thread sender : senders) {
            sender.join();
        }

        assertThat(wrong).isEmpty();
        assertThat(judged).hasSizeGreaterThan(SENDERS);
        judged.forEach((reference, versionAndNecessity) -> {
            String[] parts = versionAndNecessity.split(" ", -1);
            assertThat(parts[0]).as(reference).isIn("baseline", "repairs");
            int version = Integer.parseInt(parts[1]);
            assertThat(version).as(reference).isBetween(1, count);
            String expected = parts[0].equals("baseline") ? "recommended" : necessity(version);
            assertThat(parts[2])
                    .as("what version %s of %s makes of %s", parts[1], parts[0], reference)
                    .isEqualTo(expected);
        });
        System.out.printf(
                "%d versions published while %d cases were judged by %d of them%n",
                count, judged.size(), judged.values().stream().distinct().count());
    }

    private void publish(int version) {
        String author = key(Role.POLICY);
        Response written = given().header("Authorization", "Bearer " + author)
                .contentType("application/json")
                .body(
                        "{\"means\": \"how we repair\", \"chain\": [{\"clause\": \"twin-hydraulic-part\", \"necessity\": \""
                                + necessity(version) + "\"}]}")
                .put("/v1/policies/repairs/draft");
        Response answer = given().header("Authorization", "Bearer " + author)
                .header("If-Match", String.valueOf(written.header("ETag")))
                .contentType("application/json")
                .body("{\"effectiveFrom\": \"" + LocalDate.now(ZoneOffset.UTC) + "\", \"reason\": \"one more\"}")
                .post("/v1/policies/repairs/versions");
        if (answer.statusCode() != 201 || answer.jsonPath().getInt("version") != version) {
            wrong.add("version " + version + ": " + written.asString() + answer.asString());
        }
    }

    /** Versions take turns, so that a judgement by two of them would show. */
    private static String necessity(int version) {
        return version % 2 == 0 ? "optional" : "required";
    }

    private void sendCases(List<String> keys) {
        for (int number = 0; !published.get(); number++) {
            String sender = keys.get(number / REQUESTS_OF_A_KEY % keys.size());
            String reference = "QS-" + UUID.randomUUID().toString().substring(0, 13);
            OffsetDateTime now = OffsetDateTime.now(ZoneOffset.UTC);
            Response answer = given().header("Authorization", "Bearer " + sender)
                    .header("Prefer", "return=representation")
                    .contentType("application/cloudevents-batch+json; charset=UTF-8")
                    .body("[" + presentation(reference, "quay-street", now) + "," + leak(reference, now) + "]")
                    .post("/v1/events");
            if (answer.statusCode() == 200) {
                judged.put(
                        reference,
                        answer.jsonPath().getString("policy.code") + " "
                                + answer.jsonPath().getString("policy.version") + " "
                                + answer.jsonPath().getString("scope.find { it.id == '" + TWIN + "' }.necessity"));
            } else {
                wrong.add(reference + ": " + answer.asString());
            }
        }
    }

    private String key(Role role) {
        return makeKey.make(tenant, new KeyTerms(UUID.randomUUID().toString(), role, null, null), "test");
    }
}
