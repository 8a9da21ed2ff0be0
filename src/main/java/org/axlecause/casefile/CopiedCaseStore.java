package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.Sha256;
import org.axlecause.shared.TenantTransaction;

/**
 * Reads a closed case as judging has kept it, and writes copies of such cases that say something else of reference, site,
 * vehicle and days, hundreds in a statement. Each copy gets a chain of its own.
 */
@ApplicationScoped
public class CopiedCaseStore {

    private static final String READ_CASE =
            "SELECT status, document, policy, rulebook, judged_of FROM case_file WHERE tenant_id = ? AND reference = ?";

    private static final String READ_CAUSES = """
            SELECT coalesce(jsonb_agg(to_jsonb(c) - 'tenant_id' - 'reference' ORDER BY rank), '[]')::text
              FROM case_cause c WHERE tenant_id = ? AND reference = ?
            """;

    private static final String ADD_CASES = """
            INSERT INTO case_file (tenant_id, reference, site, status, opened, opened_day, version, make, model, document,
                                   judging, policy, rulebook, judged_of, chain_length, chain_hash,
                                   changed_at)
            SELECT ?, c.reference, c.site, c.status, c.opened::timestamptz, c.opened_day::date, c.length, c.make, c.model,
                   c.document::json, 'done', c.policy, c.rulebook, c.judged_of, c.length, decode(c.hash, 'hex'), c.received::timestamptz
              FROM unnest(?::text[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[],
                          ?::text[], ?::text[], ?::int[], ?::text[], ?::text[])
                AS c (reference, site, status, opened, opened_day, make, model, document, policy, rulebook, judged_of,
                      length, hash, received)
            """;

    private static final String ADD_EVENTS = """
            INSERT INTO event (tenant_id, reference, position, source, id, type, time, time_sent, received_at, actor,
                               body, digest, previous, hash)
            SELECT ?, e.reference, e.position, e.source, e.id, e.type, e.time::timestamptz, e.time,
                   e.received::timestamptz, e.actor, e.body::json, decode(e.digest, 'hex'), decode(e.previous, 'hex'),
                   decode(e.hash, 'hex')
              FROM unnest(?::text[], ?::int[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[],
                          ?::text[], ?::text[], ?::text[])
                AS e (reference, position, source, id, type, time, received, actor, body, digest, previous, hash)
            """;

    private static final String ADD_IDENTITIES = """
            INSERT INTO event_identity (tenant_id, reference, source, id, digest)
            SELECT ?, i.reference, i.source, i.id, decode(i.digest, 'hex')
              FROM unnest(?::text[], ?::text[], ?::text[], ?::text[]) AS i (reference, source, id, digest)
            """;

    private static final String ADD_FIGURES = """
            INSERT INTO test_figures (tenant_id, reference, source, id, figures)
            SELECT ?, f.reference, f.source, f.id, f.figures::json
              FROM unnest(?::text[], ?::text[], ?::text[], ?::text[]) AS f (reference, source, id, figures)
            """;

    private static final String ADD_CAUSES = """
            INSERT INTO case_cause (tenant_id, reference, rank, code, axle, side, spot, circuit, standing, probability, root)
            SELECT ?, copy.reference, c.rank, c.code, c.axle, c.side, c.spot, c.circuit, c.standing, c.probability, c.root
              FROM unnest(?::text[], ?::text[]) AS copy (reference, causes)
             CROSS JOIN LATERAL json_populate_recordset(NULL::case_cause, copy.causes::json) AS c
            """;

    /** The judgement at the closing is the last one; the database copies what it has compressed already. */
    private static final String ADD_JUDGEMENTS = """
            INSERT INTO judgement (tenant_id, reference, version, rulebook, occasion, document, judged_at)
            SELECT tenant_id, reference, version, rulebook, 'closing', document, changed_at
              FROM case_file WHERE tenant_id = ? AND reference = ANY (?)
            """;

    private final TenantTransaction transaction;

    CopiedCaseStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /**
     * A case as judging has kept it.
     *
     * @param document the case document
     * @param policy what it was judged by
     * @param rulebook version of the rule base
     * @param judgedOf what else its document rests on, in a line
     * @param causes rows of its causes, a JSON array
     * @param events its history in the order of arrival
     * @param figures figures of its roller tests
     */
    public record Told(
            String status,
            String document,
            String policy,
            String rulebook,
            String judgedOf,
            String causes,
            List<ToldEvent> events,
            List<Figures> figures) {

        public Told {
            events = List.copyOf(events);
            figures = List.copyOf(figures);
        }
    }

    /**
     * An event of a told case.
     *
     * @param digest of its content in hex
     */
    public record ToldEvent(
            String source, String id, String type, OffsetDateTime time, String actor, String body, String digest) {}

    /** The figures of one roller test as JSON. */
    public record Figures(String source, String id, String figures) {}

    /**
     * A copied case.
     *
     * @param received when its events came in, all together and after its closing
     */
    public record Copy(
            String reference,
            String site,
            String status,
            OffsetDateTime opened,
            LocalDate openedDay,
            String make,
            String model,
            String document,
            String policy,
            String rulebook,
            String judgedOf,
            String causes,
            List<CopiedEvent> events,
            List<Figures> figures,
            OffsetDateTime received) {

        public Copy {
            events = List.copyOf(events);
            figures = List.copyOf(figures);
        }
    }

    /**
     * An event of a copied case.
     *
     * @param content its content in canonical JSON
     */
    public record CopiedEvent(
            String source, String id, String type, OffsetDateTime time, String actor, String body, String content) {}

    /** A case of the open transaction's tenant that was judged. */
    public Told read(String reference) {
        return transaction.jdbc((connection, tenant) -> {
            String causes = text(connection, READ_CAUSES, tenant, reference);
            List<ToldEvent> events = new ArrayList<>();
            try (PreparedStatement query = connection.prepareStatement(EventStore.HISTORY)) {
                query.setString(1, tenant);
                query.setString(2, reference);
                EventStore.links(query.executeQuery()).forEach(link -> events.add(told(link)));
            }
            List<Figures> figures = new ArrayList<>();
            try (PreparedStatement query = connection.prepareStatement(FiguresStore.FIND)) {
                query.setString(1, tenant);
                query.setString(2, reference);
                FiguresStore.figures(query.executeQuery())
                        .forEach((id, made) -> figures.add(new Figures(id.source(), id.id(), made)));
            }
            try (PreparedStatement query = connection.prepareStatement(READ_CASE)) {
                query.setString(1, tenant);
                query.setString(2, reference);
                try (ResultSet row = query.executeQuery()) {
                    if (!row.next()) {
                        throw new IllegalStateException("There is no case " + reference);
                    }
                    return new Told(
                            row.getString("status"),
                            row.getString("document"),
                            row.getString("policy"),
                            row.getString("rulebook"),
                            row.getString("judged_of"),
                            causes,
                            events,
                            figures);
                }
            }
        });
    }

    private static ToldEvent told(ChainLink link) {
        StoredEvent event = link.event();
        return new ToldEvent(
                event.id().source(),
                event.id().id(),
                event.type(),
                event.time(),
                event.actor(),
                event.body(),
                link.digest());
    }

