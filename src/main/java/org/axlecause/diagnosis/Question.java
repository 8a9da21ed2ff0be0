package org.axlecause.diagnosis;

import java.util.Comparator;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;

/**
 * What the weighing of causes leaves open.
 *
 * @param code what is open
 * @param place where
 * @param says the question in words
 * @param resolve what would resolve it
 */
public record Question(QuestionCode code, Place place, String says, String resolve) implements Comparable<Question> {

    private static final Comparator<Question> ORDER = Comparator.comparing(Question::code)
            .thenComparing(Question::place)
            .thenComparing(Question::says)
            .thenComparing(Question::resolve);

    @Override
    public int compareTo(Question other) {
        return ORDER.compare(this, other);
    }
}
