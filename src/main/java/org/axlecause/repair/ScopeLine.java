package org.axlecause.repair;

import java.util.List;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.LineStanding;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Party;
import org.axlecause.facts.Place;
import org.axlecause.facts.Reason;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.jspecify.annotations.Nullable;

/**
 * A line of the scope.
 *
 * @param id made of action, item and place, so that the same line keeps it
 * @param action what is done
 * @param item to what
 * @param place where
 * @param extent how far it reaches
 * @param quantity how much
 * @param necessity whether it must, should or may be done
 * @param standing where it stands
 * @param mergedInto line that takes it along; null otherwise
 * @param policyClause policy clause that decides it; null where the trade alone does
 * @param estimate what it costs; null where there is no price list
 * @param usualHours usual hours of the work on its own; null where none are known
 * @param decision decision that stands on it
 * @param agreementBy who must agree before it is worked on; null where nobody is asked any more
 * @param sinceAgreement what is new against what the customer last agreed; null where nothing is
 * @param awaits what the policy wants on record before the line counts as scoped; null where nothing
 * @param because grounds
 */
public record ScopeLine(
        String id,
        ScopeAction action,
        ScopeItem item,
        Place place,
        ScopeExtent extent,
        Measure quantity,
        Necessity necessity,
        LineStanding standing,
        @Nullable String mergedInto,
        @Nullable ClauseCode policyClause,
        @Nullable Estimate estimate,
        @Nullable Span usualHours,
        @Nullable StandingDecision decision,
        @Nullable Party agreementBy,
        @Nullable Change sinceAgreement,
        @Nullable List<String> awaits,
        List<Reason> because) {

    public ScopeLine {
        awaits = awaits == null ? null : List.copyOf(awaits);
        because = List.copyOf(because);
    }

    /** What makes it the same line over the life of a case. */
    public LineKey key() {
        return new LineKey(action, item, place);
    }

    /** Whether its work belongs to the plan: required, scoped and not refused, or agreed, or done. */
    public boolean isPlanned() {
        return switch (standing) {
            case AGREED, DONE -> true;
            case PROPOSED -> necessity == Necessity.REQUIRED && awaits == null;
            default -> false;
        };
    }
}
