package org.axlecause.facts;

/**
 * How an axle stands in this case; only the second call of the rule base sees it.
 *
 * @param axle the axle
 * @param opened whether a drum or calliper has come off
 * @param bothLookedAt whether linings, cylinders, hub seals and adjusters of both wheels were looked at
 */
public record AxleState(Axle axle, boolean opened, boolean bothLookedAt) implements Shown {

    @Override
    public String shown() {
        return "axle " + axle.number() + (opened ? " opened" : " not opened");
    }

    /** The axle as a place. */
    public Place place() {
        return Place.ofAxle(axle.number());
    }
}
