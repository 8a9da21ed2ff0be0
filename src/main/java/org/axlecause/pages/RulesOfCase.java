package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.axlecause.access.Actor;
import org.axlecause.casefile.ReadCases;
import org.axlecause.shared.Json;

/** Lists the rules that a case's conclusions name, with what they concluded from what. */
@ApplicationScoped
class RulesOfCase {

    /** The id of an entry behind a fact, such as (QS-20706-qs-10482-06). */
    private static final Pattern ENTRY = Pattern.compile(" \\((?=[^() ]*[0-9])[^() ]*-[^() ]+\\)");

    private final ReadCases readCases;

    RulesOfCase(ReadCases readCases) {
        this.readCases = readCases;
    }

    /**
     * A rule that spoke in a case.
     *
     * @param rule its id
     * @param kind what it concludes, in words
     * @param says what it says
     * @param source document and section, or whose knowledge it is
     * @param facts what it spoke from
     */
    public record Spoken(String rule, String kind, String says, String source, List<String> facts) {}

    /** A fact without the ids of its entries, codes in words. */
    private static String plain(String fact, String reference) {
        return ENTRY.matcher(fact)
                .replaceAll("")
                .replaceAll(" ?" + Pattern.quote(reference) + "[^ ,;)]*", "")
                .replaceAll("(?<=[a-z])-(?=[a-z])", " ");
    }

    /** The rules that spoke, by id; refuses where there is no such case or the actor may not see it. */
    List<Spoken> spoken(String reference, Actor actor) {
        JsonNode document = Json.read(readCases.find(reference, actor).json());
        Map<String, JsonNode> first = new TreeMap<>();
        Map<String, TreeSet<String>> facts = new TreeMap<>();
        for (JsonNode because : document.findValues("because")) {
            for (JsonNode reason : because) {
                if (reason.has("rule")) {
                    String rule = reason.path("rule").asText();
                    first.putIfAbsent(rule, reason);
                    reason.path("facts")
                            .forEach(fact -> facts.computeIfAbsent(rule, none -> new TreeSet<>())
                                    .add(plain(fact.asText(), reference)));
                }
            }
        }
        List<Spoken> spoken = new ArrayList<>();
        first.forEach((rule, reason) -> spoken.add(new Spoken(
                rule,
                ReadRulebook.kindOfRule(rule),
                reason.path("says").asText(),
                reason.path("source").asText(),
                List.copyOf(facts.getOrDefault(rule, new TreeSet<>())))));
        return spoken;
    }
}
