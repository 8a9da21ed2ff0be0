package org.axlecause.measurement;

import org.axlecause.facts.AxleReading;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.TestFigures;

/** Makes the figures of one roller test that follow from the test alone, whatever the regime. */
public final class MeasureTest {

    private MeasureTest() {}

    /** The figures, shapes of loss and doubts of a test, by the trade values of the release. */
    public static TestFigures of(EntryId test, RollerTestRecorded recorded) {
        return of(test, recorded, TradeValues.released());
    }

    /** The same by other trade values. */
    public static TestFigures of(EntryId test, RollerTestRecorded recorded, TradeValues trade) {
        FigureSheet sheet = new FigureSheet(test, recorded);
        ReportedDoubts.raise(recorded, sheet);
        for (AxleReading axle : recorded.axles()) {
            AxleTrace trace = AxleTrace.of(axle, recorded.tester(), trade);
            if (trace == null) {
                TraceDoubts.tooFewSamples(axle, sheet);
                PeakFigures.of(axle, recorded.tester(), trade, sheet);
            } else {
                TraceFigures.of(trace, recorded.tester(), sheet);
            }
            PeakFigures.lightLock(axle, trade, sheet);
        }
        return sheet.sorted();
    }
}
