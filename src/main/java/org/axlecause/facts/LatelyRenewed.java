package org.axlecause.facts;

/**
 * A part that was renewed lately, so that it is not of the age of its twin; only the second call of the rule base sees it.
 *
 * @param item the part
 * @param place where
 */
public record LatelyRenewed(ScopeItem item, Place place) implements Shown {

    @Override
    public String shown() {
        return item + " renewed lately at " + place;
    }
}
