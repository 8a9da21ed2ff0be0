package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** The command that fills a database with an invented chain, and what the service tells of it afterwards. */
class FleetIT {

    private static final int CASES = 6000;

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    private Path folder;

    @Test
    void a_filled_database_is_served_with_its_plants_and_nothing_in_it_contradicts() throws Exception {
        try (PackagedService service = new PackagedService(folder)) {
            int filled = service.run(
                    "fleet",
                    "--tenant",
                    "demo",
                    "--cases",
                    String.valueOf(CASES),
                    "--sites",
                    "12",
                    "--years",
                    "2",
                    "--seed",
                    "7",
                    "--last",
                    "2026-03-01",
                    "--histories",
                    "0");
            assertThat(filled).as(service.log()).isZero();
            assertThat(service.log())
                    .contains("2026-02-01: 6,000 of 6,000 cases")
                    .contains("Batch from 2025-05-01; site with the habit ");
            String habit = service.log().replaceAll("(?s).*site with the habit (site-\\d+).*", "$1");
            assertThat(service.run("recount", "--tenant", "demo"))
                    .as(service.log())
                    .isZero();

            service.start();

            assertThat(service.json("/v1/statistics/causes").path("cases").asInt())
                    .isEqualTo(CASES);
            List<String> standsOut = new ArrayList<>();
            for (JsonNode site : service.json("/v1/statistics/sites").path("sites")) {
                if (site.path("verdict").asText().equals("above-99-8-percent")) {
                    standsOut.add(site.path("site").asText());
                }
            }
            assertThat(standsOut).containsExactly(habit);
            assertThat(service.json("/v1/statistics/returns")
                            .at("/groups/0/returns")
                            .asInt())
                    .isPositive();
            List<String> changes = new ArrayList<>();
            for (JsonNode trend : service.json(
                            "/v1/statistics/causes?part=trend&model=Plover&cause=wheel-cylinder-leaking")
                    .path("trends")) {
                if (trend.at("/change/adjusted").asDouble(1) < 0.001) {
                    changes.add(trend.path("cause").asText() + " "
                            + trend.at("/change/month").asText());
                }
            }
            assertThat(changes).containsExactly("wheel-cylinder-leaking 2025-05");
        }
    }

    @Test
    void a_database_with_that_tenant_is_left_alone() throws Exception {
        try (PackagedService service = new PackagedService(folder)) {
            assertThat(service.run("fleet", "--tenant", "demo", "--cases", "1000", "--years", "1", "--histories", "0"))
                    .as(service.log())
                    .isZero();

            assertThat(service.run("fleet", "--tenant", "demo", "--cases", "1000", "--years", "1"))
                    .isEqualTo(2);

            assertThat(service.log()).contains("has sites already; name one that is new");
            service.start();
            assertThat(service.json("/v1/statistics/causes").path("cases").asInt())
                    .isEqualTo(1000);
        }
    }
}
