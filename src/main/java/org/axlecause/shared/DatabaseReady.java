package org.axlecause.shared;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.SQLException;
import javax.sql.DataSource;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;
import org.jboss.logging.Logger;

/** Ready when the pool hands out a connection and the database has the migrations of this release. */
@Readiness
@ApplicationScoped
class DatabaseReady implements HealthCheck {

    static final String NAME = "database";

    private static final Logger LOG = Logger.getLogger(DatabaseReady.class);

    private final DataSource dataSource;
    private final SchemaCheck schema;

    DatabaseReady(DataSource dataSource, SchemaCheck schema) {
        this.dataSource = dataSource;
        this.schema = schema;
    }

    @Override
    public HealthCheckResponse call() {
        try (Connection connection = dataSource.getConnection()) {
            return HealthCheckResponse.named(NAME)
                    .status(schema.holds(connection))
                    .build();
        } catch (SQLException e) {
            LOG.debugf(e, "The database is not ready");
            return HealthCheckResponse.down(NAME);
        }
    }
}
