package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.DatabaseException;
import org.axlecause.shared.SqlArray;
import org.axlecause.shared.TenantTransaction;

/** The append-only history of cases and the identities of everything ever accepted. */
@ApplicationScoped
public class EventStore {

    /**
     * Identities as {@link #known} reads them, each by the index: a join would be planned by how few there were when the
     * service began.
     */
    static final String IDENTITIES = """
            SELECT i.source, i.id, i.digest, i.reference
              FROM unnest(?::text[], ?::text[]) AS asked (source, id)
             CROSS JOIN LATERAL (SELECT * FROM event_identity k
                                  WHERE k.tenant_id = ? AND k.source = asked.source AND k.id = asked.id
                                 OFFSET 0) i
            """;

    private static final String HEAD =
            "SELECT chain_length, chain_hash FROM case_file WHERE tenant_id = ? AND reference = ? FOR UPDATE";

    private static final String MOVE_HEAD =
            "UPDATE case_file SET chain_length = ?, chain_hash = ? WHERE tenant_id = ? AND reference = ?";

    private static final String TAKE_IDENTITIES = """
            INSERT INTO event_identity (tenant_id, reference, source, id, digest)
            SELECT ?, ?, i.source, i.id, decode(i.digest, 'hex')
              FROM unnest(?::text[], ?::text[], ?::text[]) AS i (source, id, digest)
            """;

    private static final String APPEND = """
            INSERT INTO event (tenant_id, reference, position, source, id, type, time, time_sent, received_at, actor,
                               body, digest, previous, hash)
            SELECT ?, ?, e.position, e.source, e.id, e.type, e.time::timestamptz, e.time_sent,
                   e.received_at::timestamptz, e.actor, e.body::json, decode(e.digest, 'hex'),
                   decode(e.previous, 'hex'), decode(e.hash, 'hex')
              FROM unnest(?::int[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[],
                          ?::text[], ?::text[], ?::text[], ?::text[])
                   AS e (position, source, id, type, time, time_sent, received_at, actor, body, digest, previous, hash)
            """;

    /** The columns that {@link #event} reads. */
    static final String EVENT_COLUMNS = "position, source, id, type, time_sent, received_at, actor, body";

    /** The columns that {@link #link} reads. */
    static final String LINK_COLUMNS = EVENT_COLUMNS + ", digest, previous, hash";

    /** The events of a case, as {@link #links} reads them. */
    static final String HISTORY =
            "SELECT " + LINK_COLUMNS + " FROM event WHERE tenant_id = ? AND reference = ? ORDER BY position";

    private static final HexFormat HEX = HexFormat.of();

    private final TenantTransaction transaction;

    EventStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** All rows of identities, with what is stored under each. */
    static Map<EntryId, KnownIdentity> known(ResultSet identities) throws SQLException {
        try (ResultSet rows = identities) {
            Map<EntryId, KnownIdentity> known = new HashMap<>();
            while (rows.next()) {
                known.put(
                        new EntryId(rows.getString(1), rows.getString(2)),
                        new KnownIdentity(HEX.formatHex(rows.getBytes(3)), rows.getString(4)));
            }
            return known;
        }
    }

    /** Whether another transaction has stored an event of the same identity since it was looked for. */
    public static boolean isTaken(DatabaseException fault) {
        return fault.isDuplicateOf("event_identity_pkey");
    }

    /**
     * Appends new events to a locked case, in the order given, each tied to the one before. A fault that {@link #isTaken}
     * shows when they are sent.
     */
    public void append(LockedCase locked, List<NewEvent> events) {
        if (events.isEmpty()) {
            return;
        }
        String tenant = transaction.tenant();
        String reference = locked.reference();
        transaction.later(
                TAKE_IDENTITIES,
                events.size(),
                tenant,
                reference,
                array("text", events, event -> event.id().source()),
                array("text", events, event -> event.id().id()),
                array("text", events, NewEvent::digest));
        List<ChainLink> links = linked(locked, tenant, events);
        transaction.later(
                APPEND,
                links.size(),
                tenant,
                reference,
                array("int4", links, link -> link.event().position()),
                array("text", links, link -> link.event().id().source()),
                array("text", links, link -> link.event().id().id()),
                array("text", links, link -> link.event().type()),
                array("text", links, link -> moment(link.event().time())),
                array("text", links, link -> link.event().time().toString()),
                array("text", links, link -> moment(link.event().receivedAt())),
                array("text", links, link -> link.event().actor()),
                array("text", links, link -> link.event().body()),
                array("text", links, ChainLink::digest),
                array("text", links, ChainLink::previous),
                array("text", links, ChainLink::hash));
        ChainLink last = links.get(links.size() - 1);
        transaction.later(MOVE_HEAD, 1, last.event().position(), HEX.parseHex(last.hash()), tenant, reference);
    }

