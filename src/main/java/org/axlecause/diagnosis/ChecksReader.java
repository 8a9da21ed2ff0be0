package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.Verified;
import org.axlecause.shared.YamlNode;

/** Reads the checks and what is looked over on an opened axle. */
final class ChecksReader {

    final Map<CheckCode, Check> checks = new EnumMap<>(CheckCode.class);
    final List<Check.LookedOver> lookingOver = new ArrayList<>();
    final Map<MeasuredQuantity, String> units = new EnumMap<>(MeasuredQuantity.class);
    private final EvidenceReader evidence;

    ChecksReader(YamlNode root, EvidenceReader evidence) {
        this.evidence = evidence;
        readChecks(root);
    }

    private void readChecks(YamlNode root) {
        root.only("verified", "source", "units", "looking-over", "checks");
        YamlNode written = root.member("units");
        for (MeasuredQuantity quantity : MeasuredQuantity.values()) {
            units.put(quantity, written.text(quantity.toString()));
        }
        Verified standing = root.code("verified", Verified.class);
        String source = root.text("source");
        for (YamlNode node : root.items("checks")) {
            Check check = check(node, standing, source);
            if (checks.put(check.code(), check) != null) {
                throw node.wrong("check '" + check.code() + "' stands twice", "keep one of the two");
            }
        }
        for (WheelBrake brake : WheelBrake.values()) {
            for (YamlNode node : root.member("looking-over").items(brake.toString())) {
                node.only("component", "check", "only-brakes");
                CheckCode check = node.code("check", CheckCode.class);
                if (!checks.containsKey(check)) {
                    throw node.wrong("there is no check '" + check + "'", "add it to the checks below");
                }
                lookingOver.add(new Check.LookedOver(
                        brake,
                        node.codes("only-brakes", BrakeLayout.class),
                        node.code("component", Component.class),
                        check));
            }
        }
    }

    private Check check(YamlNode node, Verified standing, String source) {
        node.only(
                "code",
                "text",
                "at",
                "on",
                "only-brakes",
                "only-parking",
                "minutes",
                "access",
                "risk",
                "drives",
                "cautions",
                "needs-symptom",
                "roller-test",
                "shows",
                "first-after",
                "sound",
                "answers",
                "source");
        int access = node.whole("access");
        if (access < 0 || access > 4) {
            throw node.wrong("access " + access + " is not a level", "write 0 on its wheels to 4 hydraulics opened");
        }
        String own = node.optionalText("source");
        List<Check.Outcome> outcomes = new ArrayList<>();
        for (YamlNode answer : node.items("answers")) {
            outcomes.add(outcome(answer));
        }
        BrakeSystem rollerTest = node.optionalCode("roller-test", BrakeSystem.class);
        List<SymptomCode> shows = node.codes("shows", SymptomCode.class);
        if (outcomes.isEmpty() && (rollerTest == null || shows.isEmpty())) {
            throw node.wrong(
                    "check '" + node.text("code") + "' has no answers",
                    "write its answers, or the roller test and what it shows");
        }
        return new Check(
                node.code("code", CheckCode.class),
                node.text("text"),
                node.code("at", Level.class),
                node.optionalCode("on", WheelBrake.class),
                node.codes("only-brakes", BrakeLayout.class),
                node.codes("only-parking", ParkingLayout.class),
                node.whole("minutes"),
                access,
                node.code("risk", Risk.class),
                node.optionalCode("drives", Drives.class),
                node.codes("cautions", CautionCode.class),
                node.optionalCode("needs-symptom", SymptomCode.class),
                rollerTest,
                shows,
                node.codes("first-after", SymptomCode.class),
                node.codes("sound", Component.class),
                List.copyOf(outcomes),
                own == null ? standing : Verified.READ,
                own == null ? source : own);
    }

    private Check.Outcome outcome(YamlNode answer) {
        answer.only("finding", "shows", "component", "condition", "measure");
        MeasuredQuantity measure = answer.optionalCode("measure", MeasuredQuantity.class);
        String code = answer.optionalText("finding");
        if (code == null) {
            return new Check.Outcome(
                    null,
                    answer.code("shows", SymptomCode.class),
                    answer.code("component", Component.class),
                    answer.code("condition", Condition.class),
                    measure);
        }
        FindingEvidence finding = evidence.findings.get(code);
        if (finding == null || finding.conditions().isEmpty()) {
            throw answer.wrong("there is no finding '" + code + "' with a state", "mend the code or add it");
        }
        return new Check.Outcome(
                code, null, finding.component(), finding.conditions().get(0), measure);
    }
}
