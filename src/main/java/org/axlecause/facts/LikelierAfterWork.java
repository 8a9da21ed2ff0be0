package org.axlecause.facts;

/**
 * Recent work at a place makes a cause likelier than the age of the vehicle does.
 *
 * @param code the cause
 * @param place where
 * @param because ground
 */
public record LikelierAfterWork(CauseCode code, Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return code + " likelier after recent work at " + place;
    }
}
