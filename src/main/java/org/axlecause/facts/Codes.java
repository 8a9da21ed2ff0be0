package org.axlecause.facts;

import java.util.Locale;

/** Turns an enum constant into its kebab-case code. */
final class Codes {

    private Codes() {}

    static String kebab(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
