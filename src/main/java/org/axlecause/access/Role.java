package org.axlecause.access;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a key or a person may do. */
public enum Role {
    /** Sends events of a workshop system. */
    SENDER,
    /** Works in the bay: sends what was measured, found and done, reads cases. */
    TECHNICIAN,
    /** Speaks with the customer: reads cases and sheets, sends decisions. */
    DESK,
    /** Writes and publishes policies. */
    POLICY,
    /** Asks statistics. */
    ANALYST,
    /** May do everything in the tenant. */
    ADMIN;

    /** The role with this code; empty when there is none. */
    public static Optional<Role> of(String code) {
        return Stream.of(values()).filter(role -> role.toString().equals(code)).findFirst();
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
