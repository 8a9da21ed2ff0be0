/** Policy documents: layers, drafts, versions, trials, departures. */
@NullMarked
package org.axlecause.policy;

import org.jspecify.annotations.NullMarked;
