package org.axlecause.facts;

/**
 * A required scope line that was not reported done.
 *
 * @param line the line
 * @param because ground
 */
public record OpenLine(LineKey line, Because because) implements Conclusion {

    /** Where. */
    public Place place() {
        return line.place();
    }

    @Override
    public String shown() {
        return "open: " + line.shown();
    }
}
