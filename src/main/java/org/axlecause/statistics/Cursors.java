package org.axlecause.statistics;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Optional;

/** Where a page of an answer begins; opaque on the wire. */
final class Cursors {

    private static final String PREFIX = "row ";

    private Cursors() {}

    static String cursor(int position) {
        return Base64.getUrlEncoder()
                .withoutPadding()
                .encodeToString((PREFIX + position).getBytes(StandardCharsets.UTF_8));
    }

    /** The position of a cursor; empty where it was not made here. */
    static Optional<Integer> position(String cursor) {
        try {
            String text = new String(Base64.getUrlDecoder().decode(cursor), StandardCharsets.UTF_8);
            return text.matches(PREFIX + "[0-9]{1,8}")
                    ? Optional.of(Integer.parseInt(text.substring(PREFIX.length())))
                    : Optional.empty();
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
