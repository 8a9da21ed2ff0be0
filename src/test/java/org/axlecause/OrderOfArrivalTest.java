package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.axlecause.access.Actor;
import org.axlecause.access.Role;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.access.TenantStore;
import org.axlecause.casefile.CaseStore;
import org.axlecause.casefile.StoredCase;
import org.axlecause.intake.AcceptBatch;
import org.axlecause.intake.Receipt;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.Test;

/** The document of a case depends on what was sent, never on the order, the batches or the repetitions. */
@QuarkusTest
class OrderOfArrivalTest {

    private static final Path STORY =
            Path.of("src/test/resources/scenarios/oiled-lining-and-seized-cable-repaired/given.json");
    private static final int ORDERS = 50;
    private static final int LARGEST_BATCH = 9;
    private static final long SEED = 20260302L;

    @Inject
    TenantTransaction transaction;

    @Inject
    TenantStore tenants;

    @Inject
    SiteStore sites;

    @Inject
    CaseStore cases;

    @Inject
    AcceptBatch acceptBatch;

    @Test
    void any_order_and_split_of_events_each_sent_twice_gives_the_same_bytes() throws IOException {
        List<JsonNode> events = new ArrayList<>();
        Json.mapper().readTree(Files.readString(STORY)).forEach(events::add);
        String expected = documentAfter("order-sorted", List.of(events), events);

        for (int order = 0; order < ORDERS; order++) {
            Random random = new Random(SEED + order);
            List<JsonNode> twice = new ArrayList<>(events);
            twice.addAll(events);
            Collections.shuffle(twice, random);

            assertThat(documentAfter("order-" + order, split(twice, random), events))
                    .as("document after the order of seed %d", SEED + order)
                    .isEqualTo(expected);
        }
    }

    private String documentAfter(String tenant, List<List<JsonNode>> batches, List<JsonNode> events)
            throws IOException {
        tenants.open(tenant, tenant);
        transaction.run(
                tenant,
                () -> sites.save(new Site(
                        "quay-street", "Quay Street", null, ZoneId.of("Europe/London"), "GBP", "gb-annual", 0)));
        Actor actor = new Actor(tenant, "test", Set.of(Role.ADMIN), null);
        for (List<JsonNode> batch : batches) {
            assertThat(acceptBatch.accept(Json.mapper().writeValueAsBytes(batch), actor))
                    .allMatch(Receipt::isStored, "is stored");
        }
        String reference = events.get(0).path("subject").asText();
        return transaction.call(
                tenant, () -> cases.find(reference).map(StoredCase::document).orElseThrow());
    }

    private static List<List<JsonNode>> split(List<JsonNode> events, Random random) {
        List<List<JsonNode>> batches = new ArrayList<>();
        int from = 0;
        while (from < events.size()) {
            int to = Math.min(events.size(), from + 1 + random.nextInt(LARGEST_BATCH));
            batches.add(events.subList(from, to));
            from = to;
        }
        return batches;
    }
}
