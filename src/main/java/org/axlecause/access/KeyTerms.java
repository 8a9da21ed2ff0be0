package org.axlecause.access;

import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a key is to be good for.
 *
 * @param name what it is for, such as the system that sends with it
 * @param role what its bearer may do
 * @param sites codes of the only sites that its bearer may touch; null for all
 * @param expiresAt from when on it is refused; null for never
 */
public record KeyTerms(
        String name,
        Role role,
        @Nullable List<String> sites,
        @Nullable OffsetDateTime expiresAt) {

    public KeyTerms {
        sites = sites == null ? null : List.copyOf(sites);
    }
}
