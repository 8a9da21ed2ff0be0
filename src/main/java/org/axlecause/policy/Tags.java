package org.axlecause.policy;

import java.util.Arrays;
import java.util.Set;

/** Reads If-Match (RFC 9110, 13.1.1). */
public final class Tags {

    private Tags() {}

    /** Whether the header names that tag, or any. */
    public static boolean match(String header, String tag) {
        return Arrays.stream(header.split(",", -1))
                .map(String::strip)
                .anyMatch(Set.of("*", "\"" + tag + "\"")::contains);
    }
}
