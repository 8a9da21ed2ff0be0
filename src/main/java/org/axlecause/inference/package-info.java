/** Runs the rule base and hides every trace of the engine. */
@NullMarked
package org.axlecause.inference;

import org.jspecify.annotations.NullMarked;
