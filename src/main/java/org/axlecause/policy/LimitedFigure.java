package org.axlecause.policy;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.axlecause.facts.FigureKind;
import org.axlecause.shared.Dimension;
import org.axlecause.shared.Units;

/** The figures that a policy may set a limit for. */
enum LimitedFigure {
    IMBALANCE(FigureKind.IMBALANCE, Dimension.RATIO),
    EFFICIENCY(FigureKind.EFFICIENCY, Dimension.RATIO),
    DRAG(FigureKind.DRAG, Dimension.FORCE),
    FLUCTUATION(FigureKind.FLUCTUATION, Dimension.RATIO),
    RISE_LAG(FigureKind.RISE_LAG, Dimension.TIME),
    RELEASE_LAG(FigureKind.RELEASE_LAG, Dimension.TIME),
    RESIDUAL(FigureKind.RESIDUAL, Dimension.FORCE);

    private final FigureKind kind;
    private final Dimension dimension;

    LimitedFigure(FigureKind kind, Dimension dimension) {
        this.kind = kind;
        this.dimension = dimension;
    }

    FigureKind kind() {
        return kind;
    }

    Dimension dimension() {
        return dimension;
    }

    BigDecimal toBase(BigDecimal value, String unit) {
        return Units.toBase(value, unit, dimension);
    }

    static LimitedFigure of(FigureKind kind) {
        return Arrays.stream(values())
                .filter(figure -> figure.kind == kind)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("A kept policy limits " + kind));
    }

    static String all() {
        return Arrays.stream(values()).map(figure -> figure.kind.toString()).collect(Collectors.joining(", "));
    }
}
