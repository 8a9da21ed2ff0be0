package org.axlecause.shared;

import java.util.Collection;
import org.jspecify.annotations.Nullable;

/**
 * An array among the values of a statement that is sent later.
 *
 * @param type the database's name of its elements' type
 * @param elements in order; null where the array has none
 */
public record SqlArray(String type, Collection<? extends @Nullable Object> elements) {}
