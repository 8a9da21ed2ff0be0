package org.axlecause.facts;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A vehicle was presented; opens the case.
 *
 * @param site code of the site
 * @param reason why it came
 * @param previousCase reference of an earlier case of the same vehicle
 * @param regime code of the inspection regime; null means the site's
 * @param vehicle the vehicle
 * @param notice deficiencies on the inspection notice
 * @param complaints what the driver reports
 * @param recentWork earlier work on the brakes
 */
public record VehiclePresented(
        String site,
        PresentationReason reason,
        @Nullable String previousCase,
        @Nullable String regime,
        Vehicle vehicle,
        List<NoticedDeficiency> notice,
        List<ComplaintCode> complaints,
        List<RecentWork> recentWork)
        implements Entry {

    public VehiclePresented {
        notice = List.copyOf(notice);
        complaints = List.copyOf(complaints);
        recentWork = List.copyOf(recentWork);
    }
}
