package org.axlecause.outbound;

import java.time.Duration;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What became of an attempt.
 *
 * @param status status of the endpoint's answer; 0 where there was none
 * @param retryAfter how long the endpoint asks to be left alone; null where it doesn't
 * @param words what is told about it
 */
record Answer(int status, @Nullable Duration retryAfter, String words) {

    private static final int GONE = 410;
    private static final int SUCCESS_FROM = 200;
    private static final int SUCCESS_TO = 300;

    /** Too many requests, bad gateway, gateway time-out: the endpoint has too much to do. */
    private static final Set<Integer> OVERLOADED = Set.of(429, 502, 504);

    static Answer ofStatus(int status, @Nullable Duration retryAfter) {
        return new Answer(status, retryAfter, "HTTP " + status);
    }

    static Answer none(String words) {
        return new Answer(0, null, words);
    }

    boolean isSuccess() {
        return status >= SUCCESS_FROM && status < SUCCESS_TO;
    }

    /** Whether the endpoint wants no event ever again. */
    boolean isGone() {
        return status == GONE;
    }

    /** Whether nothing else is sent to this endpoint for a while either. */
    boolean asksForRest() {
        return OVERLOADED.contains(status) || retryAfter != null;
    }
}
