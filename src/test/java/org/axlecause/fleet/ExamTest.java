package org.axlecause.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.axlecause.facts.CauseCode;
import org.axlecause.inference.RuleBench;
import org.junit.jupiter.api.Test;

/**
 * The judge works through invented cases of a brake model that knows nothing of its rules. {@code -Dexam.cases=5000}
 * takes the whole exam; {@code -Dexam.shown=20} tells the first cases that went wrong; {@code -Dexam.seed=7} draws others,
 * to tune on.
 */
class ExamTest {

    private static final long SEED = Long.getLong("exam.seed", 20340817L);
    private static final int FEW = 500;
    private static final int WHOLE = 5000;
    /** What the shares of some hundred cases may fall short of those of thousands by chance. */
    private static final double SCATTER_OF_FEW = 0.08;

    private final FaultTable faults = FaultTable.onClassPath();

    @Test
    void the_judge_finds_what_is_wrong_with_invented_vehicles() {
        List<ExamCase> cases = new Exam(RuleBench.all(), faults).take(SEED, Integer.getInteger("exam.cases", FEW));
        ExamFigures figures = new ExamFigures(cases);
        print(cases, figures);

        double scatter = cases.size() < WHOLE ? SCATTER_OF_FEW : 0;
        assertThat(figures.firstThreeAfterRollers())
                .as("share with a fault among the first three after the roller tests alone, seed %d", SEED)
                .isGreaterThanOrEqualTo(0.70 - scatter);
        assertThat(figures.firstRightInSingleFaultCases())
                .as("share with the first cause right at the stop, one fault, seed %d", SEED)
                .isGreaterThanOrEqualTo(0.92 - scatter);
        assertThat(figures.bothFoundInDoubleFaultCases())
                .as("share with both found at the stop, two faults, seed %d", SEED)
                .isGreaterThanOrEqualTo(0.80 - scatter);
        assertThat(figures.medianChecks())
                .as("median of the checks beyond the looking-over of an opened axle, seed %d", SEED)
                .isLessThanOrEqualTo(4);
        assertThat(figures.calibrationError())
                .as("expected calibration error, seed %d", SEED)
                .isLessThanOrEqualTo(0.05);
        assertThat(figures.soundPartsConfirmedApartFromWrongAnswers())
                .as("sound parts called faulty though no answer was wrong, seed %d", SEED)
                .isEmpty();
    }

    @Test
    void every_cause_is_either_drawn_or_named_as_beyond_the_physics() {
        List<CauseCode> all = new ArrayList<>(faults.produced());
        all.addAll(faults.notProduced().keySet());

        assertThat(all).containsExactlyInAnyOrder(CauseCode.values());
        assertThat(faults.notProduced().values())
                .allSatisfy(reason -> assertThat(reason).isNotBlank());
    }

    @Test
    void a_seed_gives_the_same_case_whenever_it_is_drawn() {
        CaseDraw draw = CaseDraw.at(Exam.SITE, faults);

        DrawnCase one = draw.of(SEED);
        draw.of(SEED + 1);
        DrawnCase again = draw.of(SEED);

        assertThat(again.faults()).isEqualTo(one.faults());
        assertThat(again.presented()).isEqualTo(one.presented());
        assertThat(again.tests()).isEqualTo(one.tests());
    }

    @Test
    void the_forms_of_a_fault_share_out_its_cases() {
        assertThat(faults.kinds())
                .allSatisfy(kind -> assertThat(kind.forms().stream()
                                .mapToDouble(FaultForm::share)
                                .sum())
                        .as("forms of %s", kind.code())
                        .isEqualTo(1, within(1e-9)));
    }

    private static void print(List<ExamCase> cases, ExamFigures figures) {
        System.out.println("Exam from seed " + SEED + "\n" + figures.report());
        cases.stream()
                .filter(one -> one.single() ? !one.firstIsRight() : !one.allFound())
                .sorted(Comparator.comparing(ExamCase::anyWrong))
                .limit(Integer.getInteger("exam.shown", 0))
                .forEach(one -> System.out.println(one.told()));
        figures.falselyConfirmedApartFromWrongAnswers().stream()
                .limit(Integer.getInteger("exam.shown", 0))
                .forEach(one -> System.out.println("confirmed though not there: "
                        + one.falselyConfirmed().stream()
                                .map(cause -> cause.code() + " at " + cause.place())
                                .toList() + "\n" + one.told()));
    }
}
