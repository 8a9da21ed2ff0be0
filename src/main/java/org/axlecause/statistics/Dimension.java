package org.axlecause.statistics;

import java.util.Locale;

/** What cases are told apart by in the rows that statistics keep. */
enum Dimension {
    SITE,
    MAKE,
    MODEL,
    CATEGORY,
    LAYOUT,
    AGE_BAND,
    ODOMETER_BAND,
    REGIME;

    /** Its column. */
    String column() {
        return name().toLowerCase(Locale.ROOT);
    }
}
