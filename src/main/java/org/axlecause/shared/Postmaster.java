package org.axlecause.shared;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** A server process that runs on a cluster folder, by what it wrote into postmaster.pid. */
record Postmaster(ProcessHandle process, int port, Path pidFile) {

    private static final Duration STOP_WAIT = Duration.ofSeconds(60);
    private static final long POLL_MILLIS = 20;
    private static final int PORT_LINE = 3;

    static Optional<Postmaster> in(Path cluster) {
        Path pidFile = cluster.resolve("postmaster.pid");
        try {
            if (!Files.exists(pidFile)) {
                return Optional.empty();
            }
            List<String> lines = Files.readAllLines(pidFile);
            if (lines.size() <= PORT_LINE) {
                return Optional.empty();
            }
            int port = Integer.parseInt(lines.get(PORT_LINE).trim());
            return ProcessHandle.of(Long.parseLong(lines.get(0).trim()))
                    .filter(process -> runsOn(process, cluster))
                    .map(process -> new Postmaster(process, port, pidFile));
        } catch (IOException | NumberFormatException e) {
            return Optional.empty();
        }
    }

    /** The interrupt signal is PostgreSQL's fast shutdown: sessions are cut, everything committed is written. */
    void stop() {
        try {
            new ProcessBuilder("sh", "-c", "kill -INT \"$0\"", Long.toString(process.pid()))
                    .start()
                    .waitFor();
            awaitEnd();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (IOException e) {
            throw new UncheckedIOException("The database process " + process.pid() + " can't be signalled", e);
        }
    }

    /** The pid file goes last; a process that nobody reaps would look alive for ever. */
    void awaitEnd() throws InterruptedException {
        long deadline = System.nanoTime() + STOP_WAIT.toNanos();
        while (process.isAlive() && Files.exists(pidFile)) {
            if (System.nanoTime() > deadline) {
                throw CannotStart.because("The database process " + process.pid() + " doesn't stop. Stop it by hand"
                        + " (kill -INT " + process.pid() + "), then start again.");
            }
            Thread.sleep(POLL_MILLIS);
        }
    }

    private static boolean runsOn(ProcessHandle process, Path cluster) {
        Optional<String> commandLine = process.info().commandLine();
        return commandLine.isPresent() && commandLine.get().contains(cluster.toString());
    }
}
