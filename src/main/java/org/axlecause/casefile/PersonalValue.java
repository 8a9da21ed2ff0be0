package org.axlecause.casefile;

/**
 * A piece of personal data as it came in.
 *
 * @param kind what it is, such as {@code registration}
 * @param text the value as sent
 */
public record PersonalValue(String kind, String text) implements Comparable<PersonalValue> {

    @Override
    public int compareTo(PersonalValue other) {
        int byKind = kind.compareTo(other.kind);
        return byKind != 0 ? byKind : text.compareTo(other.text);
    }

    /** Without the value, which must not reach a log. */
    @Override
    public String toString() {
        return kind;
    }
}
