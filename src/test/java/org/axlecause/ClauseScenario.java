package org.axlecause;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.Party;
import org.axlecause.judgement.Judgement;
import org.axlecause.repair.PlannedStep;
import org.axlecause.repair.ScopeLine;
import org.axlecause.shared.YamlNode;

/**
 * A clause of a policy with a case that it changes and one that it leaves alone, told by the words of {@link ShortRepair}.
 *
 * @param clause code of the clause
 * @param set what a chain sets
 * @param priced whether the site has a price list
 * @param changed a case whose outcome is another one under the clause
 * @param by every difference, in words
 * @param alike a case whose judgement stays the same to the last word
 */
record ClauseScenario(
        String clause, JsonNode set, boolean priced, ShortRepair changed, List<String> by, ShortRepair alike) {

    static ClauseScenario of(YamlNode node) {
        node.only("set", "priced", "changes", "leaves");
        YamlNode changes = node.member("changes").only("why", "vehicle", "complaints", "work", "happens", "by");
        YamlNode leaves = node.member("leaves").only("why", "vehicle", "complaints", "work", "happens");
        String clause = node.member("set").text("clause");
        return new ClauseScenario(
                clause,
                node.member("set").toJson(),
                Boolean.TRUE.equals(node.optionalFlag("priced")),
                ShortRepair.happening(clause, changes.text("why"), changes),
                changes.texts("by"),
                ShortRepair.happening(clause, leaves.text("why"), leaves));
    }

    /**
     * What differs between two judgements of a case, in words. Steps follow from the lines and are left out, as are the
     * cautions of other steps, and causes that nobody has confirmed.
     */
    static List<String> differences(Judgement before, Judgement after) {
        boolean sameWork = steps(before).equals(steps(after));
        Map<String, String> was = aspects(before, sameWork);
        Map<String, String> now = aspects(after, sameWork);
        TreeMap<String, String> told = new TreeMap<>();
        was.forEach((what, said) -> {
            String then = now.get(what);
            if (then == null) {
                told.put(what, what + " " + said + ", then none");
            } else if (!then.equals(said)) {
                told.put(what, what + " " + said + ", then " + then);
            }
        });
        now.forEach((what, said) -> {
            if (!was.containsKey(what)) {
                told.put(what, what + " none, then " + said);
            }
        });
        return List.copyOf(told.values());
    }

    private static Map<String, String> aspects(Judgement judged, boolean withCautions) {
        Map<String, String> aspects = new TreeMap<>();
        judged.scope().forEach(line -> aspects.put(line.id(), says(line)));
        judged.deficiencies()
                .forEach(shown -> aspects.put(
                        "deficiency " + shown.code() + " " + shown.place().id(),
                        shown.severity() == null ? "workshop" : shown.severity().toString()));
        judged.symptoms()
                .forEach(shown -> aspects.put(
                        "symptom " + shown.code() + " " + shown.place().id(),
                        shown.strength().toString()));
        judged.causes().stream()
                .filter(shown ->
                        shown.evidence().stream().anyMatch(told -> told.code().equals("made-likelier")))
                .forEach(shown -> aspects.put(
                        "circumstances of " + shown.code() + " " + shown.place().id(), "speak for it"));
        judged.causes().stream()
                .filter(shown -> shown.standing() == CauseStanding.CONFIRMED)
                .forEach(shown -> aspects.put(
                        "cause " + shown.code() + " " + shown.place().id(),
                        shown.standing().toString()));
        if (withCautions) {
            judged.cautions().forEach(caution -> aspects.put("caution " + caution.code(), "given"));
        }
        judged.questions()
                .forEach(question -> aspects.put(
                        "question " + question.code() + " " + question.place().id(), "asked"));
        aspects.put("fitness", judged.fitness().level().toString());
        aspects.put("verification", judged.verification().outcome().toString());
        if (judged.estimate() != null && judged.estimate().net() != null) {
            aspects.put("price", judged.estimate().net().amount());
        }
        return aspects;
    }

    private static List<String> steps(Judgement judged) {
        return judged.workPlan().stream().map(PlannedStep::id).toList();
    }

    private static String says(ScopeLine line) {
        return line.necessity()
                + (line.agreementBy() == null || line.agreementBy() == Party.CUSTOMER
                        ? ""
                        : " by the " + line.agreementBy())
                + (line.awaits() == null ? "" : " awaiting " + String.join(" and ", line.awaits()));
    }

    @Override
    public String toString() {
        return clause;
    }
}
