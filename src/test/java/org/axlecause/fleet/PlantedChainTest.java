package org.axlecause.fleet;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.axlecause.policy.ChainMessages;
import org.axlecause.statistics.CountAnew;
import org.junit.jupiter.api.Test;

/** What the command plants in an invented chain is found again through the questions, and nothing where nothing is planted. */
@QuarkusTest
@TestProfile(WithKeys.class)
class PlantedChainTest {

    private static final int CASES = 4000;
    private static final int SITES = 12;
    private static final double SURE = 0.001;
    private static final LocalDate END = LocalDate.parse("2026-03-01");
    private static final String TREND = "/v1/statistics/causes?part=trend&model=Plover";

    @Inject
    FleetCommand fleet;

    @Inject
    FillChain fillChain;

    @Inject
    MakeKey makeKey;

    @Inject
    CountAnew countAnew;

    private final String tenant = "fleet-" + UUID.randomUUID().toString().substring(0, 8);

    @Test
    void the_bad_batch_shows_in_the_trend_of_its_model_and_the_habit_in_the_funnel() {
        ChainDraw chain = drawn(true, 7);

        JsonPath trend = ask(TREND);
        JsonPath sites = ask("/v1/statistics/sites");

        String leaking = "trends.find { it.cause == 'wheel-cylinder-leaking' }.change";
        assertThat(trend.getDouble(leaking + ".adjusted")).isLessThan(SURE);
        LocalDate found = LocalDate.parse(trend.getString(leaking + ".month") + "-01");
        assertThat(found)
                .isBetween(chain.batchFrom().minusMonths(2), chain.batchFrom().plusMonths(2));
        assertThat(trend.getDouble(leaking + ".after.share"))
                .isGreaterThan(2 * trend.getDouble(leaking + ".before.share"));
        assertThat(sites.getList("sites.findAll { it.verdict == 'above-99-8-percent' }.site"))
                .isEqualTo(List.of(chain.siteWithHabit().code()));
        assertThat(countAnew.differences(tenant)).isZero();
    }

    @Test
    void without_plants_nothing_stands_out_beyond_chance() {
        drawn(false, 8);

        assertThat(ask(TREND).getList("trends.change.adjusted", Double.class))
                .filteredOn(adjusted -> adjusted != null && adjusted < SURE)
                .isEmpty();
        assertThat(ask("/v1/statistics/sites").getList("sites.verdict", String.class))
                .doesNotContain("above-99-8-percent", "below-99-8-percent");
    }

    @Test
    void a_tenant_with_sites_and_numbers_out_of_range_are_refused() {
        ByteArrayOutputStream problems = new ByteArrayOutputStream();
        PrintStream sink = new PrintStream(problems, true, StandardCharsets.UTF_8);

        int tooFew = fleet.run(new String[] {"fleet", "--tenant", tenant, "--cases", "10"}, sink, sink);
        drawn(false, 9);
        int taken = fleet.run(new String[] {"fleet", "--tenant", tenant, "--cases", "1000"}, sink, sink);

        assertThat(tooFew).isEqualTo(2);
        assertThat(taken).isEqualTo(2);
        assertThat(problems.toString(StandardCharsets.UTF_8))
                .contains("--cases is 10")
                .contains("has sites already");
    }

    private ChainDraw drawn(boolean planted, long seed) {
        ChainDraw chain = new ChainDraw(SITES, END.minusYears(2), END, new ChainDraw.Plants(planted, planted), seed);
        fillChain.fill(
                new FillChain.Order(tenant, chain, CASES, END.minusYears(2), END, seed, 2, 0), new ArrayList<>()::add);
        return chain;
    }

    private JsonPath ask(String question) {
        String analyst =
                makeKey.make(tenant, new KeyTerms(UUID.randomUUID().toString(), Role.ANALYST, null, null), "test");
        Response answer = ChainMessages.as(analyst).get(question);
        assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
        return answer.jsonPath();
    }
}
