/** Benchmarks of what users wait for, and the table that they are shown in; no part of the service. */
@NullMarked
package org.axlecause.bench;

import org.jspecify.annotations.NullMarked;
