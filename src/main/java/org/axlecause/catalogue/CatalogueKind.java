package org.axlecause.catalogue;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What the catalogue lists. */
public enum CatalogueKind {
    COMPONENTS,
    CONDITIONS,
    CHECKS,
    CAUSES,
    SYMPTOMS,
    REGIMES,
    RULES,
    CAUTIONS,
    STEPS,
    SETTINGS;

    /** The list that this word names in an address; empty when there is none. */
    public static Optional<CatalogueKind> of(String word) {
        return Stream.of(values()).filter(kind -> kind.toString().equals(word)).findFirst();
    }

    /** The word in the address. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
