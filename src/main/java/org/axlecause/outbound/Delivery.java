package org.axlecause.outbound;

import java.util.UUID;

/**
 * An event claimed for one attempt at one subscription.
 *
 * @param event id of the event
 * @param claim marks this attempt; whoever comes later has another
 * @param attempt number of this attempt, from 1
 * @param body the event as JSON
 */
record Delivery(UUID event, UUID claim, int attempt, String body) {}
