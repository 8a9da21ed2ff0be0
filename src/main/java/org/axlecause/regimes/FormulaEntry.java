package org.axlecause.regimes;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.axlecause.facts.ImbalanceFormula;
import org.axlecause.facts.ImbalanceTerms;
import org.axlecause.facts.Rounding;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** How a regime compares the wheels of an axle and rounds what comes out, as written. */
final class FormulaEntry {

    private FormulaEntry() {}

    static ImbalanceTerms imbalance(YamlNode node) {
        node.only("formula", "below", "branch-percent", "verified", "source");
        ImbalanceFormula below = node.optionalCode("below", ImbalanceFormula.class);
        BigDecimal branch = node.optionalDecimal("branch-percent");
        if ((below == null) != (branch == null)) {
            throw node.wrong(
                    "only one of 'below' and 'branch-percent' is written",
                    "write the second formula and the share of the axle load below which it holds, or neither");
        }
        node.text("source");
        return new ImbalanceTerms(
                node.code("formula", ImbalanceFormula.class),
                below,
                branch == null ? null : branch.movePointLeft(2),
                node.code("verified", Verified.class));
    }

    static @Nullable Rounding rounding(@Nullable YamlNode node) {
        if (node == null) {
            return null;
        }
        node.only("decimals", "mode", "verified", "source");
        node.text("source");
        String mode = node.text("mode");
        RoundingMode found =
                switch (mode) {
                    case "down" -> RoundingMode.DOWN;
                    case "half-up" -> RoundingMode.HALF_UP;
                    case "half-even" -> RoundingMode.HALF_EVEN;
                    default ->
                        throw node.member("mode")
                                .wrong("'" + mode + "' is no rounding", "write down, half-up or half-even");
                };
        return new Rounding(node.whole("decimals"), found, node.code("verified", Verified.class));
    }
}
