package org.axlecause.shared;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationInfoService;
import org.jspecify.annotations.Nullable;

/** Knows which migration this release needs: refuses to start without it, and ends the command {@code migrate} with it. */
@ApplicationScoped
class SchemaCheck {

    static final String MIGRATE_ONLY = "axlecause.migrate-only";

    private static final int BEFORE_ALL_ELSE = 0;
    private static final String QUESTION =
            "SELECT EXISTS (SELECT 1 FROM flyway_schema_history WHERE success AND version = ?)";
    private static final String HOW = " Run the command migrate of this release with QUARKUS_FLYWAY_USERNAME and"
            + " QUARKUS_FLYWAY_PASSWORD of the role that owns the tables, then start again.";

    private final Flyway flyway;
    private final boolean migrateOnly;
    private volatile @Nullable String needed;

    SchemaCheck(Flyway flyway, @ConfigProperty(name = MIGRATE_ONLY, defaultValue = "false") boolean migrateOnly) {
        this.flyway = flyway;
        this.migrateOnly = migrateOnly;
    }

    void atStart(@Observes @Priority(BEFORE_ALL_ELSE) StartupEvent event) {
        String version = check(flyway);
        if (migrateOnly) {
            throw new EndedAtStartException("The schema is at version " + version + ".", 0);
        }
        needed = version;
    }

    /** The version that the schema must have, which it has. */
    static String check(Flyway flyway) {
        MigrationInfoService migrations = migrations(flyway);
        MigrationInfo[] pending = migrations.pending();
        if (pending.length > 0) {
            MigrationInfo current = migrations.current();
            throw CannotStart.because("The schema of the database is "
                    + (current == null ? "empty" : "at version " + current.getVersion())
                    + ", and this release needs version " + pending[pending.length - 1].getVersion() + "." + HOW);
        }
        String version = "";
        for (MigrationInfo migration : migrations.all()) {
            if (migration.getState().isResolved() && migration.isVersioned()) {
                version = migration.getVersion().getVersion();
            }
        }
        return version;
    }

    /** Whether the database of this connection has the schema that was there when the service started. */
    boolean holds(Connection connection) throws SQLException {
        String version = needed;
        return version != null && holds(connection, version);
    }

    static boolean holds(Connection connection, String version) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(QUESTION)) {
            query.setString(1, version);
            try (ResultSet answer = query.executeQuery()) {
                return answer.next() && answer.getBoolean(1);
            }
        }
    }

    private static MigrationInfoService migrations(Flyway flyway) {
        try {
            return flyway.info();
        } catch (FlywayException e) {
            throw CannotStart.because(
                    "The version of the database's schema can't be read (" + e.getMessage() + ")." + HOW);
        }
    }
}
