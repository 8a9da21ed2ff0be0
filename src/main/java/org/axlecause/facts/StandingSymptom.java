package org.axlecause.facts;

/**
 * A symptom that the latest test, look or complaint still shows; only the second call of the rule base sees it.
 *
 * @param code what shows
 * @param place where
 * @param strength how clearly it shows
 * @param says the symptom in words
 */
public record StandingSymptom(SymptomCode code, Place place, Strength strength, String says) implements Shown {

    @Override
    public String shown() {
        return says;
    }
}
