package org.axlecause.access;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;

/** Notes who did what when, in the transaction that does it, so that neither is there without the other. */
@ApplicationScoped
public class ActStore {

    private static final String NOTE = "INSERT INTO audit_note (tenant_id, noted_at, actor, action, object, content)"
            + " VALUES (?, ?, ?, ?, ?, ?)";

    private final TenantTransaction transaction;
    private final Clock clock;

    ActStore(TenantTransaction transaction, Clock clock) {
        this.transaction = transaction;
        this.clock = clock;
    }

    /**
     * Notes an act of the open transaction.
     *
     * @param actor id of the key, or the command
     * @param act what was done
     * @param object what it was done to, such as the id of a key or the code of a site
     * @param content what else matters; no secret and no personal data
     */
    public void note(String actor, Act act, String object, Map<String, String> content) {
        transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement insert = connection.prepareStatement(NOTE)) {
                insert.setString(1, tenant);
                insert.setObject(2, OffsetDateTime.now(clock));
                insert.setString(3, actor);
                insert.setString(4, act.toString());
                insert.setString(5, object);
                insert.setString(6, Json.text(new TreeMap<>(content)));
                return insert.executeUpdate();
            }
        });
    }
}
