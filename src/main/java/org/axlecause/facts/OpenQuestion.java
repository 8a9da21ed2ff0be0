package org.axlecause.facts;

/**
 * A contradiction, a gap, a place not looked at or a doubtful test, with what would resolve it.
 *
 * @param code what is open
 * @param place where
 * @param says the question in words
 * @param resolve what would resolve it
 * @param because ground
 */
public record OpenQuestion(QuestionCode code, Place place, String says, String resolve, Because because)
        implements Conclusion, Comparable<OpenQuestion> {

    @Override
    public String shown() {
        return says;
    }

    @Override
    public int compareTo(OpenQuestion other) {
        int byCode = code.compareTo(other.code);
        if (byCode != 0) {
            return byCode;
        }
        int byPlace = place.compareTo(other.place);
        return byPlace != 0 ? byPlace : (says + because).compareTo(other.says + other.because);
    }
}
