package org.axlecause.judgement;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Exemption;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.LimitRisk;
import org.axlecause.facts.Place;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.RegimeSheet;
import org.axlecause.facts.RoadDeviation;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.Stage;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.TestFigures;
import org.jspecify.annotations.Nullable;

/**
 * One standing test with all that it shows.
 *
 * @param test identity of its entry
 * @param stage when it was driven
 * @param brake brake applied
 * @param figures figures kept when it was accepted and those that a regime makes of it
 * @param shapes shapes of the loss that fit
 * @param doubts doubts about the test
 * @param exemptions what the regime does not hold against the vehicle
 * @param deviations deviation on a road test
 * @param risks how sure the verdicts on its figures are
 */
record TestRun(
        EntryId test,
        Stage stage,
        BrakeSystem brake,
        List<Figure> figures,
        List<ShapeOfLoss> shapes,
        List<TestDoubt> doubts,
        List<Exemption> exemptions,
        List<RoadDeviation> deviations,
        List<LimitRisk> risks) {

    static TestRun of(Recorded recorded, Stage stage, BrakeSystem brake, @Nullable RegimeSheet sheet) {
        EntryId test = recorded.id();
        TestFigures kept = recorded.figures();
        List<Figure> figures = new ArrayList<>();
        if (kept != null) {
            figures.addAll(kept.figures());
        }
        if (sheet == null) {
            return new TestRun(
                    test, stage, brake, figures, shapes(kept), doubts(kept), List.of(), List.of(), List.of());
        }
        sheet.figures().stream().filter(figure -> figure.test().equals(test)).forEach(figures::add);
        return new TestRun(
                test,
                stage,
                brake,
                figures,
                shapes(kept),
                doubts(kept),
                sheet.exemptions().stream()
                        .filter(exemption -> exemption.test().equals(test))
                        .toList(),
                sheet.deviations().stream()
                        .filter(deviation -> deviation.test().equals(test))
                        .toList(),
                sheet.risks().stream()
                        .filter(risk -> risk.figure().test().equals(test))
                        .toList());
    }

    /** Whether the test says anything about that axle, or about the vehicle where the place is the vehicle. */
    boolean shows(Place axle) {
        return figures.stream().anyMatch(figure -> figure.place().axlePlace().equals(axle));
    }

    /** Difference of the peaks of that axle over the higher one; null where the test doesn't tell. */
    @Nullable
    BigDecimal imbalance(Place axle) {
        return figures.stream()
                .filter(figure -> figure.kind() == FigureKind.PEAK_IMBALANCE
                        && figure.place().equals(axle))
                .map(Figure::value)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    private static List<ShapeOfLoss> shapes(@Nullable TestFigures kept) {
        return kept == null ? List.of() : kept.shapes();
    }

    private static List<TestDoubt> doubts(@Nullable TestFigures kept) {
        return kept == null ? List.of() : kept.doubts();
    }
}
