package org.axlecause.diagnosis;

import java.util.List;

/**
 * What the weighing of causes gave.
 *
 * @param causes confirmed causes, then suspected ones by falling probability, then ruled-out ones
 * @param nextChecks checks worth making, best first
 * @param questions what stays open
 */
public record Diagnosis(List<RankedCause> causes, List<NextCheck> nextChecks, List<Question> questions) {

    public Diagnosis {
        causes = List.copyOf(causes);
        nextChecks = List.copyOf(nextChecks);
        questions = List.copyOf(questions);
    }
}
