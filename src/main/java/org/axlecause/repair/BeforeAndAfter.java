package org.axlecause.repair;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.RetestComparison;
import org.jspecify.annotations.Nullable;

/**
 * A figure of the final test beside the one at arrival.
 *
 * @param kind the figure
 * @param brake brake applied
 * @param place wheel, axle or vehicle
 * @param before value at arrival
 * @param after value at the final test
 * @param limit limit of the regime
 * @param target target of the workshop
 * @param withinLimit whether it keeps the limit
 * @param withinTarget whether it reaches the target; null where there is none
 */
public record BeforeAndAfter(
        FigureKind kind,
        BrakeSystem brake,
        Place place,
        @Nullable Measure before,
        @Nullable Measure after,
        @Nullable Measure limit,
        @Nullable Measure target,
        boolean withinLimit,
        @Nullable Boolean withinTarget) {

    private static final int DECIMALS = 3;

    static BeforeAndAfter of(RetestComparison compared) {
        FigureKind kind = compared.kind();
        return new BeforeAndAfter(
                kind,
                compared.brake(),
                compared.place(),
                measure(kind, compared.before()),
                measure(kind, compared.after()),
                measure(kind, compared.limit()),
                measure(kind, compared.target()),
                compared.withinLimit(),
                compared.withinTarget());
    }

    private static @Nullable Measure measure(FigureKind kind, @Nullable BigDecimal value) {
        if (value == null) {
            return null;
        }
        BigDecimal shown = kind.unit().equals("%") ? value.movePointRight(2) : value;
        BigDecimal rounded = shown.setScale(DECIMALS, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return new Measure(rounded.scale() < 0 ? rounded.setScale(0) : rounded, kind.unit(), null);
    }
}
