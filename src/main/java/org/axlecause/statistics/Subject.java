package org.axlecause.statistics;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What questions are about. */
public enum Subject {
    CAUSES,
    REPAIRS,
    RETURNS,
    SITES,
    CHECKS;

    /** The subject with this code; empty when there is none. */
    public static Optional<Subject> of(String code) {
        return Stream.of(values())
                .filter(subject -> subject.toString().equals(code))
                .findFirst();
    }

    /** The code on the wire. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
