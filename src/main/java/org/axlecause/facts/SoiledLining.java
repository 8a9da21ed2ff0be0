package org.axlecause.facts;

/**
 * Linings of an axle that liquid has reached.
 *
 * @param place the axle
 * @param because ground
 */
public record SoiledLining(Place place, Because because) implements Conclusion {

    @Override
    public String shown() {
        return String.join(", ", because.facts());
    }
}
