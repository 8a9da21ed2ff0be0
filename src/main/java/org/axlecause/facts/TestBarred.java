package org.axlecause.facts;

/**
 * While this stands, no step that runs or loads the brake is planned: no rollers, no hold, no road.
 *
 * @param place where
 * @param because ground
 */
public record TestBarred(Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return "no roller, hold or road step: " + String.join(", ", because.facts());
    }
}
