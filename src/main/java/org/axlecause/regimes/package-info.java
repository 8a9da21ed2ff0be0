/** Answers which limit, by which formula, from which source, holds for this vehicle on this day. */
@NullMarked
package org.axlecause.regimes;

import org.jspecify.annotations.NullMarked;
