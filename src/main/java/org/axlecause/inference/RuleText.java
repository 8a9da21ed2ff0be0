package org.axlecause.inference;

import org.jspecify.annotations.Nullable;

/**
 * A rule as a person reads it.
 *
 * @param id stable id, such as SYM-010
 * @param layer layer it belongs to
 * @param holds when it holds, one sentence
 * @param reason why, one clause
 * @param source document and section, or whose knowledge it is
 * @param since first day it holds, ISO 8601
 * @param until last day it holds, ISO 8601
 */
public record RuleText(
        String id,
        Layer layer,
        String holds,
        String reason,
        String source,
        String since,
        @Nullable String until) {}
