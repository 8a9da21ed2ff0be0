package org.axlecause.casefile;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/**
 * What lists and filters need of a case.
 *
 * @param site code of its site; unknown until its vehicle is presented
 * @param status highest status that holds
 * @param opened when the vehicle was presented; until then when its first event happened
 * @param openedDay the day of that moment at the site
 * @param version number of distinct events judged
 * @param make make of the vehicle
 * @param model model of the vehicle
 */
public record CaseColumns(
        @Nullable String site,
        String status,
        OffsetDateTime opened,
        LocalDate openedDay,
        int version,
        @Nullable String make,
        @Nullable String model) {}
