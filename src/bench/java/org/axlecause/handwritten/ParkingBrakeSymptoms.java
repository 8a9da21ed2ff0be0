package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Place;
import org.axlecause.facts.Strength;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.SymptomObservable;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/**
 * What the parking brake shows. Beside the service brake it is the shared-friction key: low in both points to
 * friction or adjustment, low in service only to hydraulics, low in parking only to cable and lever.
 */
final class ParkingBrakeSymptoms {

    private ParkingBrakeSymptoms() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sym190(facts);
        sym195(facts);
        sym200(facts);
    }

    /** The parking brake of a wheel reads clearly less than its partner's. */
    private static void sym190(Facts facts) {
        for (Figure high : facts.figures.of(FigureKind.PEAK)) {
            if (high.beforeRepair() && high.brake() == BrakeSystem.PARKING) {
                for (Figure low : facts.figures.of(FigureKind.PEAK)) {
                    if (low.beforeRepair()
                            && low.brake() == BrakeSystem.PARKING
                            && low.sameTest(high)
                            && low.place().isOpposite(high.place())) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.PARKING_IMBALANCE)) {
                            if (low.shortOf(high, limit.value())) {
                                facts.symptoms.draw(new Symptom(
                                        SymptomCode.PARKING_ONE_SIDE_LOW,
                                        low.place(),
                                        Strength.CLEAR,
                                        because("SYM-190", low, high, limit)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** Both wheels were read in the parking brake, so a weak one would show. */
    private static void sym195(Facts facts) {
        for (Figure high : facts.figures.of(FigureKind.PEAK)) {
            if (high.observable() && high.beforeRepair() && high.brake() == BrakeSystem.PARKING) {
                for (Figure low : facts.figures.of(FigureKind.PEAK)) {
                    if (low.beforeRepair()
                            && low.brake() == BrakeSystem.PARKING
                            && low.sameTest(high)
                            && low.place().isOpposite(high.place())
                            && low.observable()) {
                        facts.symptomObservables.draw(new SymptomObservable(
                                SymptomCode.PARKING_ONE_SIDE_LOW, low.place(), because("SYM-195", low, high)));
                    }
                }
            }
        }
    }

    /** The parking brake is weak and reads alike on both sides. */
    private static void sym200(Facts facts) {
        for (Figure efficiency : facts.figures.of(FigureKind.EFFICIENCY)) {
            if (efficiency.beforeRepair()
                    && efficiency.brake() == BrakeSystem.PARKING
                    && efficiency.place().equals(Place.VEHICLE)) {
                for (Figure imbalance : facts.figures.of(FigureKind.PEAK_IMBALANCE)) {
                    if (imbalance.beforeRepair()
                            && imbalance.brake() == BrakeSystem.PARKING
                            && imbalance.sameTest(efficiency)) {
                        for (Threshold limit : facts.thresholds.of(ThresholdCode.PARKING_LOW_EFFICIENCY)) {
                            if (efficiency.below(limit.value())) {
                                for (Threshold uneven : facts.thresholds.of(ThresholdCode.PARKING_IMBALANCE)) {
                                    if (imbalance.below(uneven.value())) {
                                        facts.symptoms.draw(new Symptom(
                                                SymptomCode.PARKING_BOTH_LOW,
                                                imbalance.place(),
                                                Strength.CLEAR,
                                                because("SYM-200", efficiency, imbalance, limit)));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}
