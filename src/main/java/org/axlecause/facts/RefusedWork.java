package org.axlecause.facts;

/**
 * A required line that was refused or put off, with what that means.
 *
 * @param line the line
 * @param decision what was decided
 * @param because ground
 */
public record RefusedWork(LineKey line, Decision decision, Because because) implements Conclusion {

    @Override
    public String shown() {
        return line.shown() + " " + decision;
    }
}
