package org.axlecause.judgement;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.VehiclePresented;
import org.jspecify.annotations.Nullable;

/**
 * The presentation that a case is judged by: the first in the order that counts that was not taken back.
 *
 * @param entry its entry
 * @param content what it says
 * @param day day of the presentation in the site's time zone
 * @param others later presentations that differ in site or vehicle
 */
record Presentation(Recorded entry, VehiclePresented content, LocalDate day, List<Recorded> others) {

    static @Nullable Presentation of(StandingHistory history, ZoneId zone) {
        List<Recorded> all = history.of(VehiclePresented.class);
        if (all.isEmpty()) {
            return null;
        }
        Recorded first = all.get(0);
        VehiclePresented content = (VehiclePresented) first.entry();
        List<Recorded> others = all.stream()
                .skip(1)
                .filter(other -> differs(content, (VehiclePresented) other.entry()))
                .toList();
        return new Presentation(
                first, content, first.time().atZoneSameInstant(zone).toLocalDate(), others);
    }

    private static boolean differs(VehiclePresented one, VehiclePresented other) {
        return !one.site().equals(other.site()) || !one.vehicle().equals(other.vehicle());
    }
}
