package org.axlecause.policy;

import org.jspecify.annotations.Nullable;

/**
 * A clause as it holds at a site.
 *
 * @param set what it sets
 * @param from layer that its value comes from
 * @param lockedBy layer that has locked it; null where none has
 */
record EffectiveClause(
        ClauseWanted set, Layer from, @Nullable Layer lockedBy) {}
