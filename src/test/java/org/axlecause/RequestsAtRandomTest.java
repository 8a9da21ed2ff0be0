package org.axlecause;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.RestAssured;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;
import org.axlecause.RandomRequests.Request;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.axlecause.shared.Json;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Requests grown from the contract and mutated: none is answered by a fault, every answer is one of the contract's, and
 * nothing of another tenant is in any. {@code -Drequests=20000} sends so many, {@code -Drequests.seed=} others.
 */
@QuarkusTest
@TestProfile(WithKeys.class)
class RequestsAtRandomTest {

    private static final int REQUESTS = Integer.getInteger("requests", 600);
    private static final long SEED = Long.getLong("requests.seed", 20260302L);
    private static final int REQUESTS_OF_A_KEY = 150;
    private static final Path SCENARIOS = Path.of("src/test/resources/scenarios");
    private static final String OTHERS_CASE = "WALLED-77";
    private static final String OTHERS_MAKE = "Quillfen";
    private static final List<Integer> TOO_LONG = List.of(414, 431);
    private static final int FAULT = 500;
    private static final int SHEDDING = 503;

    @Inject
    MakeKey makeKey;

    private final List<JsonNode> events = new ArrayList<>();
    private String subscription;
    private String proposal;

    @BeforeEach
    void two_tenants_have_cases() throws IOException {
        try (Stream<Path> scenarios = Files.list(SCENARIOS)) {
            for (Path file : scenarios
                    .map(scenario -> scenario.resolve("given.json"))
                    .filter(Files::exists)
                    .sorted()
                    .toList()) {
                JsonNode given = Json.mapper().readTree(Files.readString(file));
                given.forEach(event -> {
                    if (event.toString().length() < 8000) {
                        events.add(event);
                    }
                });
            }
        }
        String others = key("walled");
        for (String key : List.of(others, key("random"))) {
            for (String site : List.of("quay-street", "mill-bridge")) {
                given().header("Authorization", "Bearer " + key)
                        .contentType("application/json")
                        .body("{\"name\": \"Site\", \"timeZone\": \"Europe/London\", \"currency\": \"GBP\","
                                + " \"regime\": \"gb-annual\"}")
                        .put("/v1/sites/" + site)
                        .then()
                        .statusCode(200);
            }
        }
        subscription = given().header("Authorization", "Bearer " + key("random"))
                .contentType("application/json")
                .body("{\"address\": \"https://9.9.9.9/hook\", \"description\": \"any\","
                        + " \"types\": [\"org.axlecause.case.judged.v1\"]}")
                .post("/v1/subscriptions")
                .jsonPath()
                .getString("id");
        String publisher = key("random");
        given().header("Authorization", "Bearer " + publisher)
                .contentType("application/json")
                .body("{\"means\": \"how we repair\", \"chain\": [{\"clause\": \"retest-imbalance\", \"value\": 12,"
                        + " \"unit\": \"%\"}]}")
                .put("/v1/policies/repairs/draft");
        given().header("Authorization", "Bearer " + publisher)
                .header("If-Match", "*")
                .contentType("application/json")
                .body("{\"effectiveFrom\": \"2100-01-01\", \"reason\": \"a start\"}")
                .post("/v1/policies/repairs/versions");
        proposal = given().header("Authorization", "Bearer " + publisher)
                .contentType("application/json")
                .body("{\"weights\": \"book\"}")
                .post("/v1/cause-weights/proposals")
                .jsonPath()
                .getString("id");
        String presentation = events.stream()
                .filter(event -> event.path("type").asText().contains("vehicle.presented"))
                .findFirst()
                .orElseThrow()
                .toString();
        JsonNode presented = Json.mapper().readTree(presentation);
        String make = presented.path("data").path("vehicle").path("make").asText();
        String subject = presented.path("subject").asText();
        given().header("Authorization", "Bearer " + others)
                .contentType("application/cloudevents+json; charset=UTF-8")
                .body(presentation
                        .replace('"' + make + '"', '"' + OTHERS_MAKE + '"')
                        .replace('"' + subject + '"', '"' + OTHERS_CASE + '"'))
                .post("/v1/events")
                .then()
                .statusCode(200);
    }

    @Test
    void no_request_is_answered_by_a_fault_nor_outside_the_contract_nor_with_the_rows_of_another_tenant()
            throws IOException {
        requestsAreAnswered(REQUESTS);
    }

    @Test
    @Tag("durability")
    void none_of_twenty_thousand_requests_is_either() throws IOException {
        requestsAreAnswered(20_000);
    }

