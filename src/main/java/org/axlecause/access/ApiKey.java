package org.axlecause.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.CRC32;

/**
 * The text of a key: {@code axc_<id>_<secret>_<check>}, all parts in the 62 letters and digits. The secret holds 256
 * random bits, the check sum lets scanners and the gate tell a key from noise. It is shown once and stored hashed.
 */
final class ApiKey {

    private static final String PREFIX = "axc";
    private static final String DIGITS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz";
    private static final int ID_LENGTH = 16;
    private static final int SECRET_LENGTH = 43;
    private static final int CHECK_LENGTH = 6;
    private static final Pattern FORM = Pattern.compile("(axc_([0-9A-Za-z]{" + ID_LENGTH + "})_[0-9A-Za-z]{"
            + SECRET_LENGTH + "})_([0-9A-Za-z]{" + CHECK_LENGTH + "})");
    private static final SecureRandom RANDOM = new SecureRandom();

    private final String id;
    private final String text;

    private ApiKey(String id, String text) {
        this.id = id;
        this.text = text;
    }

    /** A new random key. */
    static ApiKey made() {
        String id = randomText(ID_LENGTH);
        String body = PREFIX + '_' + id + '_' + randomText(SECRET_LENGTH);
        return new ApiKey(id, body + '_' + check(body));
    }

    /** Reads a key; empty when form or check sum are wrong. */
    static Optional<ApiKey> read(String text) {
        Matcher form = FORM.matcher(text);
        if (!form.matches() || !check(form.group(1)).equals(form.group(3))) {
            return Optional.empty();
        }
        return Optional.of(new ApiKey(form.group(2), text));
    }

    /** The part that may be shown and logged. */
    String id() {
        return id;
    }

    /** The whole key, to be shown once. */
    String text() {
        return text;
    }

    /** SHA-256 of the whole key in hex; a slow hash adds nothing to 256 random bits. */
    String hash() {
        try {
            byte[] bytes = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.US_ASCII));
            return HexFormat.of().formatHex(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256", e);
        }
    }

    @Override
    public String toString() {
        return PREFIX + '_' + id;
    }

    private static String randomText(int length) {
        StringBuilder digits = new StringBuilder(length);
        for (int index = 0; index < length; index++) {
            digits.append(DIGITS.charAt(RANDOM.nextInt(DIGITS.length())));
        }
        return digits.toString();
    }

    static String check(String body) {
        CRC32 sum = new CRC32();
        sum.update(body.getBytes(StandardCharsets.US_ASCII));
        long rest = sum.getValue();
        char[] digits = new char[CHECK_LENGTH];
        for (int index = CHECK_LENGTH - 1; index >= 0; index--) {
            digits[index] = DIGITS.charAt((int) (rest % DIGITS.length()));
            rest /= DIGITS.length();
        }
        return new String(digits);
    }
}
