package org.axlecause.intake;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.Problem;
import org.jspecify.annotations.Nullable;

/**
 * What the sender is told about one event.
 *
 * @param source its source, as far as it could be read
 * @param id its id, as far as it could be read
 * @param standing what became of it
 * @param caseLink address of its case
 * @param judging {@code failed} where the event is stored and judging its case faulted
 * @param problem why it was refused or failed
 * @param warnings what is odd about it and was accepted all the same; pointers lead into its data
 */
public record Receipt(
        @Nullable String source,
        @Nullable String id,
        Standing standing,
        @JsonProperty("case") @Nullable String caseLink,
        @Nullable String judging,
        @Nullable Problem problem,
        @Nullable List<Problem.Cause> warnings) {

    static Receipt stored(
            EntryId id, Standing standing, String reference, boolean judged, List<Problem.Cause> warnings) {
        return new Receipt(
                id.source(),
                id.id(),
                standing,
                link(reference),
                judged ? null : "failed",
                null,
                warnings.isEmpty() ? null : List.copyOf(warnings));
    }

    static Receipt refused(EntryId id, String reference, Problem problem) {
        return new Receipt(id.source(), id.id(), Standing.REFUSED, link(reference), null, problem, null);
    }

    static Receipt failed(EntryId id, String reference, Problem problem) {
        return new Receipt(id.source(), id.id(), Standing.FAILED, link(reference), null, problem, null);
    }

    static Receipt unread(Attempt attempt, Problem problem) {
        return new Receipt(attempt.source(), attempt.id(), Standing.REFUSED, null, null, problem, null);
    }

    /** Whether the event is in the history now. */
    @JsonIgnore
    public boolean isStored() {
        return standing == Standing.ACCEPTED || standing == Standing.DUPLICATE;
    }

    private static String link(String reference) {
        return "/v1/cases/" + reference;
    }
}
