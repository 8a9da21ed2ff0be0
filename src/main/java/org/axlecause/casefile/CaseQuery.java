package org.axlecause.casefile;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.facts.CaseStatus;
import org.axlecause.facts.CauseCode;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.jspecify.annotations.Nullable;

/** Reads the parameters of a list and says at once what is wrong with them. */
final class CaseQuery {

    static final int USUAL_LIMIT = 50;
    static final int MOST = 200;
    private static final int LONGEST_WORDS = 100;

    private final List<Problem.Cause> causes = new ArrayList<>();

    /** The filter that the parameters say, within the sites that the actor may see. */
    CaseFilter filter(
            @Nullable String site,
            @Nullable String status,
            @Nullable String cause,
            @Nullable String from,
            @Nullable String to,
            @Nullable String judging,
            @Nullable String words,
            Actor actor) {
        CaseFilter filter = new CaseFilter(
                sites(site, actor),
                code("status", status, codes(CaseStatus.values())),
                code("cause", cause, codes(CauseCode.values())),
                day("from", from),
                day("to", to),
                judging(judging),
                words(words));
        LocalDate first = filter.from();
        LocalDate end = filter.to();
        if (first != null && end != null && !first.isBefore(end)) {
            wrong("to", end.toString(), "a day after `from`, because it is not included itself");
        }
        return filter;
    }

    /** The size of a page. */
    int limit(@Nullable String text) {
        String given = blank(text);
        if (given == null) {
            return USUAL_LIMIT;
        }
        if (given.matches("[0-9]{1,3}")) {
            int limit = Integer.parseInt(given);
            if (limit >= 1 && limit <= MOST) {
                return limit;
            }
        }
        wrong("limit", given, "a number from 1 to " + MOST);
        return USUAL_LIMIT;
    }

    /** Where the page begins. */
    @Nullable
    ListPosition position(@Nullable String cursor) {
        String given = blank(cursor);
        ListPosition position = given == null ? null : ListPosition.of(given).orElse(null);
        if (given != null && position == null) {
            wrong("cursor", given, "the cursor of a Link header of this list");
        }
        return position;
    }

    /** The position in the history after which a page begins, counted down. */
    int before(@Nullable String cursor) {
        String given = blank(cursor);
        if (given == null) {
            return Integer.MAX_VALUE;
        }
        if (given.matches("[0-9]{1,9}")) {
            return Integer.parseInt(given);
        }
        wrong("cursor", given, "the cursor of a Link header of this list");
        return Integer.MAX_VALUE;
    }

    /** Refuses with everything that was wrong. */
    void check() {
        if (!causes.isEmpty()) {
            throw RefusedException.invalidPayload(causes);
        }
    }

    private static @Nullable List<String> sites(@Nullable String site, Actor actor) {
        String wanted = blank(site);
        Set<String> allowed = actor.sites();
        if (wanted != null) {
            return actor.maySee(wanted) ? List.of(wanted) : List.of();
        }
        return allowed == null ? null : allowed.stream().sorted().toList();
    }

    private @Nullable String code(String name, @Nullable String text, List<String> codes) {
        String given = blank(text);
        if (given != null && !codes.contains(given)) {
            wrong(name, given, "one of " + String.join(", ", codes));
        }
        return given;
    }

    private @Nullable Judging judging(@Nullable String text) {
        List<String> codes = codes(Judging.values());
        String given = code("judging", text, codes);
        return given == null || !codes.contains(given) ? null : Judging.of(given);
    }

    private @Nullable LocalDate day(String name, @Nullable String text) {
        String given = blank(text);
        if (given == null) {
            return null;
        }
        try {
            return LocalDate.parse(given);
        } catch (DateTimeParseException e) {
            wrong(name, given, "a day such as 2026-03-02");
            return null;
        }
    }

    private @Nullable String words(@Nullable String text) {
        String given = blank(text);
        if (given != null && (given.length() > LONGEST_WORDS || given.indexOf(0) >= 0)) {
            wrong("q", "a text of " + given.length() + " characters", "at most " + LONGEST_WORDS + " characters");
        }
        return given;
    }

    private void wrong(String name, String value, String expected) {
        causes.add(new Problem.Cause(
                "/" + name,
                "`" + name + "` is \"" + value + "\"; expected is " + expected + ". Correct it or leave it out."));
    }

    private static List<String> codes(Enum<?>... values) {
        return Stream.of(values).map(Enum::toString).collect(Collectors.toList());
    }

    private static @Nullable String blank(@Nullable String text) {
        return text == null || text.isBlank() ? null : text.strip();
    }

    static <T> List<T> page(List<T> rows, int limit) {
        return rows.size() <= limit ? rows : List.copyOf(rows.subList(0, limit));
    }
}
