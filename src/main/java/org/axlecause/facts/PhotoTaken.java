package org.axlecause.facts;

/**
 * A finding on a part carries a photo; only the second call of the rule base sees it.
 *
 * @param entry identity of the finding's entry
 * @param item item that work on the part belongs to
 * @param place where
 */
public record PhotoTaken(EntryId entry, ScopeItem item, Place place) implements Shown {

    @Override
    public String shown() {
        return "photo of the " + item + " at " + place + " (" + entry.id() + ")";
    }
}
