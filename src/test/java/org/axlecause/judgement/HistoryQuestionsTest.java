package org.axlecause.judgement;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.List;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.History;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PolicyAdopted;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Recorded;
import org.junit.jupiter.api.Test;

class HistoryQuestionsTest {

    private static final Policy BASELINE = new Policy("baseline", 1, List.of(), List.of());

    @Test
    void a_policy_version_that_the_case_is_not_judged_by_is_asked_about() {
        assertThat(questions(adopted("a", "2026-03-02T08:00:00Z", "chain-wide", 4)))
                .contains(QuestionCode.POLICY_UNKNOWN);
        assertThat(questions(adopted("a", "2026-03-02T08:00:00Z", "baseline", 2)))
                .contains(QuestionCode.POLICY_UNKNOWN);
    }

    @Test
    void adopting_the_version_that_judges_raises_no_question() {
        assertThat(questions(adopted("a", "2026-03-02T08:00:00Z", "baseline", 1)))
                .doesNotContain(QuestionCode.POLICY_UNKNOWN);
        assertThat(questions()).doesNotContain(QuestionCode.POLICY_UNKNOWN);
    }

    @Test
    void the_version_adopted_last_counts() {
        Recorded other = adopted("a", "2026-03-02T08:00:00Z", "chain-wide", 4);
        Recorded own = adopted("b", "2026-03-02T09:00:00Z", "baseline", 1);

        assertThat(questions(other, own)).doesNotContain(QuestionCode.POLICY_UNKNOWN);
        assertThat(questions(own, adopted("c", "2026-03-02T10:00:00Z", "chain-wide", 4)))
                .contains(QuestionCode.POLICY_UNKNOWN);
    }

    private static List<QuestionCode> questions(Recorded... entries) {
        StandingHistory history = StandingHistory.of(new History("QS-1", List.of(entries)));
        return HistoryQuestions.of(history, null, BASELINE).stream()
                .map(ShownQuestion::code)
                .toList();
    }

    private static Recorded adopted(String id, String time, String policy, int version) {
        return new Recorded(
                new EntryId("/sites/quay-street", id),
                OffsetDateTime.parse(time),
                new PolicyAdopted(policy, version, "the chain moved on", "workshop"),
                null);
    }
}
