package org.axlecause.shared;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.UUID;
import org.eclipse.microprofile.config.Config;
import org.eclipse.microprofile.config.ConfigProvider;
import org.flywaydb.core.Flyway;
import org.postgresql.ds.PGSimpleDataSource;

/** A database of its own where row-level security is switched off, so that only the statements keep tenants apart. */
public final class BareDatabase implements AutoCloseable {

    private final String name = "bare_" + UUID.randomUUID().toString().replace("-", "");

    private BareDatabase() {}

    public static BareDatabase made() throws SQLException {
        BareDatabase database = new BareDatabase();
        execute("CREATE DATABASE " + database.name + " OWNER axlecause_owner");
        Flyway.configure()
                .dataSource(database.source())
                .placeholders(Map.of("serviceRole", "axlecause_service"))
                .load()
                .migrate();
        try (Connection connection = database.source().getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("DO $$ DECLARE t regclass; BEGIN FOR t IN SELECT oid FROM pg_class"
                    + " WHERE relrowsecurity LOOP EXECUTE format('ALTER TABLE %s DISABLE ROW LEVEL SECURITY', t);"
                    + " END LOOP; END $$");
        }
        return database;
    }

    /** Connections as the owner of its tables. */
    public PGSimpleDataSource source() {
        Config config = ConfigProvider.getConfig();
        PGSimpleDataSource source = new PGSimpleDataSource();
        source.setUrl(
                config.getValue("quarkus.datasource.jdbc.url", String.class).replace("/axlecause?", "/" + name + "?"));
        source.setUser(config.getValue("quarkus.flyway.username", String.class));
        source.setPassword(config.getValue("quarkus.flyway.password", String.class));
        return source;
    }

    @Override
    public void close() throws SQLException {
        execute("DROP DATABASE " + name + " WITH (FORCE)");
    }

    private static void execute(String sql) throws SQLException {
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
