package org.axlecause.judgement;

import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Stage;
import org.jspecify.annotations.Nullable;

/**
 * A figure as the case document shows it.
 *
 * @param test identity of the test's entry
 * @param stage stage of the test
 * @param brake brake applied
 * @param figure which figure
 * @param place wheel, axle or vehicle
 * @param value value with unit; left out where the test can't show it
 * @param standardUncertainty standard uncertainty with unit
 * @param observable whether the test can show it
 * @param basis formula or mass basis
 */
public record ShownFigure(
        EntryId test,
        Stage stage,
        BrakeSystem brake,
        FigureKind figure,
        Place place,
        @Nullable Quantity value,
        @Nullable Quantity standardUncertainty,
        boolean observable,
        @Nullable String basis) {

    static ShownFigure of(Figure figure) {
        return new ShownFigure(
                figure.test(),
                figure.stage(),
                figure.brake(),
                figure.kind(),
                figure.place(),
                Quantity.of(figure.kind(), figure.value()),
                Quantity.of(figure.kind(), figure.uncertainty()),
                figure.observable(),
                figure.basis());
    }
}
