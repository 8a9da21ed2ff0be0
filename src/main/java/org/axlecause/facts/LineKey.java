package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * What makes a scope line the same line over the life of a case.
 *
 * @param action what is done
 * @param item to what
 * @param place where
 */
public record LineKey(ScopeAction action, ScopeItem item, Place place) implements Shown, Comparable<LineKey> {

    /** The identifier of the line, such as {@code renew-wheel-cylinder-axle-2-left}. */
    public String id() {
        return action + "-" + item + "-" + place.id();
    }

    /** Reads the identifier of a line; null where the text is none. */
    public static @Nullable LineKey ofId(String id) {
        for (ScopeAction action : ScopeAction.values()) {
            for (ScopeItem item : ScopeItem.values()) {
                String start = action + "-" + item + "-";
                Place place = id.startsWith(start) ? Place.ofId(id.substring(start.length())) : null;
                if (place != null) {
                    return new LineKey(action, item, place);
                }
            }
        }
        return null;
    }

    @Override
    public String shown() {
        return action + " " + item + " at " + place;
    }

    /** By place, then item, then action. */
    @Override
    public int compareTo(LineKey other) {
        int byPlace = place.compareTo(other.place);
        if (byPlace != 0) {
            return byPlace;
        }
        int byItem = item.compareTo(other.item);
        return byItem != 0 ? byItem : action.compareTo(other.action);
    }
}
