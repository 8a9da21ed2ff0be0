package org.axlecause.facts;

import java.math.BigDecimal;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A limit that holds for this vehicle on this day.
 *
 * @param deficiency deficiency of a figure beyond it
 * @param kind figure it limits
 * @param brake brake it is about
 * @param place wheel, axle or vehicle it holds for, in full
 * @param bound side on which it refuses
 * @param value limit in SI units or as a ratio
 * @param severity class in the regime's scale; null where the inspector judges
 * @param item number in the regime's document
 * @param standing whose limit it is
 * @param verified how well the value is verified
 * @param source document and section
 */
public record Limit(
        DeficiencyCode deficiency,
        FigureKind kind,
        BrakeSystem brake,
        Place place,
        Bound bound,
        BigDecimal value,
        @Nullable DeficiencyClass severity,
        @Nullable String item,
        LimitStanding standing,
        Verified verified,
        String source)
        implements Shown {

    @Override
    public String shown() {
        return bound
                + " "
                + FigureWords.of(kind, value)
                + (severity == null ? "" : " (" + severity + ")")
                + " by "
                + source
                + verified.remark("value");
    }

    /** Whether it is about that figure: the same kind, brake and place, and a value that the test could show. */
    public boolean isAbout(Figure figure) {
        return figure.observable()
                && figure.value() != null
                && kind == figure.kind()
                && brake == figure.brake()
                && place.equals(figure.place());
    }

    /** Whether that figure breaks it; exactly as written, without regard to uncertainty. */
    public boolean isBrokenBy(Figure figure) {
        return isAbout(figure) && bound.refuses(Objects.requireNonNull(figure.value()), value);
    }

    /** Whether the other limit is about the same and puts its breach into a worse class. */
    public boolean yieldsTo(Limit other) {
        return deficiency == other.deficiency
                && kind == other.kind
                && brake == other.brake
                && place.equals(other.place)
                && other.severity != null
                && (severity == null || severity.compareTo(other.severity) < 0);
    }

    /** Whether it is the regime's and about the wheels or the axle at which the part was found. */
    public boolean isOnAxleOf(Finding finding) {
        return standing == LimitStanding.REGIME && place.sameAxle(finding.place());
    }

    /** The workshop's own limit made of a threshold: it may warn and never takes a class of the regime. */
    public static Limit ofWorkshop(Threshold threshold, InspectedItem item, Figure figure) {
        return new Limit(
                item.deficiency(),
                figure.kind(),
                figure.brake(),
                figure.place(),
                Bound.MAXIMUM,
                threshold.value(),
                null,
                item.item(),
                LimitStanding.WORKSHOP,
                threshold.verified(),
                threshold.source());
    }
}
