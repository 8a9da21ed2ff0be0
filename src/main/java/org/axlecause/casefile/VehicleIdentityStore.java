package org.axlecause.casefile;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Base64;
import java.util.Collection;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.crypto.Cipher;
import javax.crypto.Mac;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.axlecause.shared.CannotStart;
import org.axlecause.shared.EndedAtStartException;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/**
 * The only place of personal data. Each value gets one random token per tenant, found again by a keyed digest, so that
 * a returning vehicle and a repeated event are recognised; the original lies beside it encrypted and can be erased.
 */
@ApplicationScoped
public class VehicleIdentityStore {

    private static final String INSERT = """
            INSERT INTO vehicle_identity (tenant_id, digest, kind, token, original, created_at)
            VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (tenant_id, digest) DO NOTHING
            """;

    private static final String TOKEN = "SELECT token FROM vehicle_identity WHERE tenant_id = ? AND digest = ?";

    private static final String ORIGINAL =
            "SELECT digest, original FROM vehicle_identity WHERE tenant_id = ? AND token = ?";

    private static final String ERASE = "DELETE FROM vehicle_identity WHERE tenant_id = ? AND token = ?";

    private static final String MAC = "HmacSHA256";
    private static final String CIPHER = "AES/GCM/NoPadding";
    private static final int KEY_BYTES = 32;
    private static final int TOKEN_BYTES = 16;
    private static final int NONCE_BYTES = 12;
    private static final int TAG_BITS = 128;
    private static final HexFormat HEX = HexFormat.of();

    private final TenantTransaction transaction;
    private final Clock clock;
    private final SecretKeySpec digestKey;
    private final SecretKeySpec cipherKey;
    private final SecureRandom random = new SecureRandom();

    VehicleIdentityStore(
            TenantTransaction transaction,
            Clock clock,
            @ConfigProperty(name = "axlecause.identity-key") Optional<String> identityKey) {
        this.transaction = transaction;
        this.clock = clock;
        byte[] key = key(identityKey.orElse(""));
        this.digestKey = derived(key, "digest");
        this.cipherKey = derived(key, "cipher");
    }

    /** The tokens of these values in the open transaction's tenant, new ones for values never seen. */
    public Map<PersonalValue, String> tokens(Collection<PersonalValue> values) {
        if (values.isEmpty()) {
            return Map.of();
        }
        return transaction.jdbc((connection, tenant) -> {
            // Why sorted by digest: two transactions that bring the same new vehicles must not wait for each other.
            Map<String, PersonalValue> sorted = new TreeMap<>();
            values.forEach(value -> sorted.put(HEX.formatHex(digest(tenant, value)) + value.text(), value));
            Map<PersonalValue, String> tokens = new TreeMap<>();
            for (PersonalValue value : sorted.values()) {
                tokens.put(value, token(connection, tenant, value));
            }
            return tokens;
        });
    }

    /** The value behind a token, as it was first sent; empty when it was erased. */
    public Optional<String> original(String token) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(ORIGINAL)) {
                query.setString(1, tenant);
                query.setString(2, token);
                try (ResultSet row = query.executeQuery()) {
                    return row.next() ? Optional.of(decrypted(row.getBytes(2), row.getBytes(1))) : Optional.empty();
                }
            }
        });
    }

    /** Erases the value behind a token; whether there was one. Histories and their chains don't change. */
    public boolean erase(String token) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement delete = connection.prepareStatement(ERASE)) {
                delete.setString(1, tenant);
                delete.setString(2, token);
                return delete.executeUpdate() > 0;
            }
        });
    }

    private String token(Connection connection, String tenant, PersonalValue value) throws SQLException {
        byte[] digest = digest(tenant, value);
        Optional<String> known = find(connection, tenant, digest);
        if (known.isPresent()) {
            return known.get();
        }
        try (PreparedStatement insert = connection.prepareStatement(INSERT)) {
            insert.setString(1, tenant);
            insert.setBytes(2, digest);
            insert.setString(3, value.kind());
            insert.setString(4, HEX.formatHex(randomBytes(TOKEN_BYTES)));
            insert.setBytes(5, encrypted(value.text(), digest));
            insert.setObject(6, OffsetDateTime.now(clock));
            insert.executeUpdate();
        }
        return find(connection, tenant, digest).orElseThrow();
    }

    private static Optional<String> find(Connection connection, String tenant, byte[] digest) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(TOKEN)) {
            query.setString(1, tenant);
            query.setBytes(2, digest);
            try (ResultSet row = query.executeQuery()) {
                return row.next() ? Optional.of(row.getString(1)) : Optional.empty();
            }
        }
    }

    /** Spelling with blanks, dashes or small letters doesn't make another vehicle. */
    private byte[] digest(String tenant, PersonalValue value) {
        String plain = value.text().toUpperCase(Locale.ROOT).replaceAll("[\\s._-]", "");
        return hmac(digestKey, tenant + '\n' + value.kind() + '\n' + plain);
    }

    private byte[] encrypted(String text, byte[] digest) {
        try {
            byte[] nonce = randomBytes(NONCE_BYTES);
            Cipher cipher = Cipher.getInstance(CIPHER);
            cipher.init(Cipher.ENCRYPT_MODE, cipherKey, new GCMParameterSpec(TAG_BITS, nonce));
            cipher.updateAAD(digest);
            byte[] sealed = cipher.doFinal(text.getBytes(StandardCharsets.UTF_8));
            return ByteBuffer.allocate(NONCE_BYTES + sealed.length)
                    .put(nonce)
                    .put(sealed)
                    .array();
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("Personal data can't be encrypted", e);
        }
    }

    private String decrypted(byte[] stored, byte[] digest) {
        try {
            Cipher cipher = Cipher.getInstance(CIPHER);
            cipher.init(Cipher.DECRYPT_MODE, cipherKey, new GCMParameterSpec(TAG_BITS, stored, 0, NONCE_BYTES));
            cipher.updateAAD(digest);
            return new String(cipher.doFinal(stored, NONCE_BYTES, stored.length - NONCE_BYTES), StandardCharsets.UTF_8);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("Stored personal data doesn't open with axlecause.identity-key", e);
        }
    }

    private byte[] randomBytes(int count) {
        byte[] bytes = new byte[count];
        random.nextBytes(bytes);
        return bytes;
    }

    void atStart(@Observes StartupEvent event) {
        // Why an empty observer: it makes the container build this store at start, so that a missing key shows then.
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
                        + " personal data is encrypted and found again by it. Keep it as safe as the database, and never"
                        + " change it.");
    }

    private static SecretKeySpec derived(byte[] key, String purpose) {
        return new SecretKeySpec(hmac(new SecretKeySpec(key, MAC), "axlecause " + purpose), "AES");
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
