package org.axlecause.access;

import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A key as it is stored; the key itself can't be got back from it.
 *
 * @param tenant whose it is
 * @param id the part of the key that may be shown
 * @param hash SHA-256 of the key in hex
 * @param role what its bearer may do
 * @param sites codes of the only sites that its bearer may touch; null for all
 * @param expiresAt from when on it is refused; null for never
 * @param revokedAt when it was revoked; null while it wasn't
 */
public record StoredKey(
        String tenant,
        String id,
        String hash,
        Role role,
        @Nullable List<String> sites,
        @Nullable OffsetDateTime expiresAt,
        @Nullable OffsetDateTime revokedAt) {

    public StoredKey {
        sites = sites == null ? null : List.copyOf(sites);
    }

    boolean isValidAt(OffsetDateTime moment) {
        return revokedAt == null && (expiresAt == null || moment.isBefore(expiresAt));
    }
}
