package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.junit.jupiter.api.Test;

@QuarkusTest
class RoleCheckTest {

    @Inject
    DataSource dataSource;

    @ConfigProperty(name = "quarkus.datasource.jdbc.url")
    String url;

    @ConfigProperty(name = "quarkus.flyway.username")
    String owner;

    @ConfigProperty(name = "quarkus.flyway.password")
    String ownerPassword;

    @Test
    void the_services_own_role_is_admitted() throws SQLException {
        try (Connection connection = dataSource.getConnection()) {
            assertThatCode(() -> RoleCheck.check(connection)).doesNotThrowAnyException();
        }
    }

    @Test
    void the_owner_of_the_tables_is_refused() throws SQLException {
        try (Connection connection = DriverManager.getConnection(url, owner, ownerPassword)) {
            refused(connection, "axlecause_owner owns the tables");
        }
    }

    @Test
    void a_superuser_is_refused() throws SQLException {
        try (Connection connection = TestDatabase.superuser()) {
            refused(connection, "postgres is a superuser");
        }
    }

    @Test
    void a_role_that_may_bypass_the_wall_is_refused() throws SQLException {
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("CREATE ROLE passer BYPASSRLS");
            statement.execute("SET LOCAL ROLE passer");
            refused(connection, "passer may bypass row-level security");
            connection.rollback();
        }
    }

    @Test
    void a_table_without_its_wall_is_refused() throws SQLException {
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute("ALTER TABLE test_figures NO FORCE ROW LEVEL SECURITY");
            statement.execute("SET LOCAL ROLE axlecause_service");
            refused(connection, "isn't forced on test_figures");
            connection.rollback();
        }
    }

    private static void refused(Connection connection, String reason) {
        assertThatThrownBy(() -> RoleCheck.check(connection))
                .isInstanceOf(EndedAtStartException.class)
                .hasMessageContaining(reason);
    }
}
