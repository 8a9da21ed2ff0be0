package org.axlecause.audit;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.axlecause.access.Act;
import org.axlecause.access.ActStore;
import org.axlecause.access.TenantStore;
import org.axlecause.casefile.CaseStore;
import org.axlecause.casefile.EventStore;
import org.axlecause.casefile.HistoryCheckStore;
import org.axlecause.casefile.NewEvent;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.shared.TestDatabase;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A tenant of three cases with two events each and two acts, tied in, signed and exported; then somebody tampers. */
@QuarkusTest
class AuditTest {

    private static final OffsetDateTime NOON = OffsetDateTime.parse("2026-03-02T12:00:00Z");

    @Inject
    TenantTransaction transaction;

    @Inject
    TenantStore tenants;

    @Inject
    CaseStore cases;

    @Inject
    EventStore events;

    @Inject
    HistoryCheckStore histories;

    @Inject
    ActStore acts;

    @Inject
    AuditStore store;

    @Inject
    WriteChain writeChain;

    @TempDir
    Path folder;

    private final String tenant = "audit-" + UUID.randomUUID().toString().substring(0, 8);
    private HeadKey key;

    @BeforeEach
    void a_tenant_has_histories_and_acts() throws GeneralSecurityException {
        key = aKey();
        tenants.open(tenant, "Chain");
        transaction.run(tenant, () -> {
            acts.note("make-key", Act.KEY_MADE, "k-1", Map.of("role", "admin"));
            acts.note("k-1", Act.SITE_SAVED, "quay-street", Map.of());
        });
        for (String reference : List.of("QS-1", "QS-2", "QS-3")) {
            append(reference, "a", "b");
        }
        writeChain.writeAll();
        signed().signAll();
    }

    @Test
    void what_is_as_it_was_written_verifies_and_the_acts_stand_in_their_order() {
        VerifyChains.Verified verified = verifyChains().verify(tenant, List.of());

        assertThat(verified.breaks()).isEmpty();
        assertThat(List.of(verified.cases(), verified.events(), verified.entries()))
                .containsExactly(3L, 6L, 5L);
        assertThat(transaction.call(tenant, () -> store.before(Long.MAX_VALUE, 10)).stream()
                        .map(stored ->
                                stored.entry().action() + " " + stored.entry().object()))
                .containsExactly(
                        "case-head QS-3", "case-head QS-2", "case-head QS-1", "site-saved quay-street", "key-made k-1");
    }

