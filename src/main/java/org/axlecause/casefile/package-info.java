/** Keeps each case's history and its latest judgement, and serves the case document. */
@NullMarked
package org.axlecause.casefile;

import org.jspecify.annotations.NullMarked;
