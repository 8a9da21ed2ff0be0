package org.axlecause.shared;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/** A mount of limited size in memory, to which tables of an embedded database are moved. Only root can make one. */
public final class SmallDisk implements Closeable {

    private final Path folder;

    private SmallDisk(Path folder) {
        this.folder = folder;
    }

    /** Whether this machine lets us mount. */
    public static boolean isPossible() throws IOException, InterruptedException {
        Path trial = Files.createTempDirectory("small-disk-");
        boolean mounted = succeeds("mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", trial.toString());
        if (mounted) {
            succeeds("umount", trial.toString());
        }
        Files.delete(trial);
        return mounted;
    }

    public static SmallDisk mount(Path folder, int megabytes) throws IOException, InterruptedException {
        Files.createDirectories(folder);
        assertThat(succeeds("mount", "-t", "tmpfs", "-o", "size=" + megabytes + "m", "tmpfs", folder.toString()))
                .isTrue();
        return new SmallDisk(folder);
    }

    /** Moves the tables of cases and events there, with their indexes. */
    public void moveTables(EmbeddedDatabase database, String... tables) throws IOException, SQLException {
        Path tablespace = Files.createDirectory(folder.resolve("tablespace"));
        Files.setPosixFilePermissions(tablespace, PosixFilePermissions.fromString("rwx------"));
        try (Connection connection = database.superuserConnection("axlecause");
                Statement statement = connection.createStatement()) {
            statement.execute("CREATE TABLESPACE small LOCATION '" + tablespace + "'");
            for (String table : tables) {
                statement.execute("ALTER TABLE " + table + " SET TABLESPACE small");
            }
        }
    }

    public void grow(int megabytes) throws IOException, InterruptedException {
        assertThat(succeeds("mount", "-o", "remount,size=" + megabytes + "m", folder.toString()))
                .isTrue();
    }

    @Override
    public void close() throws IOException {
        try {
            succeeds("umount", "--lazy", folder.toString());
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private static boolean succeeds(String... line) throws IOException, InterruptedException {
        return new ProcessBuilder(List.of(line))
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start()
                        .waitFor()
                == 0;
    }
}
