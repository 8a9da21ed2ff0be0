package org.axlecause.facts;

/**
 * An obstacle that stands; only the second call of the rule base sees it.
 *
 * @param entry identity of its entry
 * @param component part that resists
 * @param condition how it resists
 * @param place where
 */
public record Obstacle(EntryId entry, Component component, Condition condition, Place place) implements Shown {

    /** How far work against it reaches. */
    public ScopeExtent extent() {
        return ScopeExtent.of(place);
    }

    @Override
    public String shown() {
        return "obstacle: " + component + " " + condition + " at " + place + " (" + entry.id() + ")";
    }
}