    @Test
    void a_chain_grows_by_what_came_since_and_by_nothing_else() {
        assertThat(writeChain.write(tenant)).isZero();
        append("QS-2", "c");

        assertThat(writeChain.write(tenant)).isEqualTo(1);
        assertThat(transaction.call(tenant, store::head).position()).isEqualTo(6);
        assertThat(verifyChains().verify(tenant, List.of()).breaks()).isEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "a flipped byte in an event | UPDATE event SET body = '{\"a\":2}' WHERE tenant_id = '%1$s' AND reference = 'QS-1'"
                        + " AND position = 1 | case QS-1: event 1 is not what was written",
                "a removed event | DELETE FROM event WHERE tenant_id = '%1$s' AND reference = 'QS-1' AND position = 1"
                        + " | case QS-1: event 1 is missing",
                "a cut case with its head moved back | DELETE FROM event WHERE tenant_id = '%1$s' AND reference = 'QS-1'"
                        + " AND position = 2; UPDATE case_file SET chain_length = 1, chain_hash = (SELECT hash FROM event"
                        + " WHERE tenant_id = '%1$s' AND reference = 'QS-1') WHERE tenant_id = '%1$s' AND reference = 'QS-1'"
                        + " | case QS-1 was cut; it had come to event 2",
                "a removed case | DELETE FROM event WHERE tenant_id = '%1$s' AND reference = 'QS-2'; DELETE FROM case_file"
                        + " WHERE tenant_id = '%1$s' AND reference = 'QS-2' | case QS-2 was removed; it had come to event 2",
                "two events that changed places | UPDATE event SET position = position + 10 WHERE tenant_id = '%1$s'"
                        + " AND reference = 'QS-3'; UPDATE event SET position = CASE position WHEN 11 THEN 2 ELSE 1 END"
                        + " WHERE tenant_id = '%1$s' AND reference = 'QS-3' | case QS-3: event 1 is not what was written",
                "an event nobody accepted | INSERT INTO event SELECT tenant_id, reference, 3, source, 'forged', type, time,"
                        + " time_sent, received_at, actor, body, digest, previous, hash FROM event WHERE tenant_id = '%1$s'"
                        + " AND reference = 'QS-1' AND position = 2 | case QS-1: it has events that nobody accepted",
                "a changed act | UPDATE audit_entry SET actor = 'nobody' WHERE tenant_id = '%1$s' AND position = 2"
                        + " | audit entry 2 is not what was written",
                "a removed act | DELETE FROM audit_entry WHERE tenant_id = '%1$s' AND position = 2"
                        + " | audit entry 2 is missing",
                "a cut tail of the audit | DELETE FROM audit_entry WHERE tenant_id = '%1$s' AND position > 3"
                        + " | the audit chain was cut: the head of entry 5",
                "a forged head | UPDATE audit_head SET signed_at = signed_at - interval '1 day' WHERE tenant_id = '%1$s'"
                        + " | isn't signed by the present key, or was changed"
            })
    void tampering_is_found(String what, String sql, String found) throws SQLException {
        tamper(sql);

        assertThat(verifyChains().verify(tenant, List.of()).breaks())
                .as(what)
                .anySatisfy(told -> assertThat(told).contains(found));
    }

    @Test
    void a_case_that_was_removed_in_its_time_is_no_break_and_one_without_the_act_is() throws SQLException {
        close("QS-1");
        close("QS-2");
        transaction.run(tenant, () -> {
            String hash = removed("QS-1");
            acts.note("service", Act.CASE_REMOVED, "QS-1", Map.of("length", "2", "hash", hash));
            removed("QS-2");
        });

        assertThat(verifyChains().verify(tenant, List.of()).breaks())
                .containsExactly("case QS-2 was removed; it had come to event 2");
        writeChain.writeAll();
        assertThat(verifyChains().verify(tenant, List.of()).breaks())
                .containsExactly("case QS-2 was removed; it had come to event 2");
    }

    private void close(String reference) throws SQLException {
        tamper("UPDATE case_file SET status = 'closed' WHERE tenant_id = '%1$s' AND reference = '" + reference + "'");
        tamper("INSERT INTO judgement VALUES ('%1$s', '" + reference
                + "', 1, 'r', 'closing', '{}', '2026-03-02 12:00Z')");
    }

    private String removed(String reference) {
        return transaction.jdbc((connection, open) -> {
            try (PreparedStatement remove = connection.prepareStatement(
                    "SELECT encode(hash, 'hex') FROM remove_closed_case(?, ?, '2026-03-03Z', '2026-03-03Z')")) {
                remove.setString(1, open);
                remove.setString(2, reference);
                try (ResultSet row = remove.executeQuery()) {
                    assertThat(row.next()).isTrue();
                    return row.getString(1);
                }
            }
        });
    }

    @Test
    void a_tail_that_was_cut_together_with_its_heads_is_found_by_the_exported_ones() throws SQLException, IOException {
        tamper(
                "DELETE FROM audit_entry WHERE tenant_id = '%1$s' AND position > 3; DELETE FROM audit_head WHERE tenant_id"
                        + " = '%1$s'");
        Path exported = folder.resolve(tenant + ".jsonl");
        SignedHead head = Json.mapper().readValue(Files.readString(exported), SignedHead.class);

        assertThat(verifyChains().verify(tenant, List.of()).breaks()).isEmpty();
        assertThat(verifyChains().verify(tenant, List.of(head)).breaks())
                .singleElement()
                .asString()
                .startsWith("the audit chain was cut: the head of entry 5 signed at ");
    }

    @Test
    void the_command_ends_with_one_where_anything_is_broken_and_says_what() throws SQLException {
        ByteArrayOutputStream sound = new ByteArrayOutputStream();
        ByteArrayOutputStream broken = new ByteArrayOutputStream();
        VerifyCommand command = new VerifyCommand(store, verifyChains());
        String exported = folder.resolve(tenant + ".jsonl").toString();

        int soundCode =
                command.run(new String[] {"verify", "--tenant", tenant, "--heads", exported}, print(sound), System.err);
        tamper("DELETE FROM audit_entry WHERE tenant_id = '%1$s' AND position = 2");
        int brokenCode = command.run(new String[] {"verify", "--tenant", tenant}, print(broken), System.err);

        assertThat(soundCode).isZero();
        assertThat(sound.toString(StandardCharsets.UTF_8))
                .isEqualTo(tenant
                        + ": 3 cases, 6 events and 5 audit entries read, all as they were written"
                        + System.lineSeparator());
        assertThat(brokenCode).isEqualTo(1);
        assertThat(broken.toString(StandardCharsets.UTF_8)).contains(tenant + ": audit entry 2 is missing");
        assertThat(command.run(new String[] {"verify", "--tenant"}, System.out, print(broken)))
                .isEqualTo(2);
    }

    @Test
    void the_services_role_can_change_neither_chain_nor_heads() {
        for (String sql :
                List.of("UPDATE audit_entry SET actor = 'x'", "DELETE FROM audit_entry", "DELETE FROM audit_head")) {
            assertThat(refusal(sql)).as(sql).contains("permission denied");
        }
    }

    private String refusal(String sql) {
        try {
            transaction.run(
                    tenant,
                    () -> transaction.jdbc((connection, open) -> {
                        try (Statement statement = connection.createStatement()) {
                            return statement.executeUpdate(sql);
                        }
                    }));
            return "";
        } catch (RuntimeException refused) {
            return String.valueOf(refused.getMessage());
        }
    }

    private void append(String reference, String... ids) {
        transaction.run(tenant, () -> {
            events.append(
                    cases.lock(reference, List.of(), NOON),
                    List.of(ids).stream()
                            .map(id -> new NewEvent(
                                    new EntryId("/sites/quay-street", reference + id),
                                    "org.axlecause.finding.recorded.v1",
                                    NOON,
                                    NOON,
                                    "k-1",
                                    "{\"a\":1}",
                                    "ab".repeat(32)))
                            .toList());
        });
    }

    /** As the superuser, with the triggers that refuse changes switched off. */
    private void tamper(String sql) throws SQLException {
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement()) {
            statement.execute("SET session_replication_role = replica");
            statement.execute(sql.formatted(tenant));
        }
    }

    private VerifyChains verifyChains() {
        return new VerifyChains(store, histories, key, transaction);
    }

    private SignHeads signed() {
        return new SignHeads(store, key, transaction, Clock.systemUTC(), Optional.of(folder));
    }

    private static HeadKey aKey() throws GeneralSecurityException {
        KeyPair pair = KeyPairGenerator.getInstance("Ed25519").generateKeyPair();
        return new HeadKey(
                Optional.of(Base64.getEncoder().encodeToString(pair.getPrivate().getEncoded())),
                Optional.of(Base64.getEncoder().encodeToString(pair.getPublic().getEncoded())));
    }

    private static PrintStream print(ByteArrayOutputStream bytes) {
        return new PrintStream(bytes, true, StandardCharsets.UTF_8);
    }
}
