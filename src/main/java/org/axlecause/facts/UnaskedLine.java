package org.axlecause.facts;

/**
 * A line that stays on the list although nothing on record asks for it now.
 *
 * @param line the line
 * @param because ground: what was decided or done
 */
public record UnaskedLine(LineKey line, Because because) implements Conclusion {

    @Override
    public String shown() {
        return line.shown() + " unasked";
    }
}
