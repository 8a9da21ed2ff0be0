package org.axlecause.facts;

/**
 * A cause as the diagnosis left it; only the second call of the rule base sees it.
 *
 * @param code the cause
 * @param place where
 * @param standing how settled it is
 * @param root whether it is the most upstream cause of its chain
 */
public record SettledCause(CauseCode code, Place place, CauseStanding standing, boolean root) implements Shown {

    @Override
    public String shown() {
        return code + " " + standing + " at " + place;
    }
}
