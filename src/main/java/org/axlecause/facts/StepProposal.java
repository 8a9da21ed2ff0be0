package org.axlecause.facts;

/**
 * A work step that a scope line needs.
 *
 * @param step the step
 * @param place where
 * @param line the scope line that needs it
 * @param because ground
 */
public record StepProposal(StepCode step, Place place, LineKey line, Because because) implements Conclusion {

    @Override
    public String shown() {
        return step + " at " + place;
    }
}
