package org.axlecause.facts;

/**
 * A wheel whose brake is taken apart for a scope line.
 *
 * @param place the wheel
 * @param line the line
 * @param drum whether its brake is a drum
 * @param because ground
 */
public record WorkedWheel(Place place, LineKey line, boolean drum, Because because) implements Conclusion {

    @Override
    public String shown() {
        return line.shown();
    }
}
