package org.axlecause.facts;

/**
 * How many final tests of the service brake an axle has seen; only the second call of the rule base sees it.
 *
 * @param place the axle
 * @param number 1 for the first
 */
public record RetestRound(Place place, int number) implements Shown {

    @Override
    public String shown() {
        return "final test " + number + " of " + place;
    }
}
