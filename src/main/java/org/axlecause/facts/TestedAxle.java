package org.axlecause.facts;

/**
 * The latest valid test of a brake shows this axle; only the second call of the rule base sees it.
 *
 * @param place the axle
 * @param brake brake that was tested
 * @param stage stage of that test
 */
public record TestedAxle(Place place, BrakeSystem brake, Stage stage) implements Shown {

    @Override
    public String shown() {
        return brake + " brake of " + place + " tested (" + stage + ")";
    }
}
