/** The one pure function from history to judgement. */
@NullMarked
package org.axlecause.judgement;

import org.jspecify.annotations.NullMarked;
