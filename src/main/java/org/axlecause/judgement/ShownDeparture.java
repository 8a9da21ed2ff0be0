package org.axlecause.judgement;

import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.EntryId;
import org.jspecify.annotations.Nullable;

/**
 * A departure from a clause of the policy, as it stands on the case.
 *
 * @param entry its entry
 * @param clause the clause
 * @param line id of the line; null where it holds wherever the clause works
 * @param reason why, in the words of the site
 * @param acts whether it has an effect; a departure from a locked clause has none
 */
public record ShownDeparture(
        EntryId entry, ClauseCode clause, @Nullable String line, String reason, boolean acts) {}
