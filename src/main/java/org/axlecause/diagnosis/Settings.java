package org.axlecause.diagnosis;

import java.util.List;
import java.util.Map;

/**
 * How causes are weighed.
 *
 * @param categories vehicle categories whose causes are known
 * @param strengths probability of each strength letter
 * @param drumOldFrom age in years from which drum brakes count as old
 * @param discOldFrom age in years from which disc brakes count as old
 * @param leastWeight weight of a cause whose weight is none
 * @param expectedFaults faults worth repairing on a presented vehicle
 * @param mostPrior no cause is likelier before anything is seen
 * @param findingLeak chance of a finding that no cause left
 * @param explainedAway what a cause keeps of its odds once it is explained away
 * @param afterRecentWork how many times likelier a cause is after recent work
 * @param withoutWork what a cause that only work brings about keeps of its odds where no recent work is told of
 * @param shownTogether chance that a cause that shows at all shows at each of its places
 * @param shownFrom probability from which a suspected cause is shown
 * @param settledAt probability of a cause that ends the asking for its symptoms
 * @param accountsFrom how surely a settled cause shows a symptom for which it ends the asking by itself
 * @param rivalFrom probability from which other causes of the same symptom keep the asking going together
 * @param sameScopeAt probability of one scope that ends the asking
 * @param background probability below which a cause is left aside when scopes are compared
 * @param leastInformation bits that make a check worth naming
 * @param most most checks named at a time
 * @param accessMinutes minutes from each level of access to the next
 * @param riskMinutes minutes that each risk weighs
 */
record Settings(
        List<String> categories,
        Map<String, Double> strengths,
        int drumOldFrom,
        int discOldFrom,
        double leastWeight,
        double expectedFaults,
        double mostPrior,
        double findingLeak,
        double explainedAway,
        double afterRecentWork,
        double withoutWork,
        double shownTogether,
        double shownFrom,
        double settledAt,
        double accountsFrom,
        double rivalFrom,
        double sameScopeAt,
        double background,
        double leastInformation,
        int most,
        List<Integer> accessMinutes,
        Map<Risk, Integer> riskMinutes) {}
