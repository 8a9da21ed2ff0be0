package org.axlecause.judgement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.axlecause.regimes.BrakeTests.axle;
import static org.axlecause.regimes.BrakeTests.rollers;
import static org.axlecause.regimes.Vehicles.TODAY;
import static org.axlecause.regimes.Vehicles.aSmallVan;

import java.math.BigDecimal;
import java.util.List;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.EarlierFigure;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.History;
import org.axlecause.facts.Place;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.Side;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Surface;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.WheelReading;
import org.axlecause.measurement.RegimeFigures;
import org.axlecause.regimes.Regimes;
import org.junit.jupiter.api.Test;

/** The latest run of an axle speaks, but what it cannot show stands as the run before showed it. */
class StandingFiguresTest {

    private static final Place REAR_LEFT = Place.ofWheel(2, Side.LEFT);

    @Test
    void a_second_run_of_one_axle_takes_nothing_from_the_whole_vehicle() {
        Recorded whole = run(Stage.ARRIVAL, "rt-1", axle(1, "800", "1500", "1500"), axle(2, "500", "900", "900"));
        Recorded rear = run(Stage.DIAGNOSTIC, "rt-2", axle(2, "500", "950", "950"));
        Tests tests = tests(whole, rear);

        assertThat(tests.figures(Tests.BEFORE))
                .filteredOn(figure ->
                        figure.kind() == FigureKind.EFFICIENCY && figure.place().equals(Place.VEHICLE))
                .singleElement()
                .returns(true, Figure::observable)
                .returns(whole.id(), Figure::test);
        assertThat(tests.figures(Tests.BEFORE))
                .filteredOn(figure ->
                        figure.kind() == FigureKind.PEAK && figure.place().equals(REAR_LEFT))
                .singleElement()
                .returns(rear.id(), Figure::test);
    }

    @Test
    void what_a_second_run_does_not_record_stands_and_is_no_earlier_figure() {
        Recorded first =
                run(Stage.ARRIVAL, "rt-1", new AxleReading(2, null, read("900", "180"), read("900", "60"), null));
        Recorded blind =
                run(Stage.DIAGNOSTIC, "rt-2", new AxleReading(2, null, read("900", null), read("900", null), null));
        Recorded seeing =
                run(Stage.DIAGNOSTIC, "rt-2", new AxleReading(2, null, read("900", "70"), read("900", "60"), null));

        assertThat(drag(tests(first, blind))).returns(first.id(), Figure::test);
        assertThat(earlierDrags(tests(first, blind))).isEmpty();
        assertThat(drag(tests(first, seeing))).returns(seeing.id(), Figure::test);
        assertThat(earlierDrags(tests(first, seeing))).hasSize(1);
    }

    @Test
    void a_final_test_leans_on_no_test_before_it() {
        Recorded first =
                run(Stage.FINAL, "rt-1", new AxleReading(2, null, read("900", "180"), read("900", "60"), null));
        Recorded blind = run(Stage.FINAL, "rt-2", new AxleReading(2, null, read("900", null), read("900", null), null));

        assertThat(tests(first, blind).figures(Tests.AFTER))
                .noneMatch(figure -> figure.kind() == FigureKind.DRAG && figure.observable());
    }

    private static Figure drag(Tests tests) {
        return tests.figures(Tests.BEFORE).stream()
                .filter(figure ->
                        figure.kind() == FigureKind.DRAG && figure.place().equals(REAR_LEFT))
                .findFirst()
                .orElseThrow();
    }

    private static List<EarlierFigure> earlierDrags(Tests tests) {
        return tests.earlierFigures(Tests.BEFORE).stream()
                .filter(figure ->
                        figure.kind() == FigureKind.DRAG && figure.place().equals(REAR_LEFT))
                .toList();
    }

    private static WheelReading read(String peak, String drag) {
        return new WheelReading(new BigDecimal(peak), drag == null ? null : new BigDecimal(drag), null, false);
    }

    private static Recorded run(Stage stage, String id, AxleReading... axles) {
        return rollers(BrakeSystem.SERVICE, stage, Surface.DRY, null, id, axles);
    }

    private static Tests tests(Recorded... recorded) {
        Vehicle vehicle = aSmallVan();
        RegimeTerms terms = Regimes.released().find("gb-annual").termsFor(vehicle, TODAY);
        StandingHistory history = StandingHistory.of(new History("QS-1", List.of(recorded)));
        return Tests.of(history, RegimeFigures.of(history.entries(), vehicle, terms));
    }
}
