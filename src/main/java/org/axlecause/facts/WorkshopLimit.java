package org.axlecause.facts;

import java.math.BigDecimal;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A limit that the policy sets for a figure beside the law; it may warn and never takes a class of the regime.
 *
 * @param kind figure it limits
 * @param brake brake it is about
 * @param axle axle it is for; null means all
 * @param build kind of wheel brake it is for; null means both
 * @param value limit in SI units or as a ratio
 * @param source whose limit it is
 */
public record WorkshopLimit(
        FigureKind kind,
        BrakeSystem brake,
        @Nullable Integer axle,
        @Nullable BrakeBuild build,
        BigDecimal value,
        String source)
        implements Shown {

    /** Whether it is about the vehicle as a whole. */
    public boolean isOfVehicle() {
        return kind == FigureKind.EFFICIENCY;
    }

    /** On which side of the value it refuses. */
    public Bound bound() {
        return kind.isBetterHigh() ? Bound.MINIMUM : Bound.MAXIMUM;
    }

    /** Whether it holds for that axle. */
    public boolean isFor(Axle other) {
        return (axle == null || axle == other.number())
                && (build == null || (build == BrakeBuild.DRUM ? other.isDrum() : other.isDisc()));
    }

    /** Whether that figure of the axle, or of one of its wheels, breaks it. */
    public boolean isBrokenOn(Axle other, Figure figure) {
        Integer at = figure.place().axle();
        return !isOfVehicle() && isFor(other) && at != null && at == other.number() && refuses(figure);
    }

    /** Whether that figure of the vehicle breaks it. */
    public boolean isBrokenByVehicle(Figure figure) {
        return isOfVehicle() && figure.place().equals(Place.VEHICLE) && refuses(figure);
    }

    /** Whether a figure of that kind and brake is the business of this limit. */
    public boolean isAbout(FigureKind figure, BrakeSystem applied) {
        return kind == figure && brake == applied;
    }

    /** The limit as one that a deficiency names. */
    public Limit asLimitOf(Figure figure) {
        return new Limit(
                deficiency(),
                kind,
                brake,
                figure.place(),
                bound(),
                value,
                null,
                null,
                LimitStanding.POLICY,
                Verified.JUDGEMENT,
                source);
    }

    /** What a figure beyond it is called. */
    public DeficiencyCode deficiency() {
        boolean parking = brake == BrakeSystem.PARKING;
        return switch (kind) {
            case EFFICIENCY -> parking ? DeficiencyCode.PARKING_EFFICIENCY : DeficiencyCode.SERVICE_EFFICIENCY;
            case DRAG, RESIDUAL -> DeficiencyCode.BINDING;
            case FLUCTUATION -> DeficiencyCode.FORCE_FLUCTUATION;
            case RISE_LAG, RELEASE_LAG -> DeficiencyCode.ABNORMAL_LAG;
            default -> parking ? DeficiencyCode.PARKING_IMBALANCE : DeficiencyCode.SERVICE_IMBALANCE;
        };
    }

    private boolean refuses(Figure figure) {
        return isAbout(figure.kind(), figure.brake())
                && figure.observable()
                && figure.value() != null
                && bound().refuses(Objects.requireNonNull(figure.value()), value);
    }

    @Override
    public String shown() {
        return bound() + " " + FigureWords.of(kind, value) + " by " + source;
    }
}
