package org.axlecause.catalogue;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.axlecause.catalogue.Entries.CatalogueComponent;
import org.axlecause.catalogue.Entries.CatalogueCondition;
import org.axlecause.catalogue.Entries.CatalogueRegime;
import org.axlecause.catalogue.Entries.CatalogueRule;
import org.axlecause.catalogue.Entries.Entry;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.inference.RuleBase;
import org.axlecause.regimes.Regimes;
import org.axlecause.shared.Json;
import org.axlecause.shared.YamlNode;

/** Everything that the service knows of the trade, as lists of entries; read once at the start. */
@Startup
@ApplicationScoped
public class Catalogue {

    private final Map<CatalogueKind, List<? extends Entry>> entries = new EnumMap<>(CatalogueKind.class);

    Catalogue(RuleBase rules, CauseModel causeModel, Regimes regimes) {
        Map<Component, YamlNode> components = WrittenKnowledge.words("components", Component.class);
        Map<Condition, YamlNode> conditions = WrittenKnowledge.words("conditions", Condition.class);
        WrittenModel model = new WrittenModel(causeModel, conditions);
        entries.put(CatalogueKind.COMPONENTS, components(components, model));
        entries.put(CatalogueKind.CONDITIONS, conditions(conditions));
        entries.put(CatalogueKind.CHECKS, model.checks());
        entries.put(CatalogueKind.CAUSES, model.causes());
        entries.put(CatalogueKind.SYMPTOMS, model.symptoms());
        entries.put(
                CatalogueKind.REGIMES,
                regimes.all().stream()
                        .map(regime -> new CatalogueRegime(
                                regime.code(),
                                regime.name(),
                                regime.version(),
                                WrittenKnowledge.statements(regime.written())))
                        .toList());
        entries.put(
                CatalogueKind.RULES,
                rules.rules().stream()
                        .map(rule -> new CatalogueRule(
                                rule.id(),
                                rule.layer(),
                                rule.holds(),
                                rule.reason(),
                                rule.source(),
                                rule.since(),
                                rule.until()))
                        .toList());
        entries.put(CatalogueKind.CAUTIONS, WrittenKnowledge.cautions());
        entries.put(CatalogueKind.STEPS, WrittenKnowledge.steps());
        entries.put(CatalogueKind.SETTINGS, WrittenKnowledge.settings());
    }

    /** All entries of a kind. */
    List<? extends Entry> all(CatalogueKind kind) {
        return entries.getOrDefault(kind, List.of());
    }

    /** The entry of that code. */
    Optional<? extends Entry> find(CatalogueKind kind, String code) {
        return all(kind).stream().filter(entry -> entry.key().equals(code)).findFirst();
    }

    /** All entries of a kind as they stand on the wire. */
    public List<JsonNode> written(CatalogueKind kind) {
        return all(kind).stream().map(Json.mapper()::<JsonNode>valueToTree).toList();
    }

    /** The entry of that code as it stands on the wire. */
    public Optional<JsonNode> written(CatalogueKind kind, String code) {
        return find(kind, code).map(Json.mapper()::<JsonNode>valueToTree);
    }

    private static List<CatalogueComponent> components(Map<Component, YamlNode> words, WrittenModel model) {
        List<CatalogueComponent> entries = new ArrayList<>();
        words.forEach((code, node) -> entries.add(new CatalogueComponent(
                code,
                node.text("text"),
                model.checksOf(code),
                model.findingsOn(code),
                WrittenKnowledge.standing(node),
                WrittenKnowledge.source(node))));
        return List.copyOf(entries);
    }

    private static List<CatalogueCondition> conditions(Map<Condition, YamlNode> words) {
        List<CatalogueCondition> entries = new ArrayList<>();
        words.forEach((code, node) -> entries.add(new CatalogueCondition(
                code, node.text("text"), WrittenKnowledge.standing(node), WrittenKnowledge.source(node))));
        return List.copyOf(entries);
    }
}
