package org.axlecause.catalogue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.axlecause.catalogue.Entries.CatalogueAnswer;
import org.axlecause.catalogue.Entries.CatalogueCause;
import org.axlecause.catalogue.Entries.CatalogueCheck;
import org.axlecause.catalogue.Entries.CatalogueEdge;
import org.axlecause.catalogue.Entries.CatalogueEvidence;
import org.axlecause.catalogue.Entries.CatalogueScopeMark;
import org.axlecause.catalogue.Entries.CatalogueSymptom;
import org.axlecause.catalogue.Entries.KnownValue;
import org.axlecause.catalogue.Entries.NamedCode;
import org.axlecause.diagnosis.Cause;
import org.axlecause.diagnosis.CauseModel;
import org.axlecause.diagnosis.Check;
import org.axlecause.diagnosis.Edge;
import org.axlecause.diagnosis.FindingEvidence;
import org.axlecause.diagnosis.Link;
import org.axlecause.diagnosis.SymptomEvidence;
import org.axlecause.diagnosis.Weights;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.SymptomCode;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** The cause model as a person reads it: each code with its words, each number with how firmly it is known. */
final class WrittenModel {

    private final CauseModel model;
    private final Map<String, String> words = new HashMap<>();
    private final Map<String, YamlNode> fileOfCause = new HashMap<>();
    private final YamlNode symptomFile;
    private final YamlNode strengthFile;
    private final YamlNode checkFile;
    private final Map<Condition, YamlNode> conditions;

    WrittenModel(CauseModel model, Map<Condition, YamlNode> conditions) {
        this.model = model;
        this.conditions = conditions;
        model.causes().forEach(cause -> words.put(cause.code().toString(), cause.text()));
        model.symptoms().forEach(symptom -> words.put(symptom.code().toString(), symptom.text()));
        model.findings().forEach(finding -> words.put(finding.code(), finding.text()));
        model.circumstances().forEach(circumstance -> words.put(circumstance.code(), circumstance.text()));
        model.states().forEach(state -> words.put(state.code(), state.text()));
        for (YamlFile file : YamlFile.inRules("cause-model")) {
            if (file.root().has("causes")) {
                file.root().items("causes").forEach(node -> fileOfCause.put(node.text("code"), file.root()));
            }
        }
        this.symptomFile =
                YamlFile.onClassPath("rules/cause-model/symptoms.yaml").root();
        this.strengthFile =
                YamlFile.onClassPath("rules/cause-model/inference.yaml").root();
        this.checkFile = YamlFile.onClassPath("rules/cause-model/checks.yaml").root();
    }

    List<CatalogueCause> causes() {
        return model.causes().stream().map(this::entry).toList();
    }

    List<CatalogueSymptom> symptoms() {
        return model.symptoms().stream().map(this::entry).toList();
    }

    List<CatalogueCheck> checks() {
        Set<CheckCode> inModel = model.checks().stream().map(Check::code).collect(Collectors.toSet());
        return Stream.concat(
                        model.checks().stream().map(this::entry),
                        WrittenKnowledge.otherChecks(inModel).entrySet().stream()
                                .map(check -> ofTheWork(check.getKey(), check.getValue())))
                .sorted(Comparator.comparing(CatalogueCheck::code))
                .toList();
    }

    List<CheckCode> checksOf(Component component) {
        return model.checks().stream()
                .filter(check -> check.sound().contains(component)
                        || check.outcomes().stream().anyMatch(outcome -> outcome.component() == component))
                .map(Check::code)
                .toList();
    }

    List<NamedCode> findingsOn(Component component) {
        return model.findings().stream()
                .filter(finding -> finding.component() == component)
                .map(FindingEvidence::code)
                .map(this::named)
                .toList();
    }

    private CatalogueCause entry(Cause cause) {
        return new CatalogueCause(
                cause.code(),
                cause.text(),
                cause.level(),
                cause.spots(),
                cause.brakes(),
                cause.parking(),
                cause.only(),
                weights(cause),
                cause.bothSides() == null ? null : weighed(cause, cause.bothSides()),
                cause.links().stream().map(this::evidence).toList(),
                grounds(cause.provedBy()),
                grounds(cause.refutedBy()),
                cause.excludes(),
                cause.likelierAfter(),
                cause.asksUpstream(),
                model.edges().stream()
                        .filter(edge -> edge.from().equals(cause.code().toString()))
                        .map(this::leadsTo)
                        .toList(),
                cause.signature().stream()
                        .map(mark -> new CatalogueScopeMark(mark.action(), mark.item(), mark.extent(), mark.on()))
                        .toList(),
                KnowledgeStanding.of(cause.known()),
                cause.source());
    }

    private Map<String, KnownValue> weights(Cause cause) {
        Weights weights = cause.weights();
        Map<String, KnownValue> known = new LinkedHashMap<>();
        put(known, cause, "drum-old", weights.drumOld());
        put(known, cause, "drum-young", weights.drumYoung());
        put(known, cause, "disc-old", weights.discOld());
        put(known, cause, "disc-young", weights.discYoung());
        return known;
    }

