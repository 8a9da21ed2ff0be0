/** Cohort questions over all cases, with intervals. */
@NullMarked
package org.axlecause.statistics;

import org.jspecify.annotations.NullMarked;
