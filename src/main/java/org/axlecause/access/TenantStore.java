package org.axlecause.access;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.PreparedStatement;
import java.time.Clock;
import java.time.OffsetDateTime;
import org.axlecause.shared.TenantTransaction;

/** The tenants themselves. */
@ApplicationScoped
public class TenantStore {

    private static final String OPEN =
            "INSERT INTO tenant (tenant_id, name, created_at) VALUES (?, ?, ?) ON CONFLICT DO NOTHING";

    private final TenantTransaction transaction;
    private final Clock clock;

    TenantStore(TenantTransaction transaction, Clock clock) {
        this.transaction = transaction;
        this.clock = clock;
    }

    /** Makes the tenant unless it exists; its code is 1 to 32 of a to z, 0 to 9 and the hyphen. */
    public void open(String tenant, String name) {
        transaction.run(
                tenant,
                () -> transaction.jdbc((connection, bound) -> {
                    try (PreparedStatement insert = connection.prepareStatement(OPEN)) {
                        insert.setString(1, bound);
                        insert.setString(2, name);
                        insert.setObject(3, OffsetDateTime.now(clock));
                        return insert.executeUpdate();
                    }
                }));
    }
}
