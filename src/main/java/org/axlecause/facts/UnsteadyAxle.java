package org.axlecause.facts;

/**
 * An axle that reads differently from run to run by itself, so that another reading in a second run proves no cause that
 * only the first run showed.
 *
 * @param place the axle
 * @param because ground
 */
public record UnsteadyAxle(Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return place + " reads differently from run to run by itself";
    }
}
