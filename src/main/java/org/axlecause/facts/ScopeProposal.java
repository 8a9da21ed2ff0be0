package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * A line of work that a cause, a part's state or an obstacle calls for.
 *
 * @param action what is done
 * @param item to what
 * @param place where
 * @param extent how far it reaches
 * @param necessity whether it must, should or may be done
 * @param clause policy clause that decides it; null where the trade alone does
 * @param because ground
 */
public record ScopeProposal(
        ScopeAction action,
        ScopeItem item,
        Place place,
        ScopeExtent extent,
        Necessity necessity,
        @Nullable ClauseCode clause,
        Because because)
        implements Conclusion {

    /** What makes it the same line over the life of a case. */
    public LineKey line() {
        return new LineKey(action, item, place);
    }

    @Override
    public String shown() {
        return action + " " + item + " at " + place + " (" + necessity + ")";
    }
}
