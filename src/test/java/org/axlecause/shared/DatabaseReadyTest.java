package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.HealthCheckResponse.Status;
import org.eclipse.microprofile.health.Readiness;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.postgresql.ds.PGSimpleDataSource;

@QuarkusTest
class DatabaseReadyTest {

    @Inject
    @Readiness
    DatabaseReady ready;

    @Inject
    SchemaCheck schema;

    @Inject
    DataSource dataSource;

    @Inject
    Flyway flyway;

    @Test
    void a_database_that_answers_and_has_the_migrations_is_ready() {
        assertThat(ready.call().getStatus()).isEqualTo(Status.UP);
    }

    @Test
    void a_database_that_does_not_answer_is_not_ready_and_nothing_of_it_is_told() {
        PGSimpleDataSource nobody = new PGSimpleDataSource();
        nobody.setURL("jdbc:postgresql://127.0.0.1:1/axlecause");

        HealthCheckResponse answer = new DatabaseReady(nobody, schema).call();

        assertThat(answer.getStatus()).isEqualTo(Status.DOWN);
        assertThat(answer.getData()).isEmpty();
    }

    @Test
    void the_last_migration_counts_and_no_other() throws SQLException {
        String version = SchemaCheck.check(flyway);
        try (Connection connection = dataSource.getConnection()) {
            assertThat(SchemaCheck.holds(connection, version)).isTrue();
            assertThat(SchemaCheck.holds(connection, version + "0")).isFalse();
        }
    }

    @Test
    void a_schema_that_was_set_back_is_not_ready() throws SQLException {
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            assertThat(schema.holds(connection)).isTrue();
            statement.execute("DELETE FROM flyway_schema_history WHERE version IS NOT NULL");
            assertThat(schema.holds(connection)).isFalse();
            connection.rollback();
        }
    }
}
