package org.axlecause.facts;

/**
 * Takes back an entry; both stay in the history.
 *
 * @param target identity of the entry taken back
 * @param reason why
 */
public record EntryWithdrawn(EntryId target, String reason) implements Entry {}
