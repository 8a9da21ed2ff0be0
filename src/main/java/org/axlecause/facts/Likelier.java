package org.axlecause.facts;

/**
 * Circumstances, such as recent work or a doubtful test, make a cause likelier than the age of the vehicle does.
 *
 * @param code the cause
 * @param place where
 * @param because ground
 */
public record Likelier(CauseCode code, Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return code + " likelier at " + place;
    }
}