    private void requestsAreAnswered(int count) throws IOException {
        System.out.printf("%d requests at random, seed %d%n", count, SEED);
        RandomRequests requests = new RandomRequests(SEED, events, pathValues());
        Map<Integer, Integer> statuses = new TreeMap<>();
        List<String> wrong = new ArrayList<>();
        String key = "";
        for (int number = 0; number < count; number++) {
            if (number % REQUESTS_OF_A_KEY == 0) {
                key = key("random");
            }
            Request request = requests.next();
            RawHttp.Answer answer = RawHttp.exchange(RestAssured.port, request.bytes(key));
            statuses.merge(answer.status(), 1, Integer::sum);
            List<String> faults = faults(request, answer);
            if (!faults.isEmpty()) {
                wrong.add("request %d%n%s%n%s%n%s".formatted(number, faults, request, answer));
            }
        }

        System.out.println("answers by status: " + statuses);
        assertThat(wrong.stream().limit(20)).as("%d of %d", wrong.size(), count).isEmpty();
        assertThat(statuses.getOrDefault(200, 0)).isGreaterThan(count / 10);
        assertThat(statuses.keySet()).contains(400, 404, 422);
    }

    private static List<String> faults(Request request, RawHttp.Answer answer) {
        List<String> faults = new ArrayList<>();
        if (answer.status() == 0 || (answer.status() >= FAULT && answer.status() != SHEDDING)) {
            faults.add("answered by " + answer.status());
        }
        if (answer.body().contains(OTHERS_MAKE)) {
            faults.add("shows another tenant's vehicle");
        }
        if (answer.body().contains("\"judging\":\"failed\"")) {
            faults.add("is stored, but its case can't be judged");
        }
        if (answer.body().isEmpty() && isRefusedByTheProtocol(answer.status(), request.target())) {
            return faults;
        }
        String path = normal(request.target().split("[?;]", -1)[0]);
        if (!request.method().equals("HEAD") && !request.method().equals("OPTIONS")) {
            Contract.committed()
                    .operation(request.method(), path)
                    .ifPresentOrElse(
                            operation -> faults.addAll(Contract.committed()
                                    .faults(
                                            operation,
                                            answer.status(),
                                            answer.headers().get("content-type"),
                                            answer.body())),
                            () -> {
                                if (!String.valueOf(answer.headers().get("content-type"))
                                        .startsWith("application/problem+json")) {
                                    faults.add("is refused without a problem document");
                                }
                            });
        }
        return faults;
    }

    /** What is no request by RFC 9112, such as an address that is no URI, is answered by a bare status. */
    private static boolean isRefusedByTheProtocol(int status, String target) {
        try {
            new URI(target);
            return TOO_LONG.contains(status);
        } catch (URISyntaxException notAUri) {
            return status == 400 || TOO_LONG.contains(status);
        }
    }

    /** The path without dot segments and needless slashes (RFC 3986, 6.2.2.3); as it is where it is no URI. */
    private static String normal(String path) {
        try {
            String normal = new URI(path.replaceAll("/+", "/")).normalize().getRawPath();
            return normal.endsWith("/") ? normal.substring(0, normal.length() - 1) : normal;
        } catch (URISyntaxException notAUri) {
            return path;
        }
    }

    private Map<String, List<String>> pathValues() {
        return Map.ofEntries(
                Map.entry(
                        "reference",
                        Stream.concat(
                                        Stream.of(OTHERS_CASE),
                                        Stream.iterate(0, n -> n + 1).limit(50).map(n -> "RANDOM-" + n))
                                .toList()),
                Map.entry("site", List.of("quay-street", "mill-bridge", "nowhere")),
                Map.entry("type", List.of("finding.recorded.v1", "common.json", "nothing")),
                Map.entry("kind", List.of("causes", "checks", "rules", "nothing")),
                Map.entry("code", List.of("air-in-circuit", "hub-seal-leaking", "nothing")),
                Map.entry("audience", List.of("customer", "workshop")),
                Map.entry("subscription", List.of(subscription, "none")),
                Map.entry("policy", List.of("repairs", "nothing", "BAD NAME")),
                Map.entry("version", List.of("1", "2", "0", "x")),
                Map.entry("trial", List.of(UUID.randomUUID().toString(), "none")),
                Map.entry("proposal", List.of(proposal, UUID.randomUUID().toString(), "none")),
                Map.entry("from", List.of("1", "draft", "2026-03-02", "x")),
                Map.entry("to", List.of("1", "draft", "2026-04-02", "x")),
                Map.entry("key", List.of("none")));
    }

    private String key(String tenant) {
        return makeKey.make(tenant, new KeyTerms(UUID.randomUUID().toString(), Role.ADMIN, null, null), "test");
    }
}
