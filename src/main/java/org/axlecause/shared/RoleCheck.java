package org.axlecause.shared;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;

/** Refuses to start as a database role that could step around the wall between tenants. */
@ApplicationScoped
class RoleCheck {

    private static final int FIRST = 1;

    private static final String QUESTION = """
            SELECT current_user, r.rolsuper, r.rolbypassrls,
                   EXISTS (SELECT 1 FROM pg_class c
                            WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p')
                              AND c.relrowsecurity AND pg_has_role(current_user, c.relowner, 'MEMBER')) AS owns,
                   (SELECT string_agg(c.relname, ', ' ORDER BY c.relname) FROM pg_class c
                      JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'tenant_id'
                     WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p')
                       AND NOT (c.relrowsecurity AND c.relforcerowsecurity)) AS open_tables
              FROM pg_roles r WHERE r.rolname = current_user
            """;

    private final DataSource dataSource;

    RoleCheck(DataSource dataSource) {
        this.dataSource = dataSource;
    }

    void atStart(@Observes @Priority(FIRST) StartupEvent event) {
        try (Connection connection = dataSource.getConnection()) {
            check(connection);
        } catch (SQLException e) {
            throw new DatabaseException(e);
        }
    }

    static void check(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet answer = statement.executeQuery(QUESTION)) {
            answer.next();
            String role = answer.getString(1);
            refuseIf(answer.getBoolean(2), role, "is a superuser");
            refuseIf(answer.getBoolean(3), role, "may bypass row-level security");
            refuseIf(answer.getBoolean(4), role, "owns the tables");
            String openTables = answer.getString(5);
            if (openTables != null) {
                throw CannotStart.because("Row-level security isn't forced on " + openTables
                        + ". Run the migrations, or ALTER TABLE … FORCE ROW LEVEL SECURITY, then start again.");
            }
        }
    }

    private static void refuseIf(boolean holds, String role, String reason) {
        if (holds) {
            throw CannotStart.because(
                    "The database role " + role + " " + reason + ", so that nothing would keep tenants"
                            + " apart. Set QUARKUS_DATASOURCE_USERNAME to a plain role such as axlecause_service, and"
                            + " QUARKUS_FLYWAY_USERNAME to the one that owns the tables.");
        }
    }
}
