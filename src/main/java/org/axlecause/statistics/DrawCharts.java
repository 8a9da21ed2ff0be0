package org.axlecause.statistics;

import java.time.OffsetDateTime;

/** Draws charts; sheets, pages and answers are drawn by the same code, which lies above this package. */
public interface DrawCharts {

    /**
     * A chart as SVG.
     *
     * @param asOf moment of the answer
     * @param id unique on its page
     */
    String svg(Chart chart, OffsetDateTime asOf, String id);
}
