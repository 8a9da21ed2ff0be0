package org.axlecause.intake;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads times by RFC 3339: the offset is there, small letters are fine, a leap second is the second after it. */
final class EventTime {

    private static final Pattern TIME =
            Pattern.compile("(\\d{4}-\\d{2}-\\d{2})[Tt](\\d{2}:\\d{2}):(\\d{2})(\\.\\d{1,9})?"
                    + "([Zz]|[+-](?:0\\d|1[0-7]):[0-5]\\d|[+-]18:00)");
    private static final int LEAP_SECOND = 60;
    private static final int EARLIEST_YEAR = 1900;
    private static final int LATEST_YEAR = 9999;

    private EventTime() {}

    static Optional<OffsetDateTime> of(String text) {
        Matcher parts = TIME.matcher(text);
        if (!parts.matches()) {
            return Optional.empty();
        }
        int second = Integer.parseInt(parts.group(3));
        if (second > LEAP_SECOND || (second == LEAP_SECOND && !parts.group(2).endsWith(":59"))) {
            return Optional.empty();
        }
        String fraction = parts.group(4) == null || second == LEAP_SECOND ? "" : parts.group(4);
        try {
            LocalDateTime local = LocalDateTime.parse(parts.group(1) + "T" + parts.group(2) + ":00" + fraction)
                    .plusSeconds(second);
            ZoneOffset offset =
                    ZoneOffset.of(parts.group(5).toUpperCase(Locale.ROOT).replace("-00:00", "Z"));
            return local.getYear() < EARLIEST_YEAR || local.getYear() > LATEST_YEAR
                    ? Optional.empty()
                    : Optional.of(local.atOffset(offset));
        } catch (DateTimeException notATime) {
            return Optional.empty();
        }
    }
}