    /** Events tied to the end of their case's chain, in the order given. */
    private static List<ChainLink> linked(LockedCase locked, String tenant, List<NewEvent> events) {
        List<ChainLink> links = new ArrayList<>();
        String previous = locked.chainHash();
        for (NewEvent event : events) {
            int position = locked.chainLength() + links.size() + 1;
            String hash = HashChain.next(previous, tenant, locked.reference(), position, event);
            StoredEvent stored = new StoredEvent(
                    position, event.id(), event.type(), event.time(), event.receivedAt(), event.actor(), event.body());
            links.add(new ChainLink(stored, event.digest(), previous, hash));
            previous = hash;
        }
        return links;
    }

    private static String moment(OffsetDateTime time) {
        return time.truncatedTo(ChronoUnit.MICROS).toString();
    }

    private static <T> SqlArray array(String type, List<T> rows, Function<T, Object> column) {
        return new SqlArray(type, rows.stream().map(column).toList());
    }

    /** The history of a case in the order that counts: time, source, id. */
    public List<StoredEvent> history(String reference) {
        return transaction.jdbc((connection, tenant) -> inOrder(read(connection, tenant, reference)));
    }

    /** Events in the order that counts. */
    static List<StoredEvent> inOrder(List<ChainLink> links) {
        return links.stream().map(ChainLink::event).sorted(StoredEvent.ORDER).toList();
    }

    /** The first place where the stored history of a case and its chain disagree; empty when all is as it was written. */
    public Optional<String> firstBreak(String reference) {
        return transaction.jdbc((connection, tenant) -> {
            Head head = head(connection, tenant, reference);
            String previous = HashChain.start();
            int position = 0;
            for (ChainLink link : read(connection, tenant, reference)) {
                position++;
                if (link.event().position() != position) {
                    return Optional.of("event " + position + " of " + reference + " is missing");
                }
                if (!link.isBehind(previous, tenant, reference, position)) {
                    return Optional.of("event " + position + " of " + reference + " is not what was written");
                }
                previous = link.hash();
            }
            if (position != head.length || !previous.equals(head.hash)) {
                return Optional.of("the history of " + reference + " ends at event " + position + ", but " + head.length
                        + " were written");
            }
            return Optional.empty();
        });
    }

    private static Head head(Connection connection, String tenant, String reference) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(HEAD)) {
            query.setString(1, tenant);
            query.setString(2, reference);
            try (ResultSet row = query.executeQuery()) {
                if (!row.next()) {
                    throw new IllegalStateException("There is no case " + reference);
                }
                return new Head(row.getInt(1), HEX.formatHex(row.getBytes(2)));
            }
        }
    }

    private static List<ChainLink> read(Connection connection, String tenant, String reference) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(HISTORY)) {
            query.setString(1, tenant);
            query.setString(2, reference);
            return links(query.executeQuery());
        }
    }

    /** All rows of a history as links of its chain. */
    static List<ChainLink> links(ResultSet events) throws SQLException {
        try (ResultSet rows = events) {
            List<ChainLink> links = new ArrayList<>();
            while (rows.next()) {
                links.add(link(rows));
            }
            return links;
        }
    }

    /** A row of events as a link of its chain. */
    static ChainLink link(ResultSet row) throws SQLException {
        return new ChainLink(
                event(row),
                HEX.formatHex(row.getBytes("digest")),
                HEX.formatHex(row.getBytes("previous")),
                HEX.formatHex(row.getBytes("hash")));
    }

    /** A row of events without its place in the chain. */
    static StoredEvent event(ResultSet row) throws SQLException {
        return new StoredEvent(
                row.getInt("position"),
                new EntryId(row.getString("source"), row.getString("id")),
                row.getString("type"),
                OffsetDateTime.parse(row.getString("time_sent")),
                row.getObject("received_at", OffsetDateTime.class),
                row.getString("actor"),
                row.getString("body"));
    }

    private record Head(int length, String hash) {}
}
