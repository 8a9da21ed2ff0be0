package org.axlecause.regimes;

import java.math.BigDecimal;
import java.util.List;
import org.axlecause.facts.RoadTerms;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlNode;

/**
 * How a regime reads a road test, as written.
 *
 * @param terms what holds for every vehicle
 * @param buildUps time that a stopping distance allows for the build-up, by vehicle
 */
record RoadEntry(RoadTerms terms, List<BuildUp> buildUps) {

    static RoadEntry of(YamlNode node) {
        node.only(
                "deceleration-counts",
                "averaging-begins",
                "averaging-ends",
                "stopping-from-metres-per-second",
                "stopping-tolerance-percent",
                "build-up",
                "verified",
                "source");
        BigDecimal begins = node.decimal("averaging-begins");
        BigDecimal ends = node.decimal("averaging-ends");
        if (ends.signum() < 0 || begins.compareTo(ends) <= 0 || begins.compareTo(BigDecimal.ONE) > 0) {
            throw node.member("averaging-begins")
                    .wrong(
                            "averaging from " + begins + " to " + ends + " of the initial speed is no braking",
                            "write shares such as 0.8 and 0.1, the first one greater");
        }
        BigDecimal stoppingFrom = node.optionalDecimal("stopping-from-metres-per-second");
        BigDecimal tolerance = node.optionalDecimal("stopping-tolerance-percent");
        if ((stoppingFrom == null) != (tolerance == null)) {
            throw node.wrong(
                    "only one of 'stopping-from-metres-per-second' and 'stopping-tolerance-percent' is written",
                    "write both where the regime has stopping distances, or neither");
        }
        node.text("source");
        Verified verified = node.code("verified", Verified.class);
        return new RoadEntry(
                new RoadTerms(
                        node.member("deceleration-counts").flag(),
                        begins,
                        ends,
                        stoppingFrom,
                        tolerance == null ? null : tolerance.movePointLeft(2),
                        null,
                        verified,
                        verified),
                node.items("build-up").stream().map(BuildUp::of).toList());
    }

    RoadTerms termsFor(Vehicle vehicle) {
        return buildUps.stream()
                .filter(buildUp -> buildUp.when().matches(vehicle, null).certain())
                .findFirst()
                .map(this::with)
                .orElse(terms);
    }

    private RoadTerms with(BuildUp buildUp) {
        return new RoadTerms(
                terms.decelerationCounts(),
                terms.averagingBegins(),
                terms.averagingEnds(),
                terms.stoppingFrom(),
                terms.stoppingTolerance(),
                buildUp.seconds(),
                terms.verified(),
                buildUp.verified());
    }
}
