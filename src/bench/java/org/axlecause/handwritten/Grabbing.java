package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.Deficiency;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.InspectedItem;
import org.axlecause.facts.LossShape;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/**
 * Grabbing, for which no regime gives a figure: thresholds of the workshop warn, without a class, and the inspector
 * judges. A wheel that grabs and a partner that is weak show the same imbalance at every effort; so a steep rise only
 * speaks where no loss at the partner explains it, and a lock only where the partner was far from it.
 */
final class Grabbing {

    private Grabbing() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        def086(facts);
        def087(facts);
    }

    /** A wheel answers the pedal much more steeply than its partner and no loss explains it. */
    private static void def086(Facts facts) {
        for (InspectedItem item : facts.inspectedItems.of(DeficiencyCode.GRABBING)) {
            for (Figure partner : facts.figures.of(FigureKind.STEEPNESS)) {
                if (partner.brake() == item.brake()
                        && partner.observable()
                        && none(
                                facts.shapesOfLoss.all(),
                                shape -> shape.test().equals(partner.test())
                                        && shape.place().equals(partner.place())
                                        && (shape.shape() == LossShape.PROPORTIONAL
                                                || shape.shape() == LossShape.OFFSET
                                                || shape.shape() == LossShape.CAPPED
                                                || shape.shape() == LossShape.LATE))) {
                    for (Figure steep : facts.figures.of(FigureKind.STEEPNESS)) {
                        if (steep.sameTest(partner) && steep.place().isOpposite(partner.place())) {
                            for (Threshold ratio : facts.thresholds.of(ThresholdCode.GRAB_STEEPNESS_RATIO)) {
                                if (steep.moreThanTimes(ratio.value(), partner)) {
                                    facts.deficiencies.draw(new Deficiency(
                                            item.deficiency(),
                                            steep.place(),
                                            steep.stage(),
                                            steep.test(),
                                            null,
                                            item.item(),
                                            steep.value(),
                                            null,
                                            because("DEF-086", steep, partner, ratio, item)));
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel slips on the rollers while its partner is far from it. */
    private static void def087(Facts facts) {
        for (InspectedItem item : facts.inspectedItems.of(DeficiencyCode.GRABBING)) {
            for (Figure locked : facts.figures.of(FigureKind.SLIP_FORCE)) {
                if (locked.brake() == item.brake() && locked.observable()) {
                    for (Figure partner : facts.figures.of(FigureKind.PEAK)) {
                        if (partner.sameTest(locked) && partner.place().isOpposite(locked.place())) {
                            for (Threshold share : facts.thresholds.of(ThresholdCode.GRAB_LOCK_SHARE)) {
                                if (partner.belowShareOf(locked, share.value())) {
                                    facts.deficiencies.draw(new Deficiency(
                                            item.deficiency(),
                                            locked.place(),
                                            locked.stage(),
                                            locked.test(),
                                            null,
                                            item.item(),
                                            locked.value(),
                                            null,
                                            because("DEF-087", locked, partner, share, item)));
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}
