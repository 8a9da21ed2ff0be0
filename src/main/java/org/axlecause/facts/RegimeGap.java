package org.axlecause.facts;

/**
 * Something that the regime needs and nobody has said.
 *
 * @param code what is open
 * @param place where
 * @param says the gap in words
 * @param resolve what would close it
 */
public record RegimeGap(QuestionCode code, Place place, String says, String resolve) implements Shown {

    @Override
    public String shown() {
        return says;
    }
}
