package org.axlecause.facts;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a regime asks of one vehicle on one day.
 *
 * @param regime code of the regime
 * @param version hash of the file it was read from
 * @param day day whose limits hold
 * @param limits limits, one for each axle, wheel or the vehicle
 * @param items deficiencies without a figure
 * @param findingLimits what makes a part deficient
 * @param imbalance how it compares the wheels of an axle
 * @param effortUnit how it states what the brake achieves
 * @param gravity acceleration of gravity that turns mass into weight, m/s2
 * @param gravityVerified how well unit and gravity are verified
 * @param masses masses to which forces may be related, best first
 * @param frontAxleAddition mass added to the front axle where axle loads were not weighed, kilograms
 * @param lenience when a figure is not held against the vehicle
 * @param rounding rounding before a figure is held against a limit; null where none is prescribed
 * @param road how it reads a road test
 * @param gaps what it needs and nobody has said
 */
public record RegimeTerms(
        String regime,
        String version,
        LocalDate day,
        List<Limit> limits,
        List<InspectedItem> items,
        List<FindingLimit> findingLimits,
        ImbalanceTerms imbalance,
        EffortUnit effortUnit,
        BigDecimal gravity,
        Verified gravityVerified,
        List<MassTerm> masses,
        @Nullable BigDecimal frontAxleAddition,
        List<Lenience> lenience,
        @Nullable Rounding rounding,
        RoadTerms road,
        List<RegimeGap> gaps) {

    public RegimeTerms {
        limits = List.copyOf(limits);
        items = List.copyOf(items);
        findingLimits = List.copyOf(findingLimits);
        masses = List.copyOf(masses);
        lenience = List.copyOf(lenience);
        gaps = List.copyOf(gaps);
    }

    /** The facts that rules read, each kind in a list of its own: limits, items without a figure, limits of findings, gaps. */
    public List<List<? extends Shown>> facts() {
        return List.of(limits, items, findingLimits, gaps);
    }

    /** The limit that refuses first where this one only puts the breach into a worse class; null where it is the first. */
    public @Nullable Limit required(Limit broken) {
        Limit required = null;
        for (Limit limit : limits) {
            if (limit.standing() == broken.standing()
                    && limit.yieldsTo(broken)
                    && broken.bound().refuses(broken.value(), limit.value())
                    && (required == null || limit.bound().refuses(required.value(), limit.value()))) {
                required = limit;
            }
        }
        return required;
    }
}
