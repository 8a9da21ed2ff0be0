package org.axlecause.facts;

import org.jspecify.annotations.Nullable;

/**
 * The site departs from a policy clause on this case.
 *
 * @param clause code of the clause
 * @param line id of the scope line concerned
 * @param reason why
 * @param by who answers for it
 */
public record DepartureRecorded(ClauseCode clause, @Nullable String line, String reason, String by) implements Entry {}
