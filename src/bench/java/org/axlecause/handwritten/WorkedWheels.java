package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.AxleState;
import org.axlecause.facts.DueLine;
import org.axlecause.facts.WorkedWheel;

/** Which wheel brakes are taken apart for which line. An axle line takes both wheels apart, one after the other. */
final class WorkedWheels {

    private WorkedWheels() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        wrk011(facts);
        wrk012(facts);
        wrk013(facts);
    }

    /** A line takes an axle apart on the left. */
    private static void wrk011(Facts facts) {
        for (DueLine due : facts.dueLines.all()) {
            if (due.isStripDown() && due.place().axle() != null && due.place().side() == null) {
                for (AxleState axle : facts.axleStates.all()) {
                    if (axle.place().sameAxle(due.place())) {
                        facts.workedWheels.draw(new WorkedWheel(
                                due.place().left(), due.line(), axle.axle().isDrum(), because("WRK-011", due)));
                    }
                }
            }
        }
    }

    /** A line takes an axle apart on the right. */
    private static void wrk012(Facts facts) {
        for (DueLine due : facts.dueLines.all()) {
            if (due.isStripDown() && due.place().axle() != null && due.place().side() == null) {
                for (AxleState axle : facts.axleStates.all()) {
                    if (axle.place().sameAxle(due.place())) {
                        facts.workedWheels.draw(new WorkedWheel(
                                due.place().right(), due.line(), axle.axle().isDrum(), because("WRK-012", due)));
                    }
                }
            }
        }
    }

    /** A line takes one wheel apart. */
    private static void wrk013(Facts facts) {
        for (DueLine due : facts.dueLines.all()) {
            if (due.isStripDown() && due.place().side() != null) {
                for (AxleState axle : facts.axleStates.all()) {
                    if (axle.place().sameAxle(due.place())) {
                        facts.workedWheels.draw(new WorkedWheel(
                                due.place().wheel(), due.line(), axle.axle().isDrum(), because("WRK-013", due)));
                    }
                }
            }
        }
    }
}
