package org.axlecause.facts;

/**
 * The first final test of new linings may miss the target of bedded ones.
 *
 * @param place the axle
 * @param because ground
 */
public record BeddingAllowed(Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return "new linings not bedded in at " + place;
    }
}
