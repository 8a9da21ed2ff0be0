package org.axlecause.casefile;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What statistics keep of a case that has ended.
 *
 * @param cohort what it is told apart by
 * @param tallies what is counted of it
 * @param opened when the vehicle was presented
 * @param axles axles that a counted cause or a required line is about
 * @param vehicle random token of the vehicle
 * @param previousCase earlier case that the sender names
 * @param verified when the repair was proved; null where it was not
 * @param repaired axles that the proved repair was about
 */
record CountedCase(
        Cohort cohort,
        List<Tally> tallies,
        OffsetDateTime opened,
        List<Integer> axles,
        @Nullable String vehicle,
        @Nullable String previousCase,
        @Nullable Verified verified,
        List<RepairedAxle> repaired) {

    CountedCase {
        tallies = List.copyOf(tallies);
        axles = List.copyOf(axles);
        repaired = List.copyOf(repaired);
    }

    /**
     * What cases are told apart by.
     *
     * @param site code of the site
     * @param day day of the presentation there
     * @param make maker
     * @param model model
     * @param category category of the vehicle
     * @param layout wheel brakes of its axles from the front, joined by +
     * @param ageBand band of its age
     * @param odometerBand band of its distance
     * @param regime regime it was judged by
     */
    record Cohort(
            String site,
            LocalDate day,
            String make,
            String model,
            String category,
            String layout,
            String ageBand,
            String odometerBand,
            String regime) {}

    /** When a repair was proved, and the day of it at the site. */
    record Verified(OffsetDateTime time, LocalDate day) {}

    /** An axle with the items that were worked on. */
    record RepairedAxle(int axle, List<String> items) {

        RepairedAxle {
            items = List.copyOf(items);
        }
    }
}
