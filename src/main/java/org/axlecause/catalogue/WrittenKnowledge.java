package org.axlecause.catalogue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.axlecause.catalogue.Entries.CatalogueCaution;
import org.axlecause.catalogue.Entries.CatalogueRegimeValue;
import org.axlecause.catalogue.Entries.CatalogueSetting;
import org.axlecause.catalogue.Entries.CatalogueStep;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.Verified;
import org.axlecause.shared.Json;
import org.axlecause.shared.YamlFile;
import org.axlecause.shared.YamlNode;
import org.jspecify.annotations.Nullable;

/** Reads texts, sources and standings as the files of the rules folder write them. */
final class WrittenKnowledge {

    private static final String CATALOGUE = "rules/catalogue/";
    private static final String VERIFIED = "verified";
    private static final String SOURCE = "source";

    private WrittenKnowledge() {}

    /** The words for every code of a list; a code without its words stops the start. */
    static <E extends Enum<E>> Map<E, YamlNode> words(String list, Class<E> codes) {
        return words(list, codes, EnumSet.allOf(codes));
    }

    /** The words for the checks that the cause model does not have. */
    static Map<CheckCode, YamlNode> otherChecks(Set<CheckCode> inModel) {
        EnumSet<CheckCode> others = EnumSet.allOf(CheckCode.class);
        others.removeAll(inModel);
        return words("checks", CheckCode.class, others);
    }

    private static <E extends Enum<E>> Map<E, YamlNode> words(String list, Class<E> codes, Set<E> expected) {
        YamlNode root = YamlFile.onClassPath(CATALOGUE + list + ".yaml").root().only(list);
        Map<E, YamlNode> words = new EnumMap<>(codes);
        for (YamlNode node : root.items(list)) {
            node.only("code", "text", VERIFIED, SOURCE);
            E code = node.code("code", codes);
            if (!expected.contains(code) || words.put(code, node) != null) {
                throw node.wrong("'" + code + "' has its words already", "keep one of the two");
            }
        }
        for (E code : expected) {
            if (!words.containsKey(code)) {
                throw root.member(list).wrong("'" + code + "' is missing", "add it with text, verified and source");
            }
        }
        return words;
    }

    static KnowledgeStanding standing(YamlNode node) {
        return KnowledgeStanding.of(node.code(VERIFIED, Verified.class));
    }

    static @Nullable String source(YamlNode node) {
        return node.optionalText(SOURCE);
    }

    static List<CatalogueCaution> cautions() {
        return YamlFile.onClassPath(CATALOGUE + "cautions.yaml").root().items("cautions").stream()
                .map(node -> new CatalogueCaution(
                        node.code("code", CautionCode.class),
                        node.text("text"),
                        node.codes("precedes", StepCode.class),
                        standing(node),
                        source(node)))
                .toList();
    }

    static List<CatalogueStep> steps() {
        return YamlFile.onClassPath(CATALOGUE + "steps.yaml").root().items("steps").stream()
                .map(node -> new CatalogueStep(
                        node.code("code", StepCode.class),
                        node.text("says"),
                        node.texts("does"),
                        node.codes("needs", StepCode.class),
                        node.codes("keeps-pattern", StepCode.class),
                        node.text("verify"),
                        node.optionalText("stop"),
                        node.optionalCode("back-to", StepCode.class),
                        node.texts("tools"),
                        standing(node),
                        source(node)))
                .toList();
    }

    /** Every statement of a regime that says how well it is known, each with the conditions around it. */
    static List<CatalogueRegimeValue> statements(YamlNode regime) {
        List<CatalogueRegimeValue> statements = new ArrayList<>();
        for (String part : regime.names()) {
            collect(part, regime.member(part), Json.mapper().createObjectNode(), null, statements);
        }
        return List.copyOf(statements);
    }

    private static void collect(
            String part,
            YamlNode node,
            ObjectNode around,
            @Nullable String sourceAround,
            List<CatalogueRegimeValue> statements) {
        if (node.isList()) {
            node.items().forEach(item -> collect(part, item, around, sourceAround, statements));
            return;
        }
        if (!node.isMapping()) {
            return;
        }
        ObjectNode says = around.deepCopy();
        List<YamlNode> deeper = new ArrayList<>();
        for (String name : node.names()) {
            YamlNode member = node.member(name);
            if (isKnownBetterBelow(member)) {
                deeper.add(member);
            } else if (!name.equals(VERIFIED) && !name.equals(SOURCE)) {
                says.set(name, member.toJson());
            }
        }
        String source = Stream.of(source(node), sourceAround, sourceBelow(node))
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
        if (node.has(VERIFIED)) {
            statements.add(new CatalogueRegimeValue(part, says, standing(node), source));
        }
        deeper.forEach(member -> collect(part, member, says, source, statements));
    }

    /** The class of a limit stands in the document that its value comes from. */
    private static @Nullable String sourceBelow(YamlNode node) {
        Stream<YamlNode> inside = node.isList()
                ? node.items().stream()
                : node.isMapping() ? node.names().stream().map(node::member) : Stream.empty();
        String own = node.isMapping() ? source(node) : null;
        return own != null
                ? own
                : inside.map(WrittenKnowledge::sourceBelow)
                        .filter(Objects::nonNull)
                        .findFirst()
                        .orElse(null);
    }

    private static boolean isKnownBetterBelow(YamlNode node) {
        if (node.isList()) {
            return node.items().stream().anyMatch(WrittenKnowledge::isKnownBetterBelow);
        }
        return node.isMapping()
                && (node.has(VERIFIED)
                        || node.names().stream().map(node::member).anyMatch(WrittenKnowledge::isKnownBetterBelow));
    }

    /** How causes are weighed, how figures are read, and the policy that comes with the release. */
    static List<CatalogueSetting> settings() {
        List<CatalogueSetting> settings = new ArrayList<>();
        addMembers("cause-model/inference", settings);
        addMembers("measurement/trade-values", settings);
        addMembers("statistics/learning", settings);
        YamlNode policy = file("policies/baseline");
        for (String list : List.of("thresholds", "clauses")) {
            for (YamlNode node : policy.items(list)) {
                settings.add(setting(node.text("code"), "policies/baseline", node, node));
            }
        }
        return List.copyOf(settings);
    }

    private static void addMembers(String file, List<CatalogueSetting> settings) {
        YamlNode root = file(file);
        for (String name : root.names()) {
            YamlNode member = root.member(name);
            if (!name.equals(VERIFIED) && !name.equals(SOURCE)) {
                boolean own = member.isMapping() && member.has(VERIFIED);
                settings.add(setting(name, file, member, own ? member : root));
            }
        }
    }

    private static CatalogueSetting setting(String code, String file, YamlNode node, YamlNode known) {
        ObjectNode says = Json.mapper().createObjectNode();
        if (node.isMapping()) {
            node.names().stream()
                    .filter(name -> !List.of("code", VERIFIED, SOURCE).contains(name))
                    .forEach(name -> says.set(name, node.member(name).toJson()));
        } else {
            says.set("value", node.toJson());
        }
        return new CatalogueSetting(code, file + ".yaml", says, standing(known), source(known));
    }

    private static YamlNode file(String name) {
        return YamlFile.onClassPath("rules/" + name + ".yaml").root();
    }
}
