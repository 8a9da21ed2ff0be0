package org.axlecause.casefile;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.shared.TenantTransaction;

/** The judgements that people acted on: those at decisions and at closing. */
@ApplicationScoped
public class JudgementStore {

    private static final String SAVE = """
            INSERT INTO judgement (tenant_id, reference, version, rulebook, occasion, document, judged_at)
            VALUES (?, ?, ?, ?, ?, ?::json, ?)
            ON CONFLICT DO NOTHING
            """;

    private static final String FIND = """
            SELECT version, rulebook, occasion, document, judged_at FROM judgement
             WHERE tenant_id = ? AND reference = ? ORDER BY version, judged_at, rulebook, occasion
            """;

    private final TenantTransaction transaction;

    JudgementStore(TenantTransaction transaction) {
        this.transaction = transaction;
    }

    /** Keeps a judgement of a locked case; the one already kept for that version, rule base and occasion stays. */
    public void save(String reference, PastJudgement judgement) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement insert = connection.prepareStatement(SAVE)) {
                insert.setString(1, tenant);
                insert.setString(2, reference);
                insert.setInt(3, judgement.version());
                insert.setString(4, judgement.rulebook());
                insert.setString(5, judgement.occasion().toString());
                insert.setString(6, judgement.document());
                insert.setObject(7, judgement.judgedAt().truncatedTo(ChronoUnit.MICROS));
                return insert.executeUpdate();
            }
        });
    }

    /** The kept judgements of a case, oldest version first. */
    public List<PastJudgement> find(String reference) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(FIND)) {
                query.setString(1, tenant);
                query.setString(2, reference);
                List<PastJudgement> judgements = new ArrayList<>();
                try (ResultSet row = query.executeQuery()) {
                    while (row.next()) {
                        judgements.add(new PastJudgement(
                                row.getInt(1),
                                row.getString(2),
                                PastJudgement.Occasion.of(row.getString(3)),
                                row.getString(4),
                                row.getObject(5, OffsetDateTime.class)));
                    }
                }
                return judgements;
            }
        });
    }
}
