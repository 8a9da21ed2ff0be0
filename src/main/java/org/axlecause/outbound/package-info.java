/** Sends what changed: outbox and webhooks. */
@NullMarked
package org.axlecause.outbound;

import org.jspecify.annotations.NullMarked;
