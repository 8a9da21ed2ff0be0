/** Ties the heads of all cases and every administrative act of a tenant into one chain, signs its head and verifies it. */
@NullMarked
package org.axlecause.audit;

import org.jspecify.annotations.NullMarked;
