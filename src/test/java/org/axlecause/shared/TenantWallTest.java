package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;

@QuarkusTest
class TenantWallTest {

    /** Tables that functions of the owner alone read and write. */
    private static final List<String> NOBODYS = List.of("case_search");

    @ConfigProperty(name = "quarkus.datasource.jdbc.url")
    String url;

    @ConfigProperty(name = "quarkus.datasource.username")
    String user;

    @ConfigProperty(name = "quarkus.datasource.password")
    String password;

    @Inject
    TenantTransaction transaction;

    @Test
    void without_a_tenant_every_table_fails_closed() throws SQLException {
        try (Connection connection = DriverManager.getConnection(url, user, password);
                Statement statement = connection.createStatement()) {
            List<String> tables = tables(statement);
            assertThat(tables)
                    .contains("event", "case_file", "api_key", "vehicle_identity")
                    .hasSizeGreaterThan(12);

            for (String table : tables) {
                assertThatThrownBy(() -> statement.executeQuery("SELECT * FROM " + table))
                        .as(table)
                        .isInstanceOf(SQLException.class)
                        .hasMessageContaining(
                                NOBODYS.contains(table) ? "permission denied for table " + table : "axlecause.tenant");
            }
            assertThatThrownBy(() -> statement.executeQuery("SELECT cases_with('portal')"))
                    .hasMessageContaining("axlecause.tenant");
        }
    }

    @Test
    void a_tenant_neither_sees_nor_writes_the_rows_of_another() {
        tenant("wall-a");
        tenant("wall-b");

        List<String> seen = transaction.call("wall-a", () -> strings("SELECT tenant_id FROM tenant"));

        assertThat(seen).containsExactly("wall-a");
        assertThatThrownBy(() -> transaction.run(
                        "wall-a",
                        () -> execute("INSERT INTO site VALUES"
                                + " ('wall-b', 's', 'S', NULL, 'Europe/London', 'GBP', 'gb-annual', 1)")))
                .isInstanceOf(DatabaseException.class)
                .hasMessageContaining("row-level security");
        assertThat(transaction.<Integer>call(
                        "wall-a", () -> execute("UPDATE site SET name = 'x' WHERE tenant_id = 'wall-b'")))
                .isZero();
    }

    @Test
    void the_wall_closes_again_when_the_transaction_ends() throws SQLException {
        tenant("wall-c");

        try (Connection connection = DriverManager.getConnection(url, user, password);
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("SELECT set_config('axlecause.tenant', 'wall-c', true)");
            assertThat(count(statement)).isEqualTo(1);
            connection.commit();
            assertThat(count(statement)).isZero();
            assertThatThrownBy(() -> statement.execute("INSERT INTO tenant VALUES ('wall-d', 'Chain', now())"))
                    .hasMessageContaining("row-level security");
        }
    }

    @Test
    void stores_work_inside_a_tenants_transaction_only() {
        assertThatThrownBy(() -> transaction.jdbc((connection, tenant) -> tenant))
                .isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> transaction.run(" ", () -> {})).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void a_transaction_of_one_tenant_holds_no_other() {
        assertThatThrownBy(() -> transaction.run("wall-a", () -> transaction.run("wall-b", () -> {})))
                .isInstanceOf(IllegalStateException.class);
    }

    @Test
    void the_services_role_may_not_change_history_nor_tables() {
        for (String forbidden : List.of(
                "UPDATE event SET body = '{}'",
                "DELETE FROM event",
                "TRUNCATE event",
                "DELETE FROM event_identity",
                "DELETE FROM case_file",
                "ALTER TABLE event DISABLE ROW LEVEL SECURITY",
                "DROP TABLE event",
                "CREATE TABLE mine (x int)",
                "SET ROLE axlecause_owner",
                "UPDATE policy_version SET document = '{}'")) {
            assertThatThrownBy(() -> transaction.run("wall-a", () -> execute(forbidden)))
                    .as(forbidden)
                    .isInstanceOf(DatabaseException.class)
                    .hasMessageMatching("(?s).*(permission denied|must be owner).*");
        }
    }

    private static int count(Statement statement) throws SQLException {
        try (ResultSet rows = statement.executeQuery("SELECT count(*) FROM tenant")) {
            rows.next();
            return rows.getInt(1);
        }
    }

    private void tenant(String name) {
        transaction.run(
                name,
                () -> execute("INSERT INTO tenant VALUES ('" + name + "', 'Chain', now()) ON CONFLICT DO NOTHING"));
    }

    private int execute(String sql) {
        return transaction.jdbc((connection, tenant) -> {
            try (Statement statement = connection.createStatement()) {
                return statement.executeUpdate(sql);
            }
        });
    }

    private List<String> strings(String sql) {
        return transaction.jdbc((connection, tenant) -> {
            try (Statement statement = connection.createStatement();
                    ResultSet rows = statement.executeQuery(sql)) {
                List<String> found = new ArrayList<>();
                while (rows.next()) {
                    found.add(rows.getString(1));
                }
                return found;
            }
        });
    }

    private static List<String> tables(Statement statement) throws SQLException {
        List<String> tables = new ArrayList<>();
        try (ResultSet rows = statement.executeQuery("SELECT c.relname FROM pg_class c JOIN pg_attribute a"
                + " ON a.attrelid = c.oid AND a.attname = 'tenant_id'"
                + " WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace ORDER BY 1")) {
            while (rows.next()) {
                tables.add(rows.getString(1));
            }
        }
        return tables;
    }
}
