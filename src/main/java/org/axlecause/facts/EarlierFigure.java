package org.axlecause.facts;

/**
 * A figure of a test before the repair that a later test of the same axle and brake has taken the place of. It speaks
 * only about what changed between the two.
 *
 * @param figure the figure
 */
public record EarlierFigure(Figure figure) implements Shown {

    /** What it is. */
    public FigureKind kind() {
        return figure.kind();
    }

    /** Brake applied. */
    public BrakeSystem brake() {
        return figure.brake();
    }

    /** Wheel, axle or vehicle. */
    public Place place() {
        return figure.place();
    }

    @Override
    public String shown() {
        return figure.shown();
    }
}
