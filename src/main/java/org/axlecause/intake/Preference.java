package org.axlecause.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Reads the {@code Prefer} header (RFC 7240). */
final class Preference {

    private Preference() {}

    static boolean wantsRepresentation(List<String> headers) {
        return headers.stream()
                .flatMap(header -> Arrays.stream(header.split(",", -1)))
                .map(preference -> preference.split(";", -1)[0])
                .map(preference -> preference.replaceAll("[\\s\"]", "").toLowerCase(Locale.ROOT))
                .filter(preference -> preference.startsWith("return="))
                .findFirst()
                .filter("return=representation"::equals)
                .isPresent();
    }
}
