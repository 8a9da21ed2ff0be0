package org.axlecause.casefile;

import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.axlecause.shared.Seal;
import org.axlecause.shared.SqlArray;
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
            "SELECT digest, original, kind FROM vehicle_identity WHERE tenant_id = ? AND token = ?";

    private static final String TIE = """
            INSERT INTO case_identity (tenant_id, reference, token)
            SELECT ?, ?, t.token FROM unnest(?::text[]) AS t (token) ON CONFLICT DO NOTHING
            """;

    private static final String NAMED_BY =
            "SELECT token FROM case_identity WHERE tenant_id = ? AND reference = ? ORDER BY token";

    private static final String ERASE = "DELETE FROM vehicle_identity WHERE tenant_id = ? AND token = ?";

    private static final int TOKEN_BYTES = 16;
    private static final HexFormat HEX = HexFormat.of();

    private final TenantTransaction transaction;
    private final Clock clock;
    private final Seal digests;
    private final Seal cipher;

    VehicleIdentityStore(
            TenantTransaction transaction,
            Clock clock,
            @ConfigProperty(name = "axlecause.identity-key") Optional<String> identityKey) {
        this.transaction = transaction;
        this.clock = clock;
        this.digests = Seal.of(identityKey, "digest");
        this.cipher = Seal.of(identityKey, "cipher");
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

    /** Notes that a locked case names these tokens; what no case names any more goes with the last one. */
    public void tie(String reference, Collection<String> tokens) {
        if (tokens.isEmpty()) {
            return;
        }
        transaction.later(
                TIE,
                TenantTransaction.ANY_ROWS,
                transaction.tenant(),
                reference,
                new SqlArray("text", new TreeSet<>(tokens)));
    }

    /** The tokens that the events of a case name, in their own order, also those with nothing behind them any more. */
    List<String> namedBy(String reference) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(NAMED_BY)) {
                query.setString(1, tenant);
                query.setString(2, reference);
                List<String> tokens = new ArrayList<>();
                try (ResultSet rows = query.executeQuery()) {
                    while (rows.next()) {
                        tokens.add(rows.getString(1));
                    }
                }
                return tokens;
            }
        });
    }

    /** The value behind a token, as it was first sent; empty when it was erased. */
    public Optional<PersonalValue> original(String token) {
        return transaction.jdbc((connection, tenant) -> {
            try (PreparedStatement query = connection.prepareStatement(ORIGINAL)) {
                query.setString(1, tenant);
                query.setString(2, token);
                try (ResultSet row = query.executeQuery()) {
                    return row.next()
                            ? Optional.of(new PersonalValue(
                                    row.getString(3),
                                    new String(cipher.open(row.getBytes(2), row.getBytes(1)), StandardCharsets.UTF_8)))
                            : Optional.empty();
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
            insert.setString(4, HEX.formatHex(Seal.randomBytes(TOKEN_BYTES)));
            insert.setBytes(5, cipher.close(value.text().getBytes(StandardCharsets.UTF_8), digest));
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
        return digests.digest(tenant + '\n' + value.kind() + '\n' + plain);
    }

    void atStart(@Observes StartupEvent event) {
        // Why an empty observer: it makes the container build this store at start, so that a missing key shows then.
    }
}
