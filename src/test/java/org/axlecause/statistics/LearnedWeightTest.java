package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.axlecause.statistics.ConfidenceLevel.OF_95_PERCENT;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.axlecause.diagnosis.PriorGroup;
import org.axlecause.facts.CauseCode;
import org.axlecause.shared.YamlException;
import org.axlecause.shared.YamlFile;
import org.axlecause.statistics.LearnedWeight.Seen;
import org.junit.jupiter.api.Test;

class LearnedWeightTest {

    private static final LearningTerms TERMS = new LearningTerms(200, 50, 0.25);
    private static final CauseCode CAUSE = CauseCode.DRUM_OVAL;
    private static final CauseCode OTHER = CauseCode.DRUM_ECCENTRIC;

    /** By hand: a book share of a twentieth worth 200 cases, and 40 of 200 cases: (10 + 40) / 400. */
    @Test
    void as_many_cases_as_the_book_is_worth_move_the_weight_half_way() {
        LearnedWeight learned = LearnedWeight.of(seen(0.05, 40, 200), TERMS);

        assertThat(learned.belief()).isEqualTo(new BetaShare(50, 350));
        assertThat(learned.belief().mean()).isCloseTo((0.05 + 0.20) / 2, within(1e-15));
        assertThat(learned.learnedWeight()).isCloseTo(3 * 0.125 / 0.05, within(1e-12));
        assertThat(learned.bookWeight()).isEqualTo(3);
    }

    @Test
    void cases_that_say_what_the_book_says_leave_the_weight_where_it_is() {
        assertThat(LearnedWeight.of(seen(0.05, 50, 1000), TERMS).learnedWeight())
                .isCloseTo(3, within(1e-12));
    }

    @Test
    void a_cause_that_was_never_confirmed_becomes_rare_but_not_impossible() {
        LearnedWeight learned = LearnedWeight.of(seen(0.05, 0, 100_000), TERMS);

        assertThat(learned.learnedWeight()).isPositive().isLessThan(0.01);
    }

    @Test
    void too_few_cases_move_nothing() {
        LearnedWeight few = LearnedWeight.of(seen(0.05, 49, 49), TERMS);
        LearnedWeight enough = LearnedWeight.of(seen(0.05, 49, 50), TERMS);

        assertThat(few.learnedWeight()).isEqualTo(3);
        assertThat(few.belief()).isEqualTo(BetaShare.around(0.05, 200));
        assertThat(enough.learnedWeight()).isGreaterThan(3);
    }

    /** Uniform on 0 to 1: its quantiles are its probabilities; Beta(2, 1) has the square for its distribution. */
    @Test
    void a_belief_says_where_the_share_lies() {
        assertThat(new BetaShare(1, 1).credible(OF_95_PERCENT).low()).isCloseTo(0.025, within(1e-12));
        assertThat(new BetaShare(1, 1).credible(OF_95_PERCENT).high()).isCloseTo(0.975, within(1e-12));
        assertThat(new BetaShare(2, 1).credible(OF_95_PERCENT).low()).isCloseTo(Math.sqrt(0.025), within(1e-12));
        assertThatIllegalArgumentException().isThrownBy(() -> new BetaShare(0, 1));
    }

    @Test
    void a_proposal_keeps_book_and_learned_values_side_by_side_in_the_order_of_the_catalogue() {
        ProposedModel model = ProposedModel.of(
                Instant.EPOCH,
                TERMS,
                List.of(
                        new Seen(OTHER, PriorGroup.DRUM_OLD, 1, 0.02, new Proportion(1, 100)),
                        new Seen(CAUSE, PriorGroup.DISC_OLD, 2, 0.03, new Proportion(2, 100)),
                        new Seen(CAUSE, PriorGroup.DRUM_OLD, 3, 0.04, new Proportion(3, 100))),
                scored(0.3),
                scored(0.4));

        assertThat(model.weights()).extracting(LearnedWeight::cause).containsExactly(CAUSE, CAUSE, OTHER);
        assertThat(model.weights())
                .extracting(LearnedWeight::group)
                .containsExactly(PriorGroup.DRUM_OLD, PriorGroup.DISC_OLD, PriorGroup.DRUM_OLD);
        assertThat(model.forecastsBetter()).as("0.4 told of a half, before 0.3").isTrue();
    }

    @Test
    void before_and_after_are_compared_on_the_same_cases() {
        Calibration fewer = Calibration.of(List.of(new Calibration.Forecasts(0.3, new Proportion(1, 2))), 10);

        assertThatIllegalArgumentException()
                .isThrownBy(() -> ProposedModel.of(Instant.EPOCH, TERMS, List.of(), scored(0.3), fewer))
                .withMessageContaining("held out");
    }

    /** Drawn truths that the book has wrong: what was learned from one half forecasts the other half better. */
    @Test
    void learned_shares_forecast_cases_held_out_better_than_a_wrong_book() {
        SplittableRandom chance = new SplittableRandom(20_260_803);
        List<Calibration.Forecasts> before = new ArrayList<>();
        List<Calibration.Forecasts> after = new ArrayList<>();
        for (int index = 0; index < 20; index++) {
            double truth = 0.02 + 0.2 * chance.nextDouble();
            double book = Math.min(0.9, truth * (index % 2 == 0 ? 0.4 : 2.2));
            LearnedWeight learned =
                    LearnedWeight.of(new Seen(CAUSE, PriorGroup.DRUM_OLD, 3, book, drawn(chance, truth, 3000)), TERMS);
            Proportion heldOut = drawn(chance, truth, 1000);
            before.add(new Calibration.Forecasts(book, heldOut));
            after.add(new Calibration.Forecasts(learned.belief().mean(), heldOut));
        }

        ProposedModel model = ProposedModel.of(
                Instant.EPOCH, TERMS, List.of(), Calibration.of(before, 10), Calibration.of(after, 10));

        assertThat(model.forecastsBetter()).isTrue();
        assertThat(model.after().expectedCalibrationError())
                .isLessThan(model.before().expectedCalibrationError() / 4);
    }

    @Test
    void the_release_says_how_much_cases_count() {
        assertThat(LearningTerms.released()).isEqualTo(TERMS);
    }

    @Test
    void terms_that_are_missing_or_without_source_are_refused() {
        assertThatThrownByFile("prior-strength: {value: 1, verified: judgement}", "source");
        assertThatThrownByFile("prior-strength: {value: 1, verified: judgement, source: x}", "least-cases");
        assertThatIllegalArgumentException().isThrownBy(() -> new LearningTerms(0, 50, 0.25));
        assertThatIllegalArgumentException().isThrownBy(() -> new LearningTerms(200, 50, 1));
    }

    private static void assertThatThrownByFile(String text, String missing) {
        assertThatExceptionOfType(YamlException.class)
                .isThrownBy(() -> LearningTerms.of(YamlFile.ofText("learning", text)))
                .withMessageContaining(missing);
    }

    private static Calibration scored(double told) {
        return Calibration.of(List.of(new Calibration.Forecasts(told, new Proportion(5, 10))), 10);
    }

    private static Seen seen(double bookShare, long confirmed, long of) {
        return new Seen(CAUSE, PriorGroup.DRUM_OLD, 3, bookShare, new Proportion(confirmed, of));
    }

    private static Proportion drawn(SplittableRandom chance, double share, int size) {
        int count = 0;
        for (int draw = 0; draw < size; draw++) {
            count += chance.nextDouble() < share ? 1 : 0;
        }
        return new Proportion(count, size);
    }
}
