package org.axlecause.shared;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import javax.crypto.Cipher;
import javax.crypto.Mac;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;

/**
 * Encrypts what must be readable again, and digests what must be found again, under keys derived for one purpose from
 * {@code axlecause.identity-key}.
 */
public final class Seal {

    private static final String MAC = "HmacSHA256";
    private static final String CIPHER = "AES/GCM/NoPadding";
    private static final int KEY_BYTES = 32;
    private static final int NONCE_BYTES = 12;
    private static final int TAG_BITS = 128;
    private static final SecureRandom RANDOM = new SecureRandom();

    private final SecretKeySpec key;

    private Seal(SecretKeySpec key) {
        this.key = key;
    }

    /** The seal of this purpose; refuses to start where the setting holds no key. */
    public static Seal of(Optional<String> identityKey, String purpose) {
        SecretKeySpec whole = new SecretKeySpec(key(identityKey.orElse("")), MAC);
        return new Seal(new SecretKeySpec(hmac(whole, "axlecause " + purpose), "AES"));
    }

    /** Encrypts; it opens only together with the same context. */
    public byte[] close(byte[] plain, byte[] context) {
        try {
            byte[] nonce = randomBytes(NONCE_BYTES);
            Cipher cipher = Cipher.getInstance(CIPHER);
            cipher.init(Cipher.ENCRYPT_MODE, key, new GCMParameterSpec(TAG_BITS, nonce));
            cipher.updateAAD(context);
            byte[] sealed = cipher.doFinal(plain);
            return ByteBuffer.allocate(NONCE_BYTES + sealed.length)
                    .put(nonce)
                    .put(sealed)
                    .array();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("The data can't be encrypted", e);
        }
    }

    /** Decrypts what {@link #close} has made with this context. */
    public byte[] open(byte[] sealed, byte[] context) {
        try {
            Cipher cipher = Cipher.getInstance(CIPHER);
            cipher.init(Cipher.DECRYPT_MODE, key, new GCMParameterSpec(TAG_BITS, sealed, 0, NONCE_BYTES));
            cipher.updateAAD(context);
            return cipher.doFinal(sealed, NONCE_BYTES, sealed.length - NONCE_BYTES);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("Stored data doesn't open with axlecause.identity-key", e);
        }
    }

    /** What {@link #close} has made with this context; empty where somebody else made it. */
    public Optional<byte[]> tryOpen(byte[] sealed, byte[] context) {
        if (sealed.length < NONCE_BYTES + TAG_BITS / Byte.SIZE) {
            return Optional.empty();
        }
        try {
            return Optional.of(open(sealed, context));
        } catch (IllegalStateException foreign) {
            return Optional.empty();
        }
    }

    /** A digest that nobody without the key can compute. */
    public byte[] digest(String text) {
        return hmac(key, text);
    }

    /** Random bytes that nobody can foresee. */
    public static byte[] randomBytes(int count) {
        byte[] bytes = new byte[count];
        RANDOM.nextBytes(bytes);
        return bytes;
    }

    private static byte[] key(String identityKey) {
        try {
            byte[] key = Base64.getDecoder().decode(identityKey);
            if (key.length == KEY_BYTES) {
                return key;
            }
        } catch (IllegalArgumentException e) {
            throw noKey();
        }
        throw noKey();
    }

    private static EndedAtStartException noKey() {
        return CannotStart.because(
                "AXLECAUSE_IDENTITY_KEY must hold 32 random bytes in base64 (openssl rand -base64 32):"
                        + " personal data is encrypted and found again by it, and secrets of subscriptions are encrypted."
                        + " Keep it as safe as the database, and never change it.");
    }

    private static byte[] hmac(SecretKeySpec key, String text) {
        try {
            Mac mac = Mac.getInstance(MAC);
            mac.init(key);
            return mac.doFinal(text.getBytes(StandardCharsets.UTF_8));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("Every Java platform has HMAC with SHA-256", e);
        }
    }
}
