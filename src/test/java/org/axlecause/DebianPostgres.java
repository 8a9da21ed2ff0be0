package org.axlecause;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** A cluster of the PostgreSQL that Debian installs, run as an unprivileged user, with the roles that an operator makes. */
final class DebianPostgres implements Closeable {

    private static final int LEAST_VERSION = 15;
    private static final int NOBODY = 65534;

    private final Path programs;
    private final Path folder;
    private final int port;

    private DebianPostgres(Path programs, Path folder) throws IOException {
        this.programs = programs;
        this.folder = folder;
        try (ServerSocket socket = new ServerSocket(0)) {
            this.port = socket.getLocalPort();
        }
    }

    /** Folder of the programs of the newest version that is installed and new enough. */
    static Optional<Path> programs() throws IOException {
        Path versions = Path.of("/usr/lib/postgresql");
        if (!Files.isDirectory(versions)) {
            return Optional.empty();
        }
        try (Stream<Path> found = Files.list(versions)) {
            return found.filter(version -> version.getFileName().toString().matches("\\d+"))
                    .filter(version -> number(version) >= LEAST_VERSION)
                    .map(version -> version.resolve("bin"))
                    .filter(bin -> Stream.of("initdb", "pg_ctl", "pg_dump", "pg_restore")
                            .allMatch(program -> Files.isExecutable(bin.resolve(program))))
                    .max(Comparator.comparingInt(bin -> number(bin.getParent())));
        }
    }

    static DebianPostgres start(Path programs, Path folder) throws Exception {
        DebianPostgres cluster = new DebianPostgres(programs, folder);
        Files.createDirectories(folder);
        if (isRoot()) {
            Files.setAttribute(folder, "unix:uid", NOBODY);
        }
        cluster.asServer("initdb", "-D", cluster.data(), "-U", "postgres", "-A", "trust", "-E", "UTF8", "--locale=C");
        cluster.asServer(
                "pg_ctl",
                "-D",
                cluster.data(),
                "-w",
                "-l",
                folder.resolve("server.log").toString(),
                "-o",
                "-p " + cluster.port + " -c listen_addresses=127.0.0.1 -c unix_socket_directories=''",
                "start");
        cluster.makeRoles();
        return cluster;
    }

    String url() {
        return "jdbc:postgresql://127.0.0.1:" + port + "/axlecause?reWriteBatchedInserts=true";
    }

    /** Runs one of PostgreSQL's own client programs on this cluster, as its superuser. */
    void client(String program, String... arguments) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>(List.of(
                programs.resolve(program).toString(), "-h", "127.0.0.1", "-p", String.valueOf(port), "-U", "postgres"));
        line.addAll(List.of(arguments));
        run(line);
    }

    @Override
    public void close() throws IOException {
        try {
            asServer("pg_ctl", "-D", data(), "-w", "-m", "fast", "stop");
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private void makeRoles() throws SQLException, IOException {
        try (Connection connection = superuser("postgres");
                Statement statement = connection.createStatement()) {
            statement.execute(Files.readString(Path.of("src/main/resources/db/roles.sql")));
            statement.execute("CREATE DATABASE axlecause OWNER axlecause_owner");
        }
        try (Connection connection = superuser("axlecause");
                Statement statement = connection.createStatement()) {
            statement.execute(Files.readString(Path.of("src/main/resources/db/database.sql")));
        }
    }

    private Connection superuser(String database) throws SQLException {
        return DriverManager.getConnection("jdbc:postgresql://127.0.0.1:" + port + "/" + database, "postgres", "");
    }

    private String data() {
        return folder.resolve("data").toString();
    }

    private void asServer(String program, String... arguments) throws IOException, InterruptedException {
        List<String> line = new ArrayList<>();
        if (isRoot()) {
            line.addAll(List.of("setpriv", "--reuid=" + NOBODY, "--regid=" + NOBODY, "--clear-groups"));
        }
        line.add(programs.resolve(program).toString());
        line.addAll(List.of(arguments));
        run(line);
    }

    private void run(List<String> line) throws IOException, InterruptedException {
        Path output = folder.resolveSibling(folder.getFileName() + ".log");
        Process process = new ProcessBuilder(line)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(output.toFile()))
                .start();
        assertThat(process.waitFor())
                .as("%s; its words: %s", line, Files.readString(output))
                .isZero();
    }

    static boolean isRoot() {
        try {
            return Files.getAttribute(Path.of("/proc/self"), "unix:uid").equals(0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static int number(Path version) {
        return Integer.parseInt(version.getFileName().toString());
    }
}
