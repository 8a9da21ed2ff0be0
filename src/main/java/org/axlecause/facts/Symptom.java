package org.axlecause.facts;

/**
 * A symptom that shows.
 *
 * @param code what shows
 * @param place where
 * @param strength how clearly
 * @param because ground
 */
public record Symptom(SymptomCode code, Place place, Strength strength, Because because) implements Conclusion {

    @Override
    public String shown() {
        return code + " at " + place;
    }
}
