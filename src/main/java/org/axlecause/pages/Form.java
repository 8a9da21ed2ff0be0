package org.axlecause.pages;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.jspecify.annotations.Nullable;

/** The fields of a form that was sent; collects what is wrong with them. */
final class Form {

    private static final Pattern NUMBER = Pattern.compile("[+-]?[0-9]{1,12}([.,][0-9]{1,6})?");

    private static final long LONGEST_WAIT = Duration.ofDays(1).toSeconds();

    private final Map<String, List<String>> fields;
    private final List<Problem.Cause> causes = new ArrayList<>();

    Form(Map<String, List<String>> fields) {
        this.fields = fields;
    }

    /** The text of a field without blanks around it; empty where it is missing. */
    String text(String name) {
        List<String> values = all(name);
        return values.isEmpty() ? "" : values.get(0).strip();
    }

    /** Every value of a field. */
    List<String> all(String name) {
        return fields.getOrDefault(name, List.of());
    }

    /** Names of the fields that begin so, in order, without that beginning. */
    List<String> namesAfter(String beginning) {
        return fields.keySet().stream()
                .filter(name -> name.startsWith(beginning))
                .map(name -> name.substring(beginning.length()))
                .sorted()
                .toList();
    }

    /** The text of a field that must be filled in. */
    String needed(String name, String words) {
        String text = text(name);
        if (text.isEmpty()) {
            wrong(name, words + " is missing. Fill it in.");
        }
        return text;
    }

    /** The number in a field; null where it is empty or no number, which is noted as wrong. */
    @Nullable
    BigDecimal number(String name, String words) {
        String text = text(name).replace(" ", "");
        if (text.isEmpty()) {
            return null;
        }
        if (!NUMBER.matcher(text).matches()) {
            wrong(name, words + " is \"" + text(name) + "\"; expected is a number such as 1250 or 1.6.");
            return null;
        }
        return new BigDecimal(text.replace(',', '.'));
    }

    /** Where the entry of this form comes from; it may have waited for its connection for at most a day. */
    SendEntries.Sent sent(String source, String reference) {
        BigDecimal ago = number("ago", "The time since it was written");
        check();
        return new SendEntries.Sent(
                source,
                reference,
                text("entry"),
                ago == null ? 0 : Math.max(0, Math.min(ago.longValue(), LONGEST_WAIT)));
    }

    void wrong(String name, String text) {
        causes.add(new Problem.Cause("/" + name, text));
    }

    /** Refuses with all that was wrong. */
    void check() {
        if (!causes.isEmpty()) {
            throw RefusedException.invalidPayload(causes);
        }
    }
}
