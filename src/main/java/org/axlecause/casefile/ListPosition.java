package org.axlecause.casefile;

import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.Base64;
import java.util.Optional;

/** Where a page of the newest-first list ended; opaque on the wire. */
public record ListPosition(OffsetDateTime opened, String reference) {

    private static final char SEPARATOR = ' ';

    /** The position as a cursor. */
    public String cursor() {
        byte[] text = (opened.toString() + SEPARATOR + reference).getBytes(StandardCharsets.UTF_8);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(text);
    }

    /** The position that a cursor stands for; empty when it was not made here. */
    public static Optional<ListPosition> of(String cursor) {
        try {
            String text = new String(Base64.getUrlDecoder().decode(cursor), StandardCharsets.UTF_8);
            int end = text.indexOf(SEPARATOR);
            if (end < 0) {
                return Optional.empty();
            }
            return Optional.of(new ListPosition(OffsetDateTime.parse(text.substring(0, end)), text.substring(end + 1)));
        } catch (IllegalArgumentException | DateTimeException e) {
            return Optional.empty();
        }
    }
}
