package org.axlecause.diagnosis;

import java.util.List;
import org.axlecause.facts.UnlookedPart;

/**
 * What the weighing of causes gave.
 *
 * @param causes confirmed causes, then suspected ones by falling probability, then ruled-out ones
 * @param nextChecks checks worth making, best first
 * @param questions what stays open
 * @param unlooked parts of opened wheels that nobody has looked at well enough to tell
 */
public record Diagnosis(
        List<RankedCause> causes, List<NextCheck> nextChecks, List<Question> questions, List<UnlookedPart> unlooked) {

    /** What can be said where no cause is weighed. */
    public static final Diagnosis NONE = new Diagnosis(List.of(), List.of(), List.of(), List.of());

    public Diagnosis {
        causes = List.copyOf(causes);
        nextChecks = List.copyOf(nextChecks);
        questions = List.copyOf(questions);
        unlooked = List.copyOf(unlooked);
    }
}
