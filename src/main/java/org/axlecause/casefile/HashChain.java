package org.axlecause.casefile;

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
 * Ties each event of a case to the one before it: SHA-256 over the previous hash (32 zero bytes for the first), then
 * tenant, reference, position, source, id, type, time as sent, time of receipt in microseconds, actor, content digest
 * and body. Each part comes with its length first, so that no two histories read alike.
 */
final class HashChain {

    private static final int HASH_BYTES = 32;
    private static final HexFormat HEX = HexFormat.of();

    private HashChain() {}

    /** The hash before the first event. */
    static String start() {
        return "00".repeat(HASH_BYTES);
    }

    static String next(String previous, String tenant, String reference, int position, NewEvent event) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(event.body().length() + 512);
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            part(out, HEX.parseHex(previous));
            part(out, tenant);
            part(out, reference);
            out.writeInt(position);
            part(out, event.id().source());
            part(out, event.id().id());
            part(out, event.type());
            part(out, event.time().toString());
            out.writeLong(micros(event.receivedAt()));
            part(out, event.actor());
            part(out, HEX.parseHex(event.digest()));
            part(out, event.body());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return HEX.formatHex(sha256(bytes.toByteArray()));
    }

    private static long micros(OffsetDateTime time) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, time.toInstant());
    }

    private static void part(DataOutputStream out, String text) throws IOException {
        part(out, text.getBytes(StandardCharsets.UTF_8));
    }

    private static void part(DataOutputStream out, byte[] bytes) throws IOException {
        out.writeInt(bytes.length);
        out.write(bytes);
    }

    private static byte[] sha256(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256", e);
        }
    }
}
