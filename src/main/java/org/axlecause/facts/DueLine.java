package org.axlecause.facts;

/**
 * A scope line that is to be done unless it is refused: what follows from doing it follows from this.
 *
 * @param line the line
 * @param necessity necessity of what follows from it
 * @param because ground
 */
public record DueLine(LineKey line, Necessity necessity, Because because) implements Conclusion {

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

    /** Whether a part is taken off and another one fitted. */
    public boolean isExchange() {
        return line.isExchange();
    }

    /** Whether the work opens the hydraulic system. */
    public boolean isOpeningHydraulics() {
        return line.isOpeningHydraulics();
    }

    /** Whether the work takes off or changes the shoes of a drum brake or what carries them. */
    public boolean isWorkOnShoes() {
        return line.isWorkOnShoes();
    }

    /** Whether a drum or a calliper has to come off for it. */
    public boolean isStripDown() {
        return line.isStripDown();
    }

    /** Whether brake force may differ after the work, so that only a test on the rollers proves it. */
    public boolean isChangingForce() {
        return line.isChangingForce();
    }

    @Override
    public String shown() {
        return line.shown() + " (" + necessity + ")";
    }
}
