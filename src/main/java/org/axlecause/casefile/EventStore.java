package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.SqlArray;
import org.axlecause.shared.TenantTransaction;

/** The append-only history of cases and the identities of everything ever accepted. */
@ApplicationScoped
public class EventStore {

    /** Each by the index: a join would be planned by how few identities there were when the service began. */
    private static final String IDENTITIES = """
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
    private static final String UNIQUE_VIOLATION = "23505";

    private final TenantTransaction transaction;

    EventStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** What is already stored under these identities, in one question. */
    public Map<EntryId, KnownIdentity> known(Collection<EntryId> ids) {
        if (ids.isEmpty()) {
            return Map.of();
        }
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(IDENTITIES)) {
                query.setArray(1, texts(connection, ids.stream().map(EntryId::source)));
                query.setArray(2, texts(connection, ids.stream().map(EntryId::id)));
                query.setString(3, tenant);
                Map<EntryId, KnownIdentity> known = new HashMap<>();
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        known.put(
                                new EntryId(rows.getString(1), rows.getString(2)),
                                new KnownIdentity(HEX.formatHex(rows.getBytes(3)), rows.getString(4)));
                    }
                }
                return known;
            }
        });
    }

    /**
     * Appends new events to a case that this transaction has locked, in the order given, each tied to the one before.
     *
     * @throws IdentityTakenException if another transaction took one of the identities since it was looked up
     */
    public void append(String reference, List<NewEvent> events) {
        if (events.isEmpty()) {
            return;
        }
        Head head = transaction.jdbc((connection, tenant) -> takeIdentities(connection, tenant, reference, events));
        String tenant = transaction.tenant();
        List<ChainLink> links = linked(head, tenant, reference, events);
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

    /** Events tied to the head of their case's chain, in the order given. */
    private static List<ChainLink> linked(Head head, String tenant, String reference, List<NewEvent> events) {
        List<ChainLink> links = new ArrayList<>();
        String previous = head.hash;
        for (NewEvent event : events) {
            int position = head.length + links.size() + 1;
            String hash = HashChain.next(previous, tenant, reference, position, event);
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

    private static SqlArray array(String type, List<ChainLink> links, Function<ChainLink, Object> column) {
        return new SqlArray(type, links.stream().map(column).toList());
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

    /** Takes the identities and tells the head of the case's chain. */
    private static Head takeIdentities(Connection connection, String tenant, String reference, List<NewEvent> events)
            throws SQLException {
        try (PreparedStatement taking = connection.prepareStatement(TAKE_IDENTITIES + ";\n" + HEAD)) {
            taking.setString(1, tenant);
            taking.setString(2, reference);
            taking.setArray(
                    3, texts(connection, events.stream().map(event -> event.id().source())));
            taking.setArray(
                    4, texts(connection, events.stream().map(event -> event.id().id())));
            taking.setArray(5, texts(connection, events.stream().map(NewEvent::digest)));
            taking.setString(6, tenant);
            taking.setString(7, reference);
            taking.execute();
            taking.getMoreResults();
            return head(taking.getResultSet(), reference);
        } catch (SQLException e) {
            if (UNIQUE_VIOLATION.equals(e.getSQLState())) {
                throw new IdentityTakenException();
            }
            throw e;
        }
    }

    private static Head head(Connection connection, String tenant, String reference) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(HEAD)) {
            query.setString(1, tenant);
            query.setString(2, reference);
            return head(query.executeQuery(), reference);
        }
    }

    private static Head head(ResultSet rows, String reference) throws SQLException {
        try (ResultSet row = rows) {
            if (!row.next()) {
                throw new IllegalStateException("A case is locked before its history is touched: " + reference);
            }
            return new Head(row.getInt(1), HEX.formatHex(row.getBytes(2)));
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

    private static Array texts(Connection connection, Stream<String> texts) throws SQLException {
        return connection.createArrayOf("text", texts.toArray());
    }

    private record Head(int length, String hash) {}
}
