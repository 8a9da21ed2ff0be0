package org.axlecause.facts;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a regime says of a part that is found in some state or measured.
 *
 * @param deficiency the deficiency it makes
 * @param components parts it is about
 * @param conditions states that make the deficiency; empty where a measurement does
 * @param quantity measured quantity; null where a state makes the deficiency
 * @param bound side on which the value refuses
 * @param value limit in SI units; null where the part's own mark or the maker's limit counts
 * @param axles axles it is about; empty for any place
 * @param affecting whether it holds only where a brake figure of the same axle breaks its limit too
 * @param severity class in the regime's scale
 * @param item number in the regime's document
 * @param verified how well it is verified
 * @param source document and section
 */
public record FindingLimit(
        DeficiencyCode deficiency,
        List<Component> components,
        List<Condition> conditions,
        @Nullable MeasuredQuantity quantity,
        @Nullable Bound bound,
        @Nullable BigDecimal value,
        List<Integer> axles,
        boolean affecting,
        @Nullable DeficiencyClass severity,
        @Nullable String item,
        Verified verified,
        String source)
        implements Shown {

    public FindingLimit {
        components = List.copyOf(components);
        conditions = List.copyOf(conditions);
        axles = List.copyOf(axles);
    }

    /** Whether that finding makes the deficiency, its effect on the brake left aside. */
    public boolean isMetBy(Finding finding) {
        Integer axle = finding.place().axle();
        if (!components.contains(finding.component())
                || (!axles.isEmpty() && (axle == null || !axles.contains(axle)))) {
            return false;
        }
        if (bound == null) {
            return conditions.contains(finding.condition());
        }
        Measurement measured = finding.measurement();
        BigDecimal limit = measured == null ? null : limitOf(measured);
        return measured != null
                && measured.quantity() == quantity
                && limit != null
                && bound.refuses(measured.value(), limit);
    }

    /** Whether the other puts the same deficiency into a worse class. */
    public boolean yieldsTo(FindingLimit other) {
        return deficiency == other.deficiency
                && other.severity != null
                && (severity == null || severity.compareTo(other.severity) < 0);
    }

    /** The measured value that was held against it; null where a state makes the deficiency. */
    public @Nullable BigDecimal valueOf(Finding finding) {
        Measurement measured = finding.measurement();
        return bound == null || measured == null ? null : measured.value();
    }

    @Override
    public String shown() {
        String what;
        if (bound == null) {
            what = "";
        } else if (value == null) {
            what = ": " + quantity + " " + bound + " the part's own limit";
        } else {
            what = ": " + quantity + " " + bound + " "
                    + value.movePointRight(3)
                            .setScale(2, RoundingMode.HALF_EVEN)
                            .toPlainString() + " mm";
        }
        return (item == null ? "" : "item " + item + " of ") + source + what + verified.remark("value");
    }

    private @Nullable BigDecimal limitOf(Measurement measured) {
        return value == null ? measured.limit() : value;
    }
}
