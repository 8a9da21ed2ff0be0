package org.axlecause.measurement;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.axlecause.facts.DoubtCode;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.Place;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.ShapeOfLoss;
import org.axlecause.facts.TestDoubt;
import org.axlecause.facts.TestFigures;
import org.jspecify.annotations.Nullable;

/** Gathers what one test shows and hands it out in one order. */
final class FigureSheet {

    private final EntryId test;
    private final RollerTestRecorded recorded;
    private final List<Figure> figures = new ArrayList<>();
    private final List<ShapeOfLoss> shapes = new ArrayList<>();
    private final List<TestDoubt> doubts = new ArrayList<>();

    FigureSheet(EntryId test, RollerTestRecorded recorded) {
        this.test = test;
        this.recorded = recorded;
    }

    void show(FigureKind kind, Place place, BigDecimal value, @Nullable BigDecimal uncertainty) {
        show(kind, place, value, uncertainty, null);
    }

    void show(
            FigureKind kind, Place place, BigDecimal value, @Nullable BigDecimal uncertainty, @Nullable String basis) {
        figures.add(new Figure(kind, test, recorded.stage(), recorded.brake(), place, value, uncertainty, true, basis));
    }

    void cannotShow(FigureKind kind, Place place) {
        figures.add(new Figure(kind, test, recorded.stage(), recorded.brake(), place, null, null, false, null));
    }

    void fits(LossShape shape, Place place, String says) {
        shapes.add(new ShapeOfLoss(shape, place, test, says));
    }

    void doubt(DoubtCode code, Place place, String says) {
        doubts.add(new TestDoubt(code, place, test, says));
    }

    /** Value of a figure shown so far; null where it is not. */
    @Nullable
    BigDecimal valueOf(FigureKind kind, Place place) {
        return figures.stream()
                .filter(figure -> figure.kind() == kind && figure.place().equals(place))
                .map(Figure::value)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    List<ShapeOfLoss> shapes() {
        return List.copyOf(shapes);
    }

    /** Figures by place and kind, shapes by place and shape, doubts by place, code and words. */
    TestFigures sorted() {
        figures.sort(Comparator.comparing(Figure::place).thenComparing(Figure::kind));
        shapes.sort(Comparator.comparing(ShapeOfLoss::place)
                .thenComparing(ShapeOfLoss::shape)
                .thenComparing(ShapeOfLoss::says));
        doubts.sort(Comparator.comparing(TestDoubt::place)
                .thenComparing(TestDoubt::code)
                .thenComparing(TestDoubt::says));
        return new TestFigures(test, figures, shapes, doubts);
    }
}
