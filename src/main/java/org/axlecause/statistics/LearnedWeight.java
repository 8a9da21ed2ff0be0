package org.axlecause.statistics;

import org.axlecause.diagnosis.PriorGroup;
import org.axlecause.facts.CauseCode;

/**
 * The weight of a cause in a group of axles, as the book has it and as confirmed cases have moved it.
 *
 * @param cause what is weighed
 * @param group axles that the weight holds for
 * @param bookWeight weight in the cause model, relative to the other causes
 * @param bookShare mean probability that the book gives the cause before anything is seen, over the axles counted
 * @param confirmed axles on which the cause was confirmed, of those of cases with a confirmed cause
 * @param belief what is believed of the share after these cases; the book's own where the group has too few
 * @param learnedWeight the weight moved as the mean of the belief has moved from the book's share
 */
public record LearnedWeight(
        CauseCode cause,
        PriorGroup group,
        double bookWeight,
        double bookShare,
        Proportion confirmed,
        BetaShare belief,
        double learnedWeight) {

    /** What the book and the confirmed cases say of a cause in a group. */
    record Seen(CauseCode cause, PriorGroup group, double bookWeight, double bookShare, Proportion confirmed) {

        /** Whether it moves the weight. */
        boolean isEnough(LearningTerms terms) {
            return confirmed.of() >= terms.leastCases();
        }
    }

    /** The weight that the terms make of what was seen. */
    static LearnedWeight of(Seen seen, LearningTerms terms) {
        BetaShare book = BetaShare.around(seen.bookShare(), terms.priorStrength());
        boolean enough = seen.isEnough(terms);
        BetaShare belief = enough ? book.after(seen.confirmed()) : book;
        return new LearnedWeight(
                seen.cause(),
                seen.group(),
                seen.bookWeight(),
                seen.bookShare(),
                seen.confirmed(),
                belief,
                enough ? seen.bookWeight() * belief.mean() / seen.bookShare() : seen.bookWeight());
    }
}
