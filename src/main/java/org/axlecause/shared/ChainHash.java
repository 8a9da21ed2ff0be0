package org.axlecause.shared;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.HexFormat;

/**
 * The hash of a link in a chain: SHA-256 over its parts in the order they are given. Texts and byte strings come with
 * their length first, so that no two links read alike.
 */
public final class ChainHash {

    private static final int HASH_BYTES = 32;
    private static final HexFormat HEX = HexFormat.of();

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream(1024);
    private final DataOutputStream out = new DataOutputStream(bytes);

    /** The hash before the first link. */
    public static String start() {
        return "00".repeat(HASH_BYTES);
    }

    /** Adds a text in UTF-8. */
    public ChainHash text(String text) {
        return bytes(text.getBytes(StandardCharsets.UTF_8));
    }

    /** Adds bytes that are written in hex. */
    public ChainHash hex(String hex) {
        return bytes(HEX.parseHex(hex));
    }

    /** Adds a number of 32 bits. */
    public ChainHash number(int number) {
        return write(() -> out.writeInt(number));
    }

    /** Adds a number of 64 bits. */
    public ChainHash number(long number) {
        return write(() -> out.writeLong(number));
    }

    /** Adds a moment in microseconds since 1970, which is what the database keeps. */
    public ChainHash moment(OffsetDateTime time) {
        return number(ChronoUnit.MICROS.between(Instant.EPOCH, time.toInstant()));
    }

    /** The hash in hex. */
    public String hash() {
        try {
            return HEX.formatHex(MessageDigest.getInstance("SHA-256").digest(bytes.toByteArray()));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256", e);
        }
    }

    private ChainHash bytes(byte[] part) {
        return write(() -> {
            out.writeInt(part.length);
            out.write(part);
        });
    }

    private ChainHash write(Writing writing) {
        try {
            writing.write();
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @FunctionalInterface
    private interface Writing {
        void write() throws IOException;
    }
}
