package org.axlecause.fleet;

/**
 * From the hand at the parking lever to the shoes, by a cable to each wheel.
 *
 * @param leverRatio ratio of the lever
 * @param cableEfficiency share of the pull that a cable passes on
 * @param shoeLeverRatio ratio of the lever at the shoes
 */
public record ParkingActuation(double leverRatio, double cableEfficiency, double shoeLeverRatio) {

    /** Roller force of one wheel at a hand force. */
    public double force(double hand, FrictionPair pair, double drumRadius, double tyreRadius) {
        double atShoes = hand * leverRatio * cableEfficiency / 2 * shoeLeverRatio;
        return atShoes * pair.factor() * drumRadius / tyreRadius;
    }
}
