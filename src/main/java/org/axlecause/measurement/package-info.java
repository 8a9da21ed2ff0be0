/** Makes figures out of roller tests: traces, imbalance, efficiency, fluctuation, lags, shape of the loss, uncertainty. */
@NullMarked
package org.axlecause.measurement;

import org.jspecify.annotations.NullMarked;
