package org.axlecause.shared;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;

/** Another process that holds an embedded database until it is killed. */
final class DatabaseHolder {

    private DatabaseHolder() {}

    public static void main(String... arguments) throws Exception {
        try {
            EmbeddedDatabase database = EmbeddedDatabase.start(Path.of(arguments[0]), 0);
            try (Connection connection = database.superuserConnection("axlecause");
                    Statement statement = connection.createStatement()) {
                statement.execute("CREATE TABLE IF NOT EXISTS kept (number int)");
                statement.execute("INSERT INTO kept VALUES (1)");
            }
            System.out.println("holding");
            Thread.currentThread().join();
        } catch (RuntimeException e) {
            System.out.println(e.getMessage());
            System.exit(1);
        }
    }
}
