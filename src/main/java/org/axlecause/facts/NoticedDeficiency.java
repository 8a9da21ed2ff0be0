package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * A deficiency on the inspection notice.
 *
 * @param item item number in the regime's document
 * @param text words on the notice
 */
public record NoticedDeficiency(String item, @Nullable String text) {}
