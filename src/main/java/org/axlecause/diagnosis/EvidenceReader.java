package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.Agent;
import org.axlecause.facts.Bound;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Extent;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Spot;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** Reads the symptoms, findings and circumstances of the cause model. */
final class EvidenceReader {

    private static final String NONE = "none";

    final Map<SymptomCode, SymptomEvidence> symptoms = new EnumMap<>(SymptomCode.class);
    final Map<String, FindingEvidence> findings = new LinkedHashMap<>();
    final Map<String, Circumstance> circumstances = new LinkedHashMap<>();

    EvidenceReader(YamlNode symptomFile, YamlNode findingFile) {
        readSymptoms(symptomFile);
        readFindings(findingFile);
    }

    /** The symptom of that code that causes are linked to; null where there is none or it sums up single wheels. */
    @Nullable
    SymptomEvidence symptomOf(String code) {
        return symptoms.values().stream()
                .filter(symptom -> symptom.code().toString().equals(code) && symptom.eachWheel() == null)
                .findFirst()
                .orElse(null);
    }

    private void readSymptoms(YamlNode root) {
        for (YamlNode node : root.only("verified", "source", "symptoms").items("symptoms")) {
            node.only("code", "at", "leak", "each-wheel", "text");
            SymptomCode code = node.code("code", SymptomCode.class);
            SymptomCode eachWheel = node.optionalCode("each-wheel", SymptomCode.class);
            double leak = eachWheel == null ? ModelNumbers.probability(node.member("leak")) : 0;
            Level level = node.code("at", Level.class);
            if (symptoms.put(code, new SymptomEvidence(code, node.text("text"), level, leak, eachWheel)) != null) {
                throw node.wrong("symptom '" + code + "' stands twice", "keep one of the two");
            }
        }
        for (SymptomCode code : SymptomCode.values()) {
            if (!symptoms.containsKey(code)) {
                throw root.member("symptoms")
                        .wrong("symptom '" + code + "' is missing", "add it with place, leak and text");
            }
        }
        for (YamlNode node : root.items("symptoms")) {
            SymptomCode eachWheel = node.optionalCode("each-wheel", SymptomCode.class);
            if (eachWheel != null && symptom(eachWheel).level() != Level.WHEEL) {
                throw node.wrong(
                        "'" + eachWheel + "' is no symptom of single wheels", "name a symptom whose place is wheel");
            }
        }
    }

    private SymptomEvidence symptom(SymptomCode code) {
        SymptomEvidence found = symptoms.get(code);
        if (found == null) {
            throw new IllegalStateException("The symptom " + code + " is not in symptoms.yaml; add it there.");
        }
        return found;
    }

    private void readFindings(YamlNode root) {
        for (YamlNode node :
                root.only("verified", "source", "findings", "circumstances").items("findings")) {
            FindingEvidence finding = finding(node);
            if (findings.put(finding.code(), finding) != null) {
                throw node.wrong("finding '" + finding.code() + "' stands twice", "keep one of the two");
            }
        }
        for (YamlNode node : root.items("circumstances")) {
            node.only("code", "symptom", "shows", "recent-work", "reported", "text");
            SymptomCode symptom = node.optionalCode("symptom", SymptomCode.class);
            Circumstance circumstance = new Circumstance(
                    node.text("code"),
                    node.text("text"),
                    symptom,
                    Boolean.TRUE.equals(node.optionalFlag("shows")),
                    node.codes("recent-work", ScopeItem.class),
                    node.codes("reported", TestCondition.class));
            int kinds = (symptom == null ? 0 : 1)
                    + (circumstance.recentWork().isEmpty() ? 0 : 1)
                    + (circumstance.reported().isEmpty() ? 0 : 1);
            if (kinds != 1) {
                throw node.wrong(
                        "circumstance '" + circumstance.code() + "' is not one of symptom, recent work, report",
                        "write one of symptom, recent-work, reported");
            }
            circumstances.put(circumstance.code(), circumstance);
        }
    }

    private static FindingEvidence finding(YamlNode node) {
        node.only(
                "code",
                "at",
                "component",
                "on",
                "condition",
                "agents",
                "checks",
                "spots",
                "extents",
                "absent-by",
                "absent-checks",
                "measured",
                "text");
        YamlNode measured = node.optional("measured");
        List<Condition> conditions = node.codes("condition", Condition.class);
        if ((measured == null) == conditions.isEmpty()) {
            throw node.wrong(
                    "finding '" + node.text("code") + "' is neither a state nor a measurement",
                    "write one of condition, measured");
        }
        return new FindingEvidence(
                node.text("code"),
                node.text("text"),
                node.code("at", Level.class),
                node.code("component", Component.class),
                node.optionalCode("on", WheelBrake.class),
                conditions,
                orNone(node, "agents", Agent.class),
                orNone(node, "checks", CheckCode.class),
                orNone(node, "spots", Spot.class),
                orNone(node, "extents", Extent.class),
                node.codes("absent-by", Condition.class),
                orNone(node, "absent-checks", CheckCode.class),
                measured == null
                        ? null
                        : new FindingEvidence.Measured(
                                measured.only("quantity", "beyond", "threshold")
                                        .code("quantity", MeasuredQuantity.class),
                                measured.code("beyond", Bound.class),
                                measured.optionalCode("threshold", ThresholdCode.class)));
    }

    private static <E extends Enum<E>> List<@Nullable E> orNone(YamlNode node, String member, Class<E> codes) {
        YamlNode written = node.optional(member);
        if (written == null) {
            return List.of();
        }
        List<@Nullable E> allowed = new ArrayList<>();
        for (YamlNode item : written.isList() ? written.items() : List.of(written)) {
            allowed.add(item.text().equals(NONE) ? null : item.code(codes));
        }
        return Collections.unmodifiableList(allowed);
    }
}
