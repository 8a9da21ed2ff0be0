package org.axlecause.policy;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.facts.Verified;
import org.axlecause.shared.Dimension;
import org.axlecause.shared.Units;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** Reads a policy from its file; quantities are converted exactly to SI units, ages stay in years. */
public final class PolicyFile {

    static final String BASELINE = "rules/policies/baseline.yaml";
    private static final String YEARS = "a";

    private PolicyFile() {}

    /** The policy that comes with the release and holds where no other is published. */
    public static Policy baseline() {
        return of(YamlFile.onClassPath(BASELINE));
    }

    /** The policy in a file; a fault names file, line, what is wrong and what to write instead. */
    public static Policy of(YamlFile file) {
        YamlNode root = file.root().only("policy", "version", "means", "thresholds", "clauses");
        Map<ThresholdCode, Threshold> thresholds = new EnumMap<>(ThresholdCode.class);
        for (YamlNode node : root.items("thresholds")) {
            node.only("code", "means", "value", "unit", "verified", "source");
            ThresholdCode code = node.code("code", ThresholdCode.class);
            Threshold threshold =
                    new Threshold(code, value(node), node.code("verified", Verified.class), node.text("source"));
            refuseTwice(node, thresholds.put(code, threshold));
        }
        for (ThresholdCode code : ThresholdCode.values()) {
            if (!thresholds.containsKey(code)) {
                throw root.member("thresholds")
                        .wrong(
                                "the threshold '" + code + "' is missing",
                                "add it with value, unit, verified and source");
            }
        }
        Map<ClauseCode, PolicyClause> clauses = new EnumMap<>(ClauseCode.class);
        for (YamlNode node : root.items("clauses")) {
            node.only("code", "means", "value", "unit", "necessity", "extent", "verified", "source", "locked");
            ClauseCode code = node.code("code", ClauseCode.class);
            refuseTwice(node, clauses.put(code, clause(node, code)));
        }
        return new Policy(
                root.text("policy"),
                root.whole("version"),
                clauses.values().stream().toList(),
                thresholds.values().stream().toList());
    }

    private static PolicyClause clause(YamlNode node, ClauseCode code) {
        Necessity necessity = node.optionalCode("necessity", Necessity.class);
        BigDecimal value = node.has("value") ? value(node) : null;
        return new PolicyClause(
                code,
                value,
                necessity,
                node.optionalCode("extent", ScopeExtent.class),
                node.text("source"),
                node.code("verified", Verified.class),
                Boolean.TRUE.equals(node.optionalFlag("locked")));
    }

    private static BigDecimal value(YamlNode node) {
        BigDecimal value = node.decimal("value");
        String unit = node.text("unit");
        if (unit.equals(YEARS)) {
            return value;
        }
        return Arrays.stream(Dimension.values())
                .filter(dimension -> Units.whatIsWrong(unit, dimension).isEmpty())
                .findFirst()
                .map(dimension -> Units.toBase(value, unit, dimension))
                .orElseThrow(() -> node.member("unit")
                        .wrong(
                                "'" + unit + "' is no unit that is used here",
                                "write a UCUM code such as mm, kN, % or s"));
    }

    private static void refuseTwice(YamlNode node, @Nullable Object before) {
        if (before != null) {
            throw node.member("code").wrong("'" + node.text("code") + "' stands twice", "keep one of the two");
        }
    }
}
