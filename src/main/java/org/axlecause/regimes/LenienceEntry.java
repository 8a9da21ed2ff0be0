package org.axlecause.regimes;

import java.math.BigDecimal;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Circumstance;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Lenience;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlNode;

/** When a regime does not hold a figure against the vehicle, as written. */
final class LenienceEntry {

    private LenienceEntry() {}

    static Lenience of(YamlNode node) {
        node.only("figure", "brake", "when", "newtons", "newtons-per-kilogram", "verified", "source");
        Circumstance when = node.code("when", Circumstance.class);
        BigDecimal force = node.optionalDecimal("newtons");
        BigDecimal effort = node.optionalDecimal("newtons-per-kilogram");
        if ((when == Circumstance.BOTH_WHEELS_LOW) != (force != null)
                || (when == Circumstance.WET_ROLLERS) != (effort != null)) {
            throw node.wrong(
                    "the value does not fit the circumstance " + when,
                    "write 'newtons' for both-wheels-low, 'newtons-per-kilogram' for wet-rollers and no value otherwise");
        }
        return new Lenience(
                node.code("figure", FigureKind.class),
                node.code("brake", BrakeSystem.class),
                when,
                force == null ? effort : force,
                node.code("verified", Verified.class),
                node.text("source"));
    }
}
