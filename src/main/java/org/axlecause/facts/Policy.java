package org.axlecause.facts;

import java.util.List;

/**
 * The repair policy a case is judged by, all layers merged.
 *
 * @param name name of the policy
 * @param version its version
 * @param clauses clauses, each with where its value comes from
 * @param thresholds workshop thresholds
 */
public record Policy(String name, int version, List<PolicyClause> clauses, List<Threshold> thresholds) {

    public Policy {
        clauses = List.copyOf(clauses);
        thresholds = List.copyOf(thresholds);
    }
}
