package org.axlecause.judgement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.regimes.BrakeTests.rollers;
import static org.axlecause.regimes.Vehicles.TODAY;
import static org.axlecause.regimes.Vehicles.aSmallVan;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Conclusion;
import org.axlecause.facts.Deficiency;
import org.axlecause.facts.DrivenCheckBarred;
import org.axlecause.facts.EarlierFigure;
import org.axlecause.facts.ExpectedForce;
import org.axlecause.facts.ExplainedAway;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.History;
import org.axlecause.facts.Likelier;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.OpeningBarred;
import org.axlecause.facts.Place;
import org.axlecause.facts.Proof;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.Refutation;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Surface;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.UnsteadyAxle;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.WheelReading;
import org.axlecause.inference.Conclusions;
import org.axlecause.inference.RuleBase;
import org.axlecause.inference.RuleBench;
import org.axlecause.measurement.RegimeFigures;
import org.axlecause.policy.PolicyFile;
import org.axlecause.regimes.Regimes;
import org.junit.jupiter.api.Test;

/** What a test cannot show is left out of the first call, so no rule may draw anything from it. */
class FirstCallTest {

    private static final List<Class<? extends Conclusion>> DRAWN = List.of(
            Deficiency.class,
            Symptom.class,
            SymptomObservable.class,
            OpenQuestion.class,
            Proof.class,
            Refutation.class,
            ExplainedAway.class,
            Likelier.class,
            DrivenCheckBarred.class,
            OpeningBarred.class,
            UnsteadyAxle.class);

    private final RuleBase rules = RuleBench.all();

    @Test
    void no_rule_draws_anything_from_a_figure_that_can_not_be_shown() {
        Vehicle vehicle = aSmallVan();
        RegimeTerms terms = Regimes.released().find("gb-annual").termsFor(vehicle, TODAY);
        Recorded first = run(Stage.ARRIVAL, "rt-1", "900", "180", "0.4", "300");
        Recorded second = run(Stage.DIAGNOSTIC, "rt-2", "1500", "300", "0.1", "900");
        StandingHistory history = StandingHistory.of(new History("QS-1", List.of(first, second)));
        Tests tests = Tests.of(history, RegimeFigures.of(history.entries(), vehicle, terms));
        List<Object> facts = new ArrayList<>(List.of(vehicle));
        facts.addAll(PolicyFile.baseline().thresholds());
        terms.facts().forEach(facts::addAll);
        tests.figures(Tests.BEFORE).stream().filter(Figure::observable).forEach(facts::add);
        tests.earlierFigures(Tests.BEFORE).stream()
                .filter(earlier -> earlier.figure().observable())
                .forEach(facts::add);
        for (Place wheel : List.of(Place.ofWheel(2, Side.LEFT), Place.ofWheel(2, Side.RIGHT))) {
            facts.add(new ExpectedForce(
                    wheel, second.id(), Stage.DIAGNOSTIC, BrakeSystem.SERVICE, new BigDecimal("1500")));
        }
        List<Object> withUnshown = new ArrayList<>(facts);
        withUnshown.addAll(unshown(first, second));

        Conclusions drawn = rules.conclude(facts);
        Conclusions drawnWithUnshown = rules.conclude(withUnshown);

        assertThat(drawn.of(Symptom.class)).isNotEmpty();
        assertThat(drawn.of(Deficiency.class)).isNotEmpty();
        assertThat(DRAWN)
                .allSatisfy(type -> assertThat(drawnWithUnshown.of(type))
                        .as("%s", type.getSimpleName())
                        .isEqualTo(drawn.of(type)));
    }

    /** Every kind at every place, for both runs and brakes, as the figure that counts and as an earlier one. */
    private static List<Object> unshown(Recorded first, Recorded second) {
        List<Object> unshown = new ArrayList<>();
        for (FigureKind kind : FigureKind.values()) {
            for (BrakeSystem brake : BrakeSystem.values()) {
                for (int axle = 1; axle <= 2; axle++) {
                    for (Place place : List.of(
                            Place.VEHICLE,
                            Place.ofAxle(axle),
                            Place.ofWheel(axle, Side.LEFT),
                            Place.ofWheel(axle, Side.RIGHT))) {
                        unshown.add(unshown(kind, second, Stage.DIAGNOSTIC, brake, place));
                        unshown.add(new EarlierFigure(unshown(kind, first, Stage.ARRIVAL, brake, place)));
                    }
                }
            }
        }
        return unshown;
    }

    private static Figure unshown(FigureKind kind, Recorded test, Stage stage, BrakeSystem brake, Place place) {
        return new Figure(kind, test.id(), stage, brake, place, null, null, false, null);
    }

    private static Recorded run(Stage stage, String id, String peak, String drag, String swing, String weaker) {
        return rollers(
                BrakeSystem.SERVICE,
                stage,
                Surface.DRY,
                null,
                id,
                new AxleReading(1, new BigDecimal("800"), read("1500", "20", "0.05"), read("1480", "20", "0.05"), null),
                new AxleReading(2, new BigDecimal("500"), read(weaker, "20", "0.05"), read(peak, drag, swing), null));
    }

    private static WheelReading read(String peak, String drag, String swing) {
        return new WheelReading(new BigDecimal(peak), new BigDecimal(drag), new BigDecimal(swing), null, null);
    }
}
