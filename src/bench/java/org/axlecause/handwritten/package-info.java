/** The conclusions of the rule base drawn by plain Java, which benchmarks measure the rule base against. */
@NullMarked
package org.axlecause.handwritten;

import org.jspecify.annotations.NullMarked;
