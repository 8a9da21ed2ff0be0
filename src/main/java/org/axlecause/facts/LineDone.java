package org.axlecause.facts;

/**
 * A scope line whose work was reported done; only the second call of the rule base sees it.
 *
 * @param line the line
 */
public record LineDone(LineKey line) implements Shown {

    @Override
    public String shown() {
        return line.shown() + " done";
    }
}
