/** Ranks candidate causes by probability and finds the check that tells most per minute. */
@NullMarked
package org.axlecause.diagnosis;

import org.jspecify.annotations.NullMarked;
