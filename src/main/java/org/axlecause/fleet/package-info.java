/** Invents a chain of workshops and its cases from a physical brake model, for the demo, load and the accuracy exam. */
@NullMarked
package org.axlecause.fleet;

import org.jspecify.annotations.NullMarked;
