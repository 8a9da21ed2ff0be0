package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * One figure of one test, in SI units; shares are ratios.
 *
 * @param kind what it is
 * @param test identity of the test's entry
 * @param stage when the test was driven
 * @param brake brake applied
 * @param place wheel, axle or vehicle
 * @param value the value; null where it can't be observed
 * @param uncertainty standard uncertainty of the value; null where none can be stated
 * @param observable whether the test can show it
 * @param basis formula or mass basis that the figure follows; null where there is only one
 */
public record Figure(
        FigureKind kind,
        EntryId test,
        Stage stage,
        BrakeSystem brake,
        Place place,
        @Nullable BigDecimal value,
        @Nullable BigDecimal uncertainty,
        boolean observable,
        @Nullable String basis)
        implements Shown {

    @Override
    public String shown() {
        return kind + " " + place + " = " + FigureWords.of(kind, value) + " (" + stage + " test " + test.id() + ", "
                + brake + " brake)";
    }
}
