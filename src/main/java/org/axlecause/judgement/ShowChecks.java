package org.axlecause.judgement;

import java.util.List;
import org.axlecause.diagnosis.NextCheck;
import org.axlecause.facts.FindingStage;
import org.axlecause.judgement.ShownCheck.ShownAnswer;
import org.axlecause.shared.Recent;

/** Shows checks worth making; answers as events to fill in are the same for every case and kept. */
final class ShowChecks {

    private static final int MOST_KEPT = 2_000;

    private final Recent<AnswerList, List<ShownAnswer>> kept = new Recent<>(MOST_KEPT);

    ShownCheck shown(NextCheck next, FindingStage stage) {
        AnswerList answers = new AnswerList(next.answers(), stage);
        List<ShownAnswer> shown = kept.find(answers);
        return ShownCheck.of(next, shown == null ? kept.keep(answers, ShownAnswer.of(next, stage)) : shown);
    }

    /** One list of answers: to tell it from an equal one would cost more than to make what it is shown as. */
    private static final class AnswerList {

        private final List<NextCheck.Answer> list;
        private final FindingStage stage;

        AnswerList(List<NextCheck.Answer> list, FindingStage stage) {
            this.list = list;
            this.stage = stage;
        }

        @Override
        @SuppressWarnings("ReferenceEquality")
        public boolean equals(Object other) {
            return other instanceof AnswerList same && same.list == list && same.stage == stage;
        }

        @Override
        public int hashCode() {
            return 31 * System.identityHashCode(list) + stage.hashCode();
        }
    }
}
