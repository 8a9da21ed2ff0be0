package org.axlecause.facts;

/**
 * A work step that the scope needs.
 *
 * @param step the step
 * @param place where
 * @param because ground
 */
public record StepProposal(StepCode step, Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return step + " at " + place;
    }
}
