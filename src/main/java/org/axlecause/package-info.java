/** The way in: one main class. */
@NullMarked
package org.axlecause;

import org.jspecify.annotations.NullMarked;
