package org.axlecause.inference;

import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.facts.Because;
import org.axlecause.facts.Reason;
import org.drools.base.definitions.rule.impl.RuleImpl;
import org.kie.api.KieBase;
import org.kie.api.definition.KiePackage;
import org.kie.api.definition.rule.Rule;

/** The one rule base: facts in, conclusions with their grounds out; no order of facts or rules changes them. */
public class RuleBase {

    private static final int FIRINGS_PER_RULE = 50;

    private final WarmSessions sessions;
    private final Map<String, RuleText> texts;
    private final Map<String, Spoken> spoken = new HashMap<>();

    private final String version;

    /** Wraps a compiled rule base; refuses one whose rules lack their metadata. */
    RuleBase(KieBase kieBase) {
        this.texts = textsOf(kieBase);
        goLayerByLayer(kieBase);
        SinkByCode.into(kieBase);
        texts.values().forEach(text -> spoken.put(text.id(), new Spoken(sentence(text.reason()), text.source())));
        this.sessions = new WarmSessions(kieBase, FIRINGS_PER_RULE * Math.max(1, texts.size()));
        this.version = RulebookVersion.ofClassPath();
    }

    /** Draws all conclusions from the facts. */
    public Conclusions conclude(Collection<?> facts) {
        return conclude(List.of(), facts);
    }

    /**
     * Draws all conclusions from the facts of a case beside those that many cases share. Sessions that hold the shared
     * ones are kept, so that only the facts of the case are brought in; the conclusions are those of all facts at once.
     */
    public Conclusions conclude(List<? extends List<?>> shared, Collection<?> facts) {
        WarmSession session = sessions.take(shared);
        try {
            Conclusions conclusions = Conclusions.of(session.conclude(facts));
            session.clear();
            return conclusions;
        } finally {
            sessions.giveBack(session);
        }
    }

    /** Version of the rulebook: a hash over every file in the rules folder. */
    public String version() {
        return version;
    }

    /** All rules, by id. */
    public List<RuleText> rules() {
        return List.copyOf(texts.values());
    }

    /** The ground as it is shown: the rule's reason and source beside the facts. */
    public Reason explain(Because because) {
        Spoken rule = spoken.get(because.rule());
        if (rule == null) {
            throw new IllegalStateException(
                    "No rule bears the id " + because.rule()
                            + " that a conclusion names as its ground; make the id in the rule's name and in because(…) the same.");
        }
        return new Reason(because.rule(), rule.says, rule.source, because.facts());
    }

    /**
     * What a rule says of itself.
     *
     * @param says its reason as a sentence
     * @param source where it comes from
     */
    private record Spoken(String says, String source) {}

    /** Rules draw the same in any order; with lower layers first few conclusions are drawn that others withdraw. */
    private static void goLayerByLayer(KieBase kieBase) {
        List<RuleImpl> rules = kieBase.getKiePackages().stream()
                .filter(kiePackage -> !kiePackage.getRules().isEmpty())
                .sorted(Comparator.comparing(kiePackage -> Layer.ofPackage(kiePackage.getName())))
                .flatMap(kiePackage -> kiePackage.getRules().stream().sorted(Comparator.comparing(Rule::getLoadOrder)))
                .map(RuleImpl.class::cast)
                .toList();
        for (int order = 0; order < rules.size(); order++) {
            rules.get(order).setLoadOrder(order);
        }
    }

    private static String sentence(String clause) {
        return clause.substring(0, 1).toUpperCase(Locale.ROOT) + clause.substring(1) + ".";
    }

    private static Map<String, RuleText> textsOf(KieBase kieBase) {
        Map<String, RuleText> texts = new TreeMap<>();
        List<KiePackage> packages = kieBase.getKiePackages().stream()
                .filter(kiePackage -> !kiePackage.getRules().isEmpty())
                .sorted(Comparator.comparing(KiePackage::getName))
                .toList();
        for (KiePackage kiePackage : packages) {
            Layer layer = Layer.ofPackage(kiePackage.getName());
            for (Rule rule : kiePackage.getRules()) {
                RuleText text = textOf(layer, rule);
                if (texts.put(text.id(), text) != null) {
                    throw new IllegalStateException(
                            "Two rules bear the id " + text.id() + "; give one of them a new id.");
                }
            }
        }
        return texts;
    }

    private static RuleText textOf(Layer layer, Rule rule) {
        int blank = rule.getName().indexOf(' ');
        if (blank < 0) {
            throw new IllegalStateException("The rule '" + rule.getName() + "' lacks its sentence; write "
                    + layer.prefix() + "-nnn, a blank and when it holds.");
        }
        Map<String, Object> metadata = rule.getMetaData();
        Object until = metadata.get("until");
        return new RuleText(
                rule.getName().substring(0, blank),
                layer,
                rule.getName().substring(blank + 1),
                required(rule, metadata, "reason"),
                required(rule, metadata, "source"),
                required(rule, metadata, "since"),
                until == null ? null : until.toString());
    }

    private static String required(Rule rule, Map<String, Object> metadata, String key) {
        Object value = metadata.get(key);
        if (value == null || value.toString().isBlank()) {
            throw new IllegalStateException("The rule '" + rule.getName() + "' lacks @" + key + "; add it, unquoted.");
        }
        return value.toString().strip();
    }
}
