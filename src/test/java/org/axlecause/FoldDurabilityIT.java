package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Replicas killed while they fold statistics: the next ones go on, and every case is counted once. */
class FoldDurabilityIT extends WithInstallation {

    private static final long MOST_SECONDS = 600;
    private static final String COHORT = "site, day, make, model, category, layout, age_band, odometer_band, regime";
    private static final String WAITING = "SELECT (SELECT count(*) FROM statistics_delta WHERE tenant_id = 'demo')"
            + " + (SELECT count(*) FROM statistics_repair_delta WHERE tenant_id = 'demo')";
    private static final String EVENTS = """
            [{"specversion": "1.0", "type": "org.axlecause.vehicle.presented.v1", "source": "/sites/quay-street",
              "id": "presented", "subject": "FOLD", "time": "2026-03-02T08:15:00Z",
              "data": {"site": "quay-street", "reason": "complaint",
                       "vehicle": {"category": "N1", "make": "Corvane", "model": "Portal",
                                   "axles": [{"number": 1, "steered": true, "brake": "disc-floating"},
                                             {"number": 2, "brake": "drum-simplex"}]}}},
             {"specversion": "1.0", "type": "org.axlecause.case.closed.v1", "source": "/sites/quay-street",
              "id": "closed", "subject": "FOLD", "time": "2026-03-02T09:15:00Z",
              "data": {"outcome": "abandoned",
                       "confirmedCauses": [{"code": "drum-oval", "axle": 2, "side": "right"}]}}]
            """;

    @Test
    void a_fold_that_is_killed_loses_and_doubles_nothing() throws Exception {
        replicasAreKilled(12_000, 1);
    }

    @Test
    @Tag("durability")
    void folds_that_are_killed_ten_times_lose_and_double_nothing() throws Exception {
        replicasAreKilled(120_000, 10);
    }

    private void replicasAreKilled(int cases, int kills) throws Exception {
        try (PackagedService replica = installation.replica().with("AXLECAUSE_STATISTICS_INTERVAL", "off")) {
            replica.start();
            replica.putSite();
            assertThat(replica.batch(EVENTS).statusCode()).isEqualTo(200);
            replica.stop();
        }
        int all = 2 * cases - 1;
        int share = (cases - 1) / kills;
        for (int kill = 1; kill <= kills; kill++) {
            try (PackagedService one = folding();
                    PackagedService other = folding()) {
                one.start();
                other.start();
                copy((kill - 1) * share + 1, kill == kills ? cases - 1 : kill * share);
                int begun = waiting();
                int left = awaited(waiting -> waiting < begun);
                assertThat(left).as("a kill that comes in time").isPositive();
                one.process().destroyForcibly().waitFor();
                other.process().destroyForcibly().waitFor();
            }
        }
        try (PackagedService last = folding()) {
            last.start();
            awaited(waiting -> waiting == 0);

            assertThat(last.json("/v1/statistics/causes").path("cases").asInt()).isEqualTo(cases);
            assertThat(last.json("/v1/statistics/causes?by=site&make=Corvane")
                            .path("cases")
                            .asInt())
                    .isEqualTo(cases);
            assertThat(last.json("/v1/statistics/returns")
                            .at("/groups/0/repairs")
                            .asInt())
                    .isEqualTo(cases - 1);
            assertThat(last.run("recount", "--tenant", "demo")).as(last.log()).isZero();
        }
        assertThat(
                        installation.numbers(
                                "SELECT n FROM statistics_cell s JOIN statistics_place p USING (tenant_id, place)"
                                        + " JOIN statistics_countable k USING (tenant_id, countable) WHERE tenant_id = 'demo' AND grain = 'site-alone' AND k.question = 'case'"))
                .isEqualTo(List.of(cases));
        assertThat(installation.numbers("SELECT folded FROM statistics_fold WHERE tenant_id = 'demo'"))
                .isEqualTo(List.of(all));
    }

    private PackagedService folding() throws Exception {
        return installation
                .replica()
                .with("AXLECAUSE_STATISTICS_INTERVAL", "1s")
                .with("AXLECAUSE_STATISTICS_FOLD_FROM", "1");
    }

    /** Copies of the ended case by their numbers, with what waits of each, and a proved repair of each copy. */
    private void copy(int first, int last) throws SQLException {
        String copies = "(SELECT 'FOLD-' || n FROM generate_series(" + first + ", " + last + ") n)";
        try (Connection connection = installation.connection();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("INSERT INTO statistics_case (tenant_id, reference, " + COHORT
                    + ", countables, amounts, opened, axles) SELECT tenant_id, copy, " + COHORT
                    + ", countables, amounts, opened, axles FROM statistics_case, " + copies
                    + " AS made (copy) WHERE tenant_id = 'demo' AND reference = 'FOLD'");
            statement.execute("INSERT INTO statistics_delta (tenant_id, sign, " + COHORT
                    + ", countables, amounts) SELECT tenant_id, 1, " + COHORT
                    + ", countables, amounts FROM statistics_case WHERE tenant_id = 'demo' AND reference IN " + copies);
            statement.execute("INSERT INTO statistics_repair (tenant_id, reference, axle, items, verified_at,"
                    + " verified_day, " + COHORT + ") SELECT tenant_id, reference, 2, ARRAY['drum'], opened, day, "
                    + COHORT + " FROM statistics_case WHERE tenant_id = 'demo' AND reference IN " + copies);
            statement.execute("INSERT INTO statistics_repair_delta (tenant_id, sign, items, verified_day, " + COHORT
                    + ") SELECT tenant_id, 1, items, verified_day, " + COHORT
                    + " FROM statistics_repair WHERE tenant_id = 'demo' AND reference IN " + copies);
            connection.commit();
        }
    }

    private int waiting() throws SQLException {
        return installation.numbers(WAITING).get(0);
    }

    private int awaited(IntPredicate enough) throws SQLException, InterruptedException {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(MOST_SECONDS);
        int waiting = waiting();
        while (!enough.test(waiting)) {
            assertThat(System.nanoTime()).as("%d deltas wait", waiting).isLessThan(deadline);
            TimeUnit.MILLISECONDS.sleep(5);
            waiting = waiting();
        }
        return waiting;
    }
}
