package org.axlecause.facts;

/**
 * A wheel of an axle that has been opened.
 *
 * @param place the wheel
 * @param drum whether its brake is a drum
 * @param because ground
 */
public record OpenedWheel(Place place, boolean drum, Because because) implements Conclusion {

    @Override
    public String shown() {
        return place + " opened";
    }
}