    private static String text(Connection connection, String sql, String tenant, String reference) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(sql)) {
            query.setString(1, tenant);
            query.setString(2, reference);
            try (ResultSet row = query.executeQuery()) {
                row.next();
                return row.getString(1);
            }
        }
    }

    /** Adds copies to the open transaction's tenant with all that judging would have kept of them, but no statistics. */
    public void add(List<Copy> copies) {
        if (copies.isEmpty()) {
            return;
        }
        transaction.jdbc((connection, tenant) -> {
            List<Linked> links = new ArrayList<>();
            List<Linked> heads = new ArrayList<>();
            for (Copy copy : copies) {
                List<Linked> chain = linked(tenant, copy);
                links.addAll(chain);
                heads.add(chain.get(chain.size() - 1));
            }
            addCases(connection, tenant, copies, heads);
            addEvents(connection, tenant, links);
            addFigures(connection, tenant, copies);
            insert(connection, ADD_CAUSES, tenant, texts(copies, Copy::reference), texts(copies, Copy::causes));
            insert(connection, ADD_JUDGEMENTS, tenant, texts(copies, Copy::reference));
            return copies.size();
        });
    }

    private static void addCases(Connection connection, String tenant, List<Copy> copies, List<Linked> heads)
            throws SQLException {
        insert(
                connection,
                ADD_CASES,
                tenant,
                texts(copies, Copy::reference),
                texts(copies, Copy::site),
                texts(copies, Copy::status),
                texts(copies, copy -> moment(copy.opened())),
                texts(copies, copy -> copy.openedDay().toString()),
                texts(copies, Copy::make),
                texts(copies, Copy::model),
                texts(copies, Copy::document),
                texts(copies, Copy::policy),
                texts(copies, Copy::rulebook),
                texts(copies, Copy::judgedOf),
                new Column("int4", heads.stream().map(Linked::position).toList()),
                texts(heads, Linked::hash),
                texts(copies, copy -> moment(copy.received())));
    }

    private static void addEvents(Connection connection, String tenant, List<Linked> links) throws SQLException {
        insert(
                connection,
                ADD_EVENTS,
                tenant,
                texts(links, Linked::reference),
                new Column("int4", links.stream().map(Linked::position).toList()),
                texts(links, link -> link.event.source()),
                texts(links, link -> link.event.id()),
                texts(links, link -> link.event.type()),
                texts(links, link -> link.event.time().toString()),
                texts(links, link -> moment(link.received)),
                texts(links, link -> link.event.actor()),
                texts(links, link -> link.event.body()),
                texts(links, Linked::digest),
                texts(links, Linked::previous),
                texts(links, Linked::hash));
        insert(
                connection,
                ADD_IDENTITIES,
                tenant,
                texts(links, Linked::reference),
                texts(links, link -> link.event.source()),
                texts(links, link -> link.event.id()),
                texts(links, Linked::digest));
    }

    private static void addFigures(Connection connection, String tenant, List<Copy> copies) throws SQLException {
        List<String> references = new ArrayList<>();
        List<Figures> figures = new ArrayList<>();
        for (Copy copy : copies) {
            for (Figures made : copy.figures()) {
                references.add(copy.reference());
                figures.add(made);
            }
        }
        insert(
                connection,
                ADD_FIGURES,
                tenant,
                texts(references, reference -> reference),
                texts(figures, Figures::source),
                texts(figures, Figures::id),
                texts(figures, Figures::figures));
    }

    private static List<Linked> linked(String tenant, Copy copy) {
        List<Linked> chain = new ArrayList<>();
        String previous = HashChain.start();
        for (CopiedEvent event : copy.events()) {
            int position = chain.size() + 1;
            String digest = Sha256.of(event.content());
            NewEvent added = new NewEvent(
                    new EntryId(event.source(), event.id()),
                    event.type(),
                    event.time(),
                    copy.received(),
                    event.actor(),
                    event.body(),
                    digest);
            String hash = HashChain.next(previous, tenant, copy.reference(), position, added);
            chain.add(new Linked(copy.reference(), position, event, copy.received(), digest, previous, hash));
            previous = hash;
        }
        return chain;
    }

    private record Linked(
            String reference,
            int position,
            CopiedEvent event,
            OffsetDateTime received,
            String digest,
            String previous,
            String hash) {}

    private record Column(String type, List<?> values) {}

    private static <T> Column texts(List<T> rows, Function<T, String> column) {
        return new Column("text", rows.stream().map(column).toList());
    }

    private static String moment(OffsetDateTime time) {
        return time.truncatedTo(ChronoUnit.MICROS)
                .withOffsetSameInstant(ZoneOffset.UTC)
                .toString();
    }

    private static void insert(Connection connection, String sql, String tenant, Column... columns)
            throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(sql)) {
            insert.setString(1, tenant);
            for (int index = 0; index < columns.length; index++) {
                insert.setArray(
                        index + 2, connection.createArrayOf(columns[index].type, columns[index].values.toArray()));
            }
            insert.executeUpdate();
        }
    }
}
