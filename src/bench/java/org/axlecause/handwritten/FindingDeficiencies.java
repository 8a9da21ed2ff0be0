package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.Deficiency;
import org.axlecause.facts.Figure;
import org.axlecause.facts.Finding;
import org.axlecause.facts.FindingLimit;
import org.axlecause.facts.Limit;

/**
 * Deficiencies that a finding makes by itself, or together with a brake figure of the same axle that breaks its
 * limit. Which part in which state makes which deficiency is in the regime's file. The worst class concludes.
 */
final class FindingDeficiencies {

    private FindingDeficiencies() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        def090(facts);
        def095(facts);
    }

    /** A part is found in a state that the regime refuses. */
    private static void def090(Facts facts) {
        for (FindingLimit item : facts.findingLimits.all()) {
            if (!item.affecting()) {
                for (Finding finding : facts.findings.all()) {
                    if (item.isMetBy(finding)
                            && none(
                                    facts.findingLimits.all(),
                                    worse -> !worse.affecting() && item.yieldsTo(worse) && worse.isMetBy(finding))
                            && !worseSinceBrakesAreAffected(facts, item, finding)) {
                        facts.deficiencies.draw(new Deficiency(
                                item.deficiency(),
                                finding.place(),
                                null,
                                finding.entry(),
                                item.severity(),
                                item.item(),
                                item.valueOf(finding),
                                null,
                                because("DEF-090", finding, item)));
                    }
                }
            }
        }
    }

    private static boolean worseSinceBrakesAreAffected(Facts facts, FindingLimit item, Finding finding) {
        return any(
                        facts.findingLimits.all(),
                        worse -> worse.affecting() && item.yieldsTo(worse) && worse.isMetBy(finding))
                && any(
                        facts.limits.all(),
                        limit -> limit.isOnAxleOf(finding)
                                && any(
                                        facts.figures.all(),
                                        figure -> limit.isBrokenBy(figure)
                                                && none(facts.exemptions.all(), exemption -> exemption.isOf(figure))));
    }

    /** A part is found in a state that the regime refuses and the brakes of its axle are affected. */
    private static void def095(Facts facts) {
        for (FindingLimit item : facts.findingLimits.all()) {
            if (item.affecting()) {
                for (Finding finding : facts.findings.all()) {
                    if (item.isMetBy(finding)
                            && none(
                                    facts.findingLimits.all(),
                                    worse -> !worse.affecting() && item.yieldsTo(worse) && worse.isMetBy(finding))) {
                        for (Limit limit : facts.limits.all()) {
                            if (limit.isOnAxleOf(finding)) {
                                for (Figure figure : facts.figures.all()) {
                                    if (limit.isBrokenBy(figure)
                                            && none(
                                                    facts.limits.all(),
                                                    otherLimit ->
                                                            limit.yieldsTo(otherLimit) && otherLimit.isBrokenBy(figure))
                                            && none(facts.exemptions.all(), exemption -> exemption.isOf(figure))) {
                                        facts.deficiencies.draw(new Deficiency(
                                                item.deficiency(),
                                                finding.place(),
                                                null,
                                                finding.entry(),
                                                item.severity(),
                                                item.item(),
                                                null,
                                                null,
                                                because("DEF-095", finding, item, figure, limit)));
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
