package org.axlecause.pages;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Whom a sheet is for. */
public enum Audience {
    CUSTOMER,
    WORKSHOP;

    static Optional<Audience> of(String word) {
        return Stream.of(values())
                .filter(audience -> audience.toString().equals(word))
                .findFirst();
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
