package org.axlecause.outbound;

import java.util.Arrays;
import java.util.Base64;
import org.axlecause.shared.Seal;

/** The secret of a subscription, in the form of Standard Webhooks; it is shown once and stored encrypted. */
final class Secret {

    private static final String PREFIX = "whsec_";
    private static final int BYTES = 32;

    private final byte[] bytes;

    private Secret(byte[] bytes) {
        this.bytes = bytes;
    }

    /** A new random secret. */
    static Secret made() {
        return new Secret(Seal.randomBytes(BYTES));
    }

    static Secret of(byte[] bytes) {
        return new Secret(bytes.clone());
    }

    byte[] bytes() {
        return bytes.clone();
    }

    /** The whole secret, to be shown once. */
    String text() {
        return PREFIX + Base64.getEncoder().encodeToString(bytes);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Secret secret && Arrays.equals(bytes, secret.bytes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes);
    }

    /** Without the secret, which must not reach a log. */
    @Override
    public String toString() {
        return PREFIX + "…";
    }
}