    private void put(Map<String, KnownValue> known, Cause cause, String name, @Nullable Double weight) {
        if (weight != null) {
            known.put(name, weighed(cause, weight));
        }
    }

    private KnownValue weighed(Cause cause, double value) {
        YamlNode file = fileOfCause.get(cause.code().toString());
        return new KnownValue(
                decimal(value),
                "1",
                KnowledgeStanding.of(cause.weighed()),
                file == null ? null : WrittenKnowledge.source(file));
    }

    private CatalogueEvidence evidence(Link link) {
        return new CatalogueEvidence(
                link.evidence(),
                text(link.evidence()),
                link.finding(),
                link.reach(),
                known(decimal(link.strength()), strengthFile));
    }

    private List<List<NamedCode>> grounds(List<List<String>> grounds) {
        return grounds.stream()
                .map(together -> together.stream().map(this::named).toList())
                .toList();
    }

    private CatalogueEdge leadsTo(Edge edge) {
        return new CatalogueEdge(edge.to(), text(edge.to()), edge.reach());
    }

    private CatalogueSymptom entry(SymptomEvidence symptom) {
        String code = symptom.code().toString();
        return new CatalogueSymptom(
                symptom.code(),
                symptom.text(),
                symptom.level(),
                symptom.eachWheel() == null ? known(decimal(symptom.leak()), symptomFile) : null,
                symptom.eachWheel(),
                causesThatShow(
                        symptom.eachWheel() == null ? code : symptom.eachWheel().toString()),
                WrittenKnowledge.standing(symptomFile),
                symptomFile.text("source"));
    }

    private List<CauseCode> causesThatShow(String symptom) {
        return model.causes().stream()
                .filter(cause -> cause.links().stream()
                        .anyMatch(link -> !link.finding() && link.evidence().equals(symptom)))
                .map(Cause::code)
                .toList();
    }

    private CatalogueCheck entry(Check check) {
        return new CatalogueCheck(
                check.code(),
                check.text(),
                check.level(),
                check.on(),
                check.onlyBrakes(),
                check.onlyParking(),
                check.needsSymptom(),
                new KnownValue(
                        BigDecimal.valueOf(check.minutes()),
                        "min",
                        WrittenKnowledge.standing(checkFile),
                        WrittenKnowledge.source(checkFile)),
                check.access(),
                check.risk(),
                check.drives(),
                check.rollerTest(),
                check.cautions(),
                answers(check),
                KnowledgeStanding.of(check.standing()),
                check.source());
    }

    private static CatalogueCheck ofTheWork(CheckCode code, YamlNode node) {
        return new CatalogueCheck(
                code,
                node.text("text"),
                null,
                null,
                List.of(),
                List.of(),
                null,
                null,
                null,
                null,
                null,
                null,
                List.of(),
                List.of(),
                WrittenKnowledge.standing(node),
                WrittenKnowledge.source(node));
    }

    private List<CatalogueAnswer> answers(Check check) {
        List<CatalogueAnswer> answers = new ArrayList<>();
        for (Check.Outcome outcome : check.outcomes()) {
            SymptomCode symptom = outcome.symptom();
            String code = symptom == null ? outcome.finding() : symptom.toString();
            MeasuredQuantity measure = outcome.measure();
            answers.add(new CatalogueAnswer(
                    text(code == null ? "" : code),
                    outcome.finding(),
                    symptom,
                    outcome.component(),
                    outcome.condition(),
                    measure,
                    measure == null ? null : model.unitOf(measure)));
        }
        check.shows()
                .forEach(symptom -> answers.add(
                        new CatalogueAnswer(text(symptom.toString()), null, symptom, null, null, null, null)));
        check.sound().forEach(component -> answers.add(plain(component, Condition.SOUND)));
        partsOf(check).forEach(component -> answers.add(plain(component, Condition.NOT_ACCESSIBLE)));
        return List.copyOf(answers);
    }

    private CatalogueAnswer plain(Component component, Condition condition) {
        YamlNode written = Objects.requireNonNull(conditions.get(condition));
        return new CatalogueAnswer(written.text("text"), null, null, component, condition, null, null);
    }

    private static List<Component> partsOf(Check check) {
        return Stream.concat(check.outcomes().stream().map(Check.Outcome::component), check.sound().stream())
                .distinct()
                .sorted()
                .toList();
    }

    private NamedCode named(String code) {
        return new NamedCode(code, text(code));
    }

    private String text(String code) {
        String text = words.get(code);
        if (text == null) {
            throw new IllegalStateException("The code '" + code + "' has no words in the cause model.");
        }
        return text;
    }

    private static KnownValue known(BigDecimal value, YamlNode file) {
        return new KnownValue(value, "1", WrittenKnowledge.standing(file), WrittenKnowledge.source(file));
    }

    private static BigDecimal decimal(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros();
    }
}
