package org.axlecause.regimes;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlNode;

/**
 * Time at full speed that a stopping distance allows for the build-up of the brakes.
 *
 * @param when vehicles it is for
 * @param seconds the time
 */
record BuildUp(When when, BigDecimal seconds) {

    static BuildUp of(YamlNode node) {
        List<String> known = new ArrayList<>(When.MEMBERS);
        known.addAll(List.of("seconds", "verified", "source"));
        node.only(known.toArray(String[]::new));
        node.code("verified", Verified.class);
        node.text("source");
        return new BuildUp(When.of(node), node.decimal("seconds"));
    }
}
