package org.axlecause;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;

/** A test with a database of its own, for any number of replicas; its folder stays where the test fails. */
abstract class WithInstallation {

    @TempDir(cleanup = CleanupMode.ON_SUCCESS)
    protected Path folder;

    protected Installation installation;

    @BeforeEach
    void a_database_stands_alone() {
        installation = new Installation(folder);
    }

    @AfterEach
    void it_ends() {
        installation.close();
    }
}
