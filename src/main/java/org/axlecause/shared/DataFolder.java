package org.axlecause.shared;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Properties;
import org.jspecify.annotations.Nullable;

/** The folder that keeps the embedded database and the secrets made for it; readable by its owner only. */
final class DataFolder implements AutoCloseable {

    private static final String LOCK = "lock";
    private static final String SECRETS = "secrets.properties";
    private static final int SECRET_BYTES = 32;
    private static final boolean POSIX =
            FileSystems.getDefault().supportedFileAttributeViews().contains("posix");

    private final Path path;
    private @Nullable FileChannel lockFile;

    private DataFolder(Path path) {
        this.path = path;
    }

    static DataFolder at(Path path) {
        try {
            Path absolute = path.toAbsolutePath().normalize();
            if (!Files.isDirectory(absolute)) {
                Files.createDirectories(absolute);
                restrict(absolute, "rwx------");
            }
            return new DataFolder(absolute.toRealPath());
        } catch (IOException e) {
            throw CannotStart.because("The data folder " + path.toAbsolutePath() + " can't be made or read (" + e
                    + "). Set AXLECAUSE_DATA_DIR to a folder that this user may write.");
        }
    }

    Path path() {
        return path;
    }

    Path resolve(String name) {
        return path.resolve(name);
    }

    /** Takes the folder for this process; false when another one has it. */
    boolean lock() {
        try {
            FileChannel channel = FileChannel.open(
                    path.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
            if (!taken(channel)) {
                channel.close();
                return false;
            }
            channel.truncate(0);
            channel.write(
                    ByteBuffer.wrap(Long.toString(ProcessHandle.current().pid()).getBytes(StandardCharsets.UTF_8)));
            lockFile = channel;
            return true;
        } catch (IOException e) {
            throw new UncheckedIOException("The lock file in " + path + " can't be used", e);
        }
    }

    /** The process that holds the folder, as far as its lock file tells. */
    String holder() {
        try {
            String pid = Files.readString(path.resolve(LOCK)).trim();
            return pid.isEmpty() ? "another process" : "process " + pid;
        } catch (IOException e) {
            return "another process";
        }
    }

    /** A secret of 256 random bits, made at first use and kept. */
    String secret(String name) {
        Path file = path.resolve(SECRETS);
        try {
            Properties secrets = new Properties();
            if (Files.exists(file)) {
                try (Reader reader = Files.newBufferedReader(file)) {
                    secrets.load(reader);
                }
            }
            String known = secrets.getProperty(name);
            if (known != null) {
                return known;
            }
            byte[] random = new byte[SECRET_BYTES];
            new SecureRandom().nextBytes(random);
            String made = Base64.getEncoder().encodeToString(random);
            secrets.setProperty(name, made);
            save(secrets, file);
            return made;
        } catch (IOException e) {
            throw new UncheckedIOException("The secrets in " + file + " can't be read or written", e);
        }
    }

    /** A file that nobody else may read, written anew. */
    Path privateFile(String name, String text) throws IOException {
        Path file = path.resolve(name);
        Files.deleteIfExists(file);
        Files.createFile(file);
        restrict(file, "rw-------");
        return Files.writeString(file, text);
    }

    boolean hasSecrets() {
        return Files.exists(path.resolve(SECRETS));
    }

    @Override
    public void close() {
        FileChannel held = lockFile;
        if (held == null) {
            return;
        }
        try {
            held.truncate(0);
            held.close();
        } catch (IOException e) {
            throw new UncheckedIOException("The lock on " + path + " can't be given back", e);
        }
    }

    private void save(Properties secrets, Path file) throws IOException {
        Path next = privateFile(SECRETS + ".new", "");
        try (Writer writer = Files.newBufferedWriter(next)) {
            secrets.store(writer, "Keep this file with the data: without it neither opens.");
        }
        try (FileChannel channel = FileChannel.open(next, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
        Files.move(next, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }

    private static boolean taken(FileChannel channel) throws IOException {
        try {
            FileLock lock = channel.tryLock();
            return lock != null;
        } catch (OverlappingFileLockException heldByThisProcess) {
            return false;
        }
    }

    private static void restrict(Path target, String permissions) throws IOException {
        if (POSIX) {
            Files.setPosixFilePermissions(target, PosixFilePermissions.fromString(permissions));
        }
    }
}
