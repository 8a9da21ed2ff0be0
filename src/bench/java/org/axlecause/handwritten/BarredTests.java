package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Place;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.StandingLeak;
import org.axlecause.facts.StandingSymptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.TestBarred;

/**
 * When no roller, hold or road step is planned: a leak or a pedal fault stands on record and no line that is due
 * mends it. With such a line the order of the plan holds the test back until the leak check has passed.
 */
final class BarredTests {

    private BarredTests() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        wrk801(facts);
        wrk802(facts);
        wrk803(facts);
        wrk804(facts);
    }

    /** A hydraulic leak stands and no due line renews what leaks. */
    private static void wrk801(Facts facts) {
        for (StandingLeak leak : facts.standingLeaks.all()) {
            if (leak.isHydraulic()
                    && none(
                            facts.dueLines.all(),
                            line -> line.isExchange()
                                    && line.item() == leak.item()
                                    && line.place().covers(leak.place()))) {
                facts.testsBarred.draw(new TestBarred(leak.place(), because("WRK-801", leak)));
            }
        }
    }

    /** The pedal is found sinking and no due line opens or bleeds the hydraulics. */
    private static void wrk802(Facts facts) {
        for (PartState state : facts.partStates.of(Component.PEDAL)) {
            if (state.condition() == Condition.SINKING
                    && none(
                            facts.partStates.of(Component.PEDAL),
                            partState -> partState.condition() == Condition.SOUND
                                    && partState.stage() == FindingStage.AFTER_WORK)
                    && none(facts.dueLines.all(), line -> line.action() == ScopeAction.BLEED)) {
                facts.testsBarred.draw(new TestBarred(Place.VEHICLE, because("WRK-802", state)));
            }
        }
    }

    /** The pedal shows as sinking and no due line opens or bleeds the hydraulics. */
    private static void wrk803(Facts facts) {
        for (StandingSymptom symptom : facts.standingSymptoms.of(SymptomCode.PEDAL_SINKING)) {
            if (none(facts.dueLines.all(), line -> line.action() == ScopeAction.BLEED)) {
                facts.testsBarred.draw(new TestBarred(Place.VEHICLE, because("WRK-803", symptom)));
            }
        }
    }

    /** Brake fluid cannot be seen and no due line bleeds or renews it. */
    private static void wrk804(Facts facts) {
        for (PartState state : facts.partStates.of(Component.BRAKE_FLUID)) {
            if (state.condition() == Condition.NOT_VISIBLE
                    && none(
                            facts.partStates.of(Component.BRAKE_FLUID),
                            partState -> partState.condition() == Condition.SOUND
                                    && partState.stage() == FindingStage.AFTER_WORK)
                    && facts.dueLines.of(ScopeItem.BRAKE_FLUID).isEmpty()) {
                facts.testsBarred.draw(new TestBarred(Place.VEHICLE, because("WRK-804", state)));
            }
        }
    }
}
