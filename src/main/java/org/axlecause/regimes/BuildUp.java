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
 * @param verified how well it is verified
 */
record BuildUp(When when, BigDecimal seconds, Verified verified) {

    static BuildUp of(YamlNode node) {
        List<String> known = new ArrayList<>(When.MEMBERS);
        known.addAll(List.of("seconds", "verified", "source"));
        node.only(known.toArray(String[]::new));
        node.text("source");
        return new BuildUp(When.of(node), node.decimal("seconds"), node.code("verified", Verified.class));
    }
}
