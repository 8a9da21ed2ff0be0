package org.axlecause.facts;

/**
 * The decision that stands on a scope line; only the second call of the rule base sees it.
 *
 * @param line the line
 * @param decision what was decided last
 * @param by who decided
 */
public record DecidedLine(LineKey line, Decision decision, Party by) implements Shown {

    @Override
    public String shown() {
        return line.shown() + " " + decision + " by the " + by;
    }
}
