package org.axlecause.regimes;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.Limit;
import org.axlecause.facts.MassTerm;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.RegimeGap;
import org.axlecause.facts.Vehicle;

/** What a regime needs to know of a vehicle and nobody has said. */
final class Gaps {

    private Gaps() {}

    static List<RegimeGap> of(
            String regime,
            Vehicle vehicle,
            List<Limit> limits,
            List<MassTerm> known,
            List<MassEntry> masses,
            Set<Datum> missing) {
        List<RegimeGap> gaps = new ArrayList<>();
        if (!missing.isEmpty()) {
            String data = missing.stream().map(Datum::words).collect(Collectors.joining(", "));
            gaps.add(new RegimeGap(
                    QuestionCode.LIMIT_MISSING,
                    Place.VEHICLE,
                    "Limits of " + regime + " depend on " + data + "; until it is known the most lenient value counts",
                    "Send the vehicle again with " + data));
        }
        if (limits.stream().noneMatch(limit -> limit.deficiency() == DeficiencyCode.SERVICE_EFFICIENCY)) {
            gaps.add(new RegimeGap(
                    QuestionCode.LIMIT_MISSING,
                    Place.VEHICLE,
                    regime + " gives no service efficiency for category " + vehicle.category(),
                    "Correct the category, or name the regime that covers this vehicle"));
        }
        if (known.isEmpty()) {
            gaps.add(new RegimeGap(
                    QuestionCode.MASS_MISSING,
                    Place.VEHICLE,
                    "The mass to which " + regime + " relates the brake forces is not known",
                    "Send " + masses.stream().map(MassEntry::name).distinct().collect(Collectors.joining(", or "))));
        }
        return gaps;
    }
}
