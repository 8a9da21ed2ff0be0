package org.axlecause.shared;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Names a text by what it says. */
public final class Sha256 {

    private static final int TAG_DIGITS = 32;

    private Sha256() {}

    /** The first 32 hexadecimal digits of the text's digest, as for an entity tag. */
    public static String tagOf(String text) {
        return of(text).substring(0, TAG_DIGITS);
    }

    /** The text's digest, 64 hexadecimal digits. */
    public static String of(String text) {
        return HexFormat.of().formatHex(begun().digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    /** A digest of what comes piece by piece. */
    public static MessageDigest begun() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("Every Java platform has SHA-256", missing);
        }
    }
}
