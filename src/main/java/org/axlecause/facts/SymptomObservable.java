package org.axlecause.facts;

/**
 * The tests at hand can show a symptom; without the symptom itself it counts as absent.
 *
 * @param code the symptom
 * @param place where
 * @param because ground
 */
public record SymptomObservable(SymptomCode code, Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return code + " could show at " + place;
    }
}
