package org.axlecause.audit;

import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;

/**
 * A head of a tenant's chain under a signature, as it is stored, exported and handed back to be verified.
 *
 * @param tenant whose chain
 * @param position place of the link that was the last
 * @param hash its hash in hex
 * @param signedAt when it was signed, to the second
 * @param keyId which key signed: the first 16 hex digits of the SHA-256 of the public key in base64
 * @param signature Ed25519 (RFC 8032) over {@link #message}, in base64
 */
record SignedHead(String tenant, long position, String hash, OffsetDateTime signedAt, String keyId, String signature) {

    /** What is signed: a line that says what it is, then tenant, position, hash and moment, a line each. */
    static byte[] message(String tenant, long position, String hash, OffsetDateTime signedAt) {
        return String.join(
                        "\n",
                        "axlecause audit head 1",
                        tenant,
                        Long.toString(position),
                        hash,
                        signedAt.toInstant().truncatedTo(ChronoUnit.SECONDS).toString())
                .getBytes(StandardCharsets.UTF_8);
    }

    byte[] message() {
        return message(tenant, position, hash, signedAt);
    }
}
