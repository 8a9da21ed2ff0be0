/** Pages and printed sheets over the same use cases; no logic of their own. */
@NullMarked
package org.axlecause.pages;

import org.jspecify.annotations.NullMarked;
