package org.axlecause.regimes;

import java.math.BigDecimal;
import org.axlecause.facts.EffortUnit;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/**
 * How a regime states what a brake achieves, as written.
 *
 * @param unit share of the weight, or newtons per kilogram
 * @param gravity acceleration that turns mass into weight
 * @param frontAxleAddition kilograms added to a front axle that was not weighed
 * @param verified how well it is verified
 */
record EffortEntry(
        EffortUnit unit, BigDecimal gravity, @Nullable BigDecimal frontAxleAddition, Verified verified) {

    static EffortEntry of(YamlNode node) {
        node.only("unit", "gravity", "front-axle-addition-kilograms", "verified", "source");
        BigDecimal gravity = node.decimal("gravity");
        if (gravity.signum() <= 0) {
            throw node.member("gravity")
                    .wrong("'gravity' " + gravity + " is not positive", "write 9.80665 or the like");
        }
        node.text("source");
        return new EffortEntry(
                node.code("unit", EffortUnit.class),
                gravity,
                node.optionalDecimal("front-axle-addition-kilograms"),
                node.code("verified", Verified.class));
    }
}
