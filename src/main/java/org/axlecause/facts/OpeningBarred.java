package org.axlecause.facts;

/**
 * While this stands, no check is recommended for which a wheel comes off that is still on.
 *
 * @param because ground
 */
public record OpeningBarred(Because because) implements Conclusion {

    @Override
    public String shown() {
        return "no wheel is opened yet: " + String.join(", ", because.facts());
    }
}
