package org.axlecause.shared;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** The body of every refusal and fault: a problem document by RFC 9457 with a stable code and all causes at once. */
public record Problem(
        String type,
        String title,
        int status,
        @Nullable String detail,
        @Nullable String instance,
        String code,
        List<Cause> causes) {

    /** The media type of a problem document. */
    public static final String MEDIA_TYPE = "application/problem+json";

    private static final String TYPE_PREFIX = "urn:axlecause:problem:";

    public Problem {
        causes = List.copyOf(causes);
    }

    /** A problem whose type follows from its code. */
    public static Problem of(int status, String code, String title, @Nullable String detail, List<Cause> causes) {
        return new Problem(TYPE_PREFIX + code, title, status, detail, null, code, causes);
    }

    /** The same problem, said about one request or entry. */
    public Problem about(@Nullable String newInstance) {
        return new Problem(type, title, status, detail, newInstance, code, causes);
    }

    /** One thing that is wrong: where (RFC 6901) and what, with the value, what was expected and what to do. */
    public record Cause(String pointer, String text) {}
}
