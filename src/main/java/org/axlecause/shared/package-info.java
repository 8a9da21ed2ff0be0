/** Problem body, clock, ids, units and JSON settings; nothing with a trade word in it. */
@NullMarked
package org.axlecause.shared;

import org.jspecify.annotations.NullMarked;
