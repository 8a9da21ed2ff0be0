package org.axlecause.facts;

/**
 * A scope line that is to be done unless it is refused: what follows from doing it follows from this.
 *
 * @param line the line
 * @param necessity necessity of what follows from it
 */
public record DueLine(LineKey line, Necessity necessity) implements Shown {

    /** What is done. */
    public ScopeAction action() {
        return line.action();
    }

    /** To what. */
    public ScopeItem item() {
        return line.item();
    }

    /** Where. */
    public Place place() {
        return line.place();
    }

    @Override
    public String shown() {
        return line.shown() + " (" + necessity + ")";
    }
}
