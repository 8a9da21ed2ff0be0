package org.axlecause.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.policy.ChainMessages.as;

import io.quarkus.arc.Arc;
import io.quarkus.arc.ManagedContext;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.axlecause.access.Actor;
import org.axlecause.access.KeyTerms;
import org.axlecause.access.MakeKey;
import org.axlecause.access.Role;
import org.axlecause.access.WithKeys;
import org.axlecause.casefile.HistoryCheckStore;
import org.axlecause.intake.AcceptBatch;
import org.axlecause.intake.Receipt;
import org.axlecause.shared.TenantTransaction;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/**
 * The histories of an invented chain are what the service would have kept of the same events, and say of each case what its
 * rows for statistics say. Another tenant is sent the events of every case; {@code -Dfleet.histories=N} takes so many.
 */
@QuarkusTest
@TestProfile(WithKeys.class)
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class CopiedHistoriesTest {

    private static final int CASES = Integer.getInteger("fleet.histories", 300);
    private static final long SEED = 23;
    private static final LocalDate END = LocalDate.parse("2026-03-01");
    private static final LocalDate FIRST = END.minusYears(9);

    private static final String KEPT_CASES = """
            SELECT concat_ws(' ', reference, site, status, opened, opened_day, version, make, model, search, judging, policy,
                             rulebook, judged_of, chain_length, document::text)
              FROM case_file WHERE tenant_id = ? ORDER BY reference
            """;

    private static final String KEPT_EVENTS = """
            SELECT concat_ws(' ', reference, position, source, id, type, time, time_sent, actor, body::text,
                             encode(digest, 'hex'))
              FROM event WHERE tenant_id = ? ORDER BY reference, position
            """;

    private static final String KEPT_IDENTITIES = """
            SELECT concat_ws(' ', source, id, reference, encode(digest, 'hex'))
              FROM event_identity WHERE tenant_id = ? ORDER BY source, id
            """;

    private static final String KEPT_FIGURES = """
            SELECT concat_ws(' ', reference, source, id, figures::text)
              FROM test_figures WHERE tenant_id = ? ORDER BY reference, source, id
            """;

    private static final String KEPT_CAUSES =
            "SELECT (to_jsonb(c) - 'tenant_id')::text FROM case_cause c WHERE tenant_id = ? ORDER BY reference, rank";

    private static final String KEPT_JUDGEMENTS = """
            SELECT concat_ws(' ', reference, version, rulebook, occasion, document::text)
              FROM judgement WHERE tenant_id = ? ORDER BY reference, version, occasion
            """;

    /** A lining that the technician calls soaked earlier, beside a leak that is proved, counts as a root of its own. */
    private static final String OUTCOMES_AND_CAUSES = """
            SELECT (to_jsonb(c) - 'tenant_id' - 'countables' - 'amounts')::text || (
                     SELECT string_agg(concat_ws(' ', k.question, k.code, k.axle, k.side,
                                       CASE WHEN k.code <> 'lining-soaked-earlier' THEN k.standing END), '; '
                                       ORDER BY k.question, k.code, k.axle, k.side)
                       FROM unnest(c.countables) AS u (countable)
                       JOIN statistics_countable k ON k.tenant_id = c.tenant_id AND k.countable = u.countable
                      WHERE k.question IN ('outcome', 'cause'))
              FROM statistics_case c WHERE tenant_id = ? ORDER BY reference
            """;

    private static final String PROVED_REPAIRS = """
            SELECT (to_jsonb(r) - 'tenant_id' - 'items')::text
              FROM statistics_repair r WHERE tenant_id = ? ORDER BY reference, axle
            """;

    private static final String REPAIRED_ITEMS = """
            SELECT concat_ws(' ', r.reference, r.axle, item)
              FROM statistics_repair r CROSS JOIN LATERAL unnest(r.items) AS item
             WHERE r.tenant_id = ? ORDER BY 1
            """;

    private static final String BATCHES = """
            SELECT '[' || string_agg(body::text, ',' ORDER BY position) || ']'
              FROM event WHERE tenant_id = ? GROUP BY reference ORDER BY reference
            """;

    @Inject
    FillChain fillChain;

    @Inject
    AcceptBatch acceptBatch;

    @Inject
    HistoryCheckStore histories;

    @Inject
    MakeKey makeKey;

    @Inject
    TenantTransaction transaction;

    private final ChainDraw chain = new ChainDraw(6, FIRST, END, new ChainDraw.Plants(true, true), SEED);
    private final String copied = aTenant();
    private final String sent = aTenant();

    @BeforeAll
    void one_tenant_is_filled_and_another_is_sent_the_same_events() {
        ManagedContext context = Arc.container().requestContext();
        context.activate();
        try {
            fillAndSend();
        } finally {
            context.terminate();
        }
    }

    private void fillAndSend() {
        List<String> progress = new ArrayList<>();
        fillChain.fill(new FillChain.Order(copied, chain, CASES, FIRST, END, SEED, 2, CASES), progress::add);
        System.out.println(progress.get(progress.size() - 1));
        fillChain.fill(new FillChain.Order(sent, chain, 0, FIRST, END, SEED, 2, 0), progress::add);
        Actor actor = new Actor(sent, FleetCommand.NAME, Set.of(Role.ADMIN), null);
        for (String batch : rows(copied, BATCHES)) {
            assertThat(acceptBatch.accept(batch.getBytes(StandardCharsets.UTF_8), actor))
                    .allMatch(Receipt::isStored);
        }
    }

    @AfterAll
    void seed_is_told() {
        System.out.println("Histories of " + CASES + " cases from seed " + SEED);
    }

    @Test
    void every_case_is_kept_as_judging_its_events_keeps_it() {
        for (String kept :
                List.of(KEPT_CASES, KEPT_EVENTS, KEPT_IDENTITIES, KEPT_FIGURES, KEPT_CAUSES, KEPT_JUDGEMENTS)) {
            assertThat(rows(copied, kept)).isNotEmpty().isEqualTo(rows(sent, kept));
        }
        assertThat(rows(copied, KEPT_CASES)).hasSize(CASES).allMatch(row -> row.contains(" closed "));
    }

    @Test
    void histories_say_what_the_rows_for_statistics_say() {
        assertThat(rows(sent, OUTCOMES_AND_CAUSES)).hasSize(CASES).isEqualTo(rows(copied, OUTCOMES_AND_CAUSES));
        assertThat(rows(sent, PROVED_REPAIRS)).isNotEmpty().isEqualTo(rows(copied, PROVED_REPAIRS));
    }

    /** Fluid is no part of an axle, and the kit is offered from an age or a distance on alone. */
    @Test
    void what_was_repaired_was_worked_on() {
        assertThat(rows(sent, REPAIRED_ITEMS))
                .containsAll(rows(copied, REPAIRED_ITEMS).stream()
                        .filter(row -> !row.endsWith(" brake-fluid") && !row.endsWith(" hardware-kit"))
                        .toList());
    }

    @Test
    void no_history_or_chain_has_a_fault() {
        HistoryCheckStore.Checked checked = transaction.call(copied, histories::check);

        assertThat(checked.breaks()).isEmpty();
        assertThat(checked.cases()).isEqualTo(CASES);
        assertThat(checked.events()).isGreaterThan(10L * CASES);
    }

    @Test
    void cases_are_listed_found_by_words_and_read_by_their_tenant_alone() {
        String reader = key(copied);
        String stranger = key(sent + "-x");

        JsonPath page = as(reader).get("/v1/cases?limit=200&q=plover").jsonPath();
        List<String> references = page.getList("cases.reference");

        assertThat(references).isNotEmpty();
        for (String reference : references.subList(0, Math.min(20, references.size()))) {
            JsonPath document = as(reader).get("/v1/cases/" + reference).jsonPath();
            assertThat(document.getString("reference")).isEqualTo(reference);
            assertThat(document.getString("vehicle.model")).isEqualTo("Plover");
            assertThat(as(reader).get("/v1/cases/" + reference + "/events").statusCode())
                    .isEqualTo(200);
            assertThat(as(reader)
                            .get("/v1/cases/" + reference + "/judgements")
                            .jsonPath()
                            .getList("judgements.occasion"))
                    .isEqualTo(List.of("closing"));
            assertThat(as(stranger).get("/v1/cases/" + reference).statusCode()).isEqualTo(404);
        }
    }

    @Test
    void only_so_many_cases_spread_over_all_get_a_history() {
        FillChain.Order order = new FillChain.Order(copied, chain, 1_000, FIRST, END, SEED, 2, 150);
        List<Long> chosen = new ArrayList<>();
        for (long number = 0; number < 1_000; number++) {
            if (order.hasHistory(number)) {
                chosen.add(number);
            }
        }

        assertThat(chosen).hasSize(150).contains(999L);
        assertThat(chosen.stream().filter(number -> number < 100)).hasSize(15);
    }

    private String key(String tenant) {
        return makeKey.make(tenant, new KeyTerms(UUID.randomUUID().toString(), Role.DESK, null, null), "test");
    }

    private static String aTenant() {
        return "hist-" + UUID.randomUUID().toString().substring(0, 8);
    }

    private List<String> rows(String tenant, String sql) {
        return transaction.call(
                tenant,
                () -> transaction.jdbc((connection, name) -> {
                    try (PreparedStatement query = connection.prepareStatement(sql)) {
                        query.setString(1, name);
                        List<String> found = new ArrayList<>();
                        try (ResultSet rows = query.executeQuery()) {
                            while (rows.next()) {
                                found.add(rows.getString(1));
                            }
                        }
                        return found;
                    }
                }));
    }
}
