package org.axlecause.judgement;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.Policy;
import org.jspecify.annotations.Nullable;

/** Recalls stored cases of the open transaction's tenant, so that they can be judged by another policy. */
public interface PastCases {

    /**
     * Which cases are meant.
     *
     * @param sites codes of the only sites; null for all
     * @param from first day of presentation; null for any
     * @param to first day of presentation that no longer counts; null for any
     * @param cause code of a cause that is not ruled out; null for any
     */
    record Wanted(
            @Nullable List<String> sites,
            @Nullable LocalDate from,
            @Nullable LocalDate to,
            @Nullable String cause) {}

    /**
     * A run of references, both ends included.
     *
     * @param first the first reference
     * @param last the last one
     * @param cases how many cases lie between
     */
    record Run(String first, String last, int cases) {}

    /**
     * A case as it would be judged today: by the policy that judges it, at today's prices.
     *
     * @param matter what it is judged of
     * @param region region of its site; null where it has none
     * @param judgedOf what a judgement of it rests on beside its entries, in a line; null where it is none of the stored case
     */
    record Past(
            Matter matter,
            @Nullable String region,
            @Nullable String judgedOf) {

        /** The same by another policy. */
        public Matter by(Policy policy) {
            return matter.by(policy);
        }
    }

    /** The wanted cases in order of reference, cut into runs of so many. */
    List<Run> runs(Wanted wanted, int size);

    /** The wanted cases of a run, in order of reference. */
    List<Past> recall(Wanted wanted, Run run);

    /** Documents of those among these cases that would be judged the same today, by reference. */
    Map<String, String> lastingDocuments(List<Past> cases);

    /** The judgement of a past case as the case document that would be served. */
    String document(Past past, Judgement judgement);
}
