package org.axlecause.facts;

/**
 * While this stands, no check is recommended that runs or loads the brake: no rollers, no hold, no road.
 *
 * @param place where
 * @param because ground
 */
public record DrivenCheckBarred(Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return "no roller, hold or road check: " + String.join(", ", because.facts());
    }
}
