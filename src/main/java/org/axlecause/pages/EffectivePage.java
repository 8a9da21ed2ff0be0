package org.axlecause.pages;

import java.util.List;
import org.axlecause.policy.PolicyViews.EffectiveView;
import org.jspecify.annotations.Nullable;

/**
 * A version as it holds at a site.
 *
 * @param view the version and the site
 * @param site name of the site
 * @param groups clauses by the layer that their value comes from, the nearest first
 */
public record EffectivePage(EffectiveView view, String site, List<Group> groups) {

    /**
     * Clauses whose value comes from one layer.
     *
     * @param layer its code
     * @param title what it is
     * @param clauses its clauses
     */
    public record Group(String layer, String title, List<Clause> clauses) {}

    /**
     * A clause.
     *
     * @param key its code, with what it is set for
     * @param means what it means
     * @param says its value
     * @param lockedBy layer that has locked it; null where none has
     * @param source source of a value of the baseline
     */
    public record Clause(
            String key,
            String means,
            String says,
            @Nullable String lockedBy,
            @Nullable String source) {}
}
