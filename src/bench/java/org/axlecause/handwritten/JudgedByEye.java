package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.Deficiency;
import org.axlecause.facts.DeficiencyCode;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.InspectedItem;
import org.axlecause.facts.Limit;
import org.axlecause.facts.LimitStanding;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;

/**
 * Deficiencies for which most regimes give no figure: binding, fluctuation of the force, lag. A figure of the regime
 * takes its class; where there is none a threshold of the workshop warns, without a class, and the inspector judges.
 */
final class JudgedByEye {

    private JudgedByEye() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        def060(facts);
        def065(facts);
        def070(facts);
        def075(facts);
        def080(facts);
        def085(facts);
    }

    /** A wheel is braked more with no brake applied than the figure of the regime allows. */
    private static void def060(Facts facts) {
        for (Limit limit : facts.limits.of(DeficiencyCode.BINDING)) {
            if (limit.standing() == LimitStanding.REGIME) {
                for (Figure figure : facts.figures.all()) {
                    if (limit.isBrokenBy(figure)
                            && none(
                                    facts.limits.all(),
                                    otherLimit -> limit.yieldsTo(otherLimit) && otherLimit.isBrokenBy(figure))
                            && none(facts.exemptions.all(), exemption -> exemption.isOf(figure))) {
                        facts.deficiencies.draw(new Deficiency(
                                limit.deficiency(),
                                figure.place(),
                                figure.stage(),
                                figure.test(),
                                limit.severity(),
                                limit.item(),
                                figure.value(),
                                limit,
                                because("DEF-060", figure, limit)));
                    }
                }
            }
        }
    }

    /** A wheel is braked more with no brake applied than the workshop accepts. */
    private static void def065(Facts facts) {
        for (InspectedItem item : facts.inspectedItems.of(DeficiencyCode.BINDING)) {
            if (facts.limits.of(DeficiencyCode.BINDING).isEmpty()) {
                for (Figure figure : facts.figures.of(FigureKind.DRAG)) {
                    if (figure.brake() == item.brake() && figure.observable()) {
                        for (Threshold threshold : facts.thresholds.of(ThresholdCode.DRAG_FORCE)) {
                            if (figure.value() != null && figure.value().compareTo(threshold.value()) > 0) {
                                facts.deficiencies.draw(new Deficiency(
                                        item.deficiency(),
                                        figure.place(),
                                        figure.stage(),
                                        figure.test(),
                                        null,
                                        item.item(),
                                        figure.value(),
                                        Limit.ofWorkshop(threshold, item, figure),
                                        because("DEF-065", figure, threshold, item)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** The force of a wheel swings more within a turn than the figure of the regime allows. */
    private static void def070(Facts facts) {
        for (Limit limit : facts.limits.of(DeficiencyCode.FORCE_FLUCTUATION)) {
            if (limit.standing() == LimitStanding.REGIME) {
                for (Figure figure : facts.figures.all()) {
                    if (limit.isBrokenBy(figure)
                            && none(
                                    facts.limits.all(),
                                    otherLimit -> limit.yieldsTo(otherLimit) && otherLimit.isBrokenBy(figure))
                            && none(facts.exemptions.all(), exemption -> exemption.isOf(figure))) {
                        facts.deficiencies.draw(new Deficiency(
                                limit.deficiency(),
                                figure.place(),
                                figure.stage(),
                                figure.test(),
                                limit.severity(),
                                limit.item(),
                                figure.value(),
                                limit,
                                because("DEF-070", figure, limit)));
                    }
                }
            }
        }
    }

    /** The force of a wheel swings more within a turn than the workshop accepts. */
    private static void def075(Facts facts) {
        for (InspectedItem item : facts.inspectedItems.of(DeficiencyCode.FORCE_FLUCTUATION)) {
            if (facts.limits.of(DeficiencyCode.FORCE_FLUCTUATION).isEmpty()) {
                for (Figure figure : facts.figures.of(FigureKind.FLUCTUATION)) {
                    if (figure.brake() == item.brake() && figure.observable()) {
                        for (Threshold threshold : facts.thresholds.of(ThresholdCode.FLUCTUATION_FAULT)) {
                            if (figure.value() != null && figure.value().compareTo(threshold.value()) > 0) {
                                facts.deficiencies.draw(new Deficiency(
                                        item.deficiency(),
                                        figure.place(),
                                        figure.stage(),
                                        figure.test(),
                                        null,
                                        item.item(),
                                        figure.value(),
                                        Limit.ofWorkshop(threshold, item, figure),
                                        because("DEF-075", figure, threshold, item)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A wheel brakes later after its partner than the figure of the regime allows. */
    private static void def080(Facts facts) {
        for (Limit limit : facts.limits.of(DeficiencyCode.ABNORMAL_LAG)) {
            if (limit.standing() == LimitStanding.REGIME) {
                for (Figure figure : facts.figures.all()) {
                    if (limit.isBrokenBy(figure)
                            && none(
                                    facts.limits.all(),
                                    otherLimit -> limit.yieldsTo(otherLimit) && otherLimit.isBrokenBy(figure))
                            && none(facts.exemptions.all(), exemption -> exemption.isOf(figure))) {
                        facts.deficiencies.draw(new Deficiency(
                                limit.deficiency(),
                                figure.place(),
                                figure.stage(),
                                figure.test(),
                                limit.severity(),
                                limit.item(),
                                figure.value(),
                                limit,
                                because("DEF-080", figure, limit)));
                    }
                }
            }
        }
    }

    /** A wheel brakes later after its partner than the workshop accepts. */
    private static void def085(Facts facts) {
        for (InspectedItem item : facts.inspectedItems.of(DeficiencyCode.ABNORMAL_LAG)) {
            if (facts.limits.of(DeficiencyCode.ABNORMAL_LAG).isEmpty()) {
                for (Figure figure : facts.figures.of(FigureKind.RISE_LAG)) {
                    if (figure.brake() == item.brake() && figure.observable()) {
                        for (Threshold threshold : facts.thresholds.of(ThresholdCode.LAG)) {
                            if (figure.value() != null && figure.value().compareTo(threshold.value()) > 0) {
                                facts.deficiencies.draw(new Deficiency(
                                        item.deficiency(),
                                        figure.place(),
                                        figure.stage(),
                                        figure.test(),
                                        null,
                                        item.item(),
                                        figure.value(),
                                        Limit.ofWorkshop(threshold, item, figure),
                                        because("DEF-085", figure, threshold, item)));
                            }
                        }
                    }
                }
            }
        }
    }
}
