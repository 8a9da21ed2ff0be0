package org.axlecause.facts;

import java.util.ArrayList;
import java.util.List;

/**
 * What all tests of a case show by the formulas of a regime.
 *
 * @param figures figures by test, brake and place
 * @param exemptions figures that the regime does not hold against the vehicle
 * @param deviations how far the vehicle left the straight line on road tests
 * @param risks how sure the verdicts on these figures are
 * @param gaps what the regime needs and the tests do not say
 */
public record RegimeSheet(
        List<Figure> figures,
        List<Exemption> exemptions,
        List<RoadDeviation> deviations,
        List<LimitRisk> risks,
        List<RegimeGap> gaps) {

    public RegimeSheet {
        figures = List.copyOf(figures);
        exemptions = List.copyOf(exemptions);
        deviations = List.copyOf(deviations);
        risks = List.copyOf(risks);
        gaps = List.copyOf(gaps);
    }

    /** Whether the regime does not hold that figure against the vehicle. */
    public boolean isExempt(Figure figure) {
        return exemptions.stream().anyMatch(exemption -> exemption.isOf(figure));
    }

    /** The facts that rules read. */
    public List<Shown> facts() {
        List<Shown> facts = new ArrayList<>(figures);
        facts.addAll(exemptions);
        facts.addAll(deviations);
        facts.addAll(risks);
        facts.addAll(gaps);
        return facts;
    }
}
