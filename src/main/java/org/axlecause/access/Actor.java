package org.axlecause.access;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Who acts in a request; the name stands beside every event.
 *
 * @param tenant the tenant acted for
 * @param name id of the key, or {@code open} where access is open
 * @param roles what may be done
 * @param sites codes of the only sites that may be touched; null for all
 */
public record Actor(
        String tenant,
        String name,
        Set<Role> roles,
        @Nullable Set<String> sites) {

    public Actor {
        roles = Set.copyOf(roles);
        sites = sites == null ? null : Set.copyOf(sites);
    }

    /** Whether one of these roles, or {@link Role#ADMIN}, is held. */
    public boolean hasAny(Set<Role> wanted) {
        return roles.contains(Role.ADMIN) || wanted.stream().anyMatch(roles::contains);
    }

    /** Whether this site may be touched. */
    public boolean maySee(String site) {
        return sites == null || sites.contains(site);
    }
}
