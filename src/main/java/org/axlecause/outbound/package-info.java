/** Sends what changed: outbox, webhooks, Kafka. */
@NullMarked
package org.axlecause.outbound;

import org.jspecify.annotations.NullMarked;
