package org.axlecause.facts;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;

/**
 * The repair policy a case is judged by, all layers merged.
 *
 * @param name name of the policy
 * @param version its version
 * @param clauses clauses, each with where its value comes from
 * @param thresholds workshop thresholds
 * @param limits limits of figures beside the law
 * @param needed what must be on record before a line counts as scoped
 * @param consents whose consent a line needs, by action and item joined by a blank
 * @param hoursAtMost hours that a line may be charged at most, by action and item joined by a blank
 * @param locked clauses that a site may not depart from
 */
public record Policy(
        String name,
        int version,
        List<PolicyClause> clauses,
        List<Threshold> thresholds,
        List<WorkshopLimit> limits,
        List<NeededEvidence> needed,
        Map<String, Party> consents,
        Map<String, BigDecimal> hoursAtMost,
        List<ClauseCode> locked) {

    public Policy {
        clauses = List.copyOf(clauses);
        thresholds = List.copyOf(thresholds);
        limits = List.copyOf(limits);
        needed = List.copyOf(needed);
        consents = Map.copyOf(consents);
        hoursAtMost = Map.copyOf(hoursAtMost);
        locked = List.copyOf(locked);
    }

    /** A policy of clauses and thresholds alone. */
    public Policy(String name, int version, List<PolicyClause> clauses, List<Threshold> thresholds) {
        this(name, version, clauses, thresholds, List.of(), List.of(), Map.of(), Map.of(), List.of());
    }
}
