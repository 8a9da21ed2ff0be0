package org.axlecause.pages;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.axlecause.access.Actor;
import org.axlecause.casefile.ReadCases;
import org.axlecause.shared.Json;

/** Lists the rules that a case's conclusions name, with what they concluded from what. */
@ApplicationScoped
class RulesOfCase {

    private final ReadCases readCases;

    RulesOfCase(ReadCases readCases) {
        this.readCases = readCases;
    }

    /**
     * A rule that spoke in a case.
     *
     * @param rule its id
     * @param says what it says
     * @param source document and section, or whose knowledge it is
     * @param facts what it spoke from
     */
    public record Spoken(String rule, String says, String source, List<String> facts) {}

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
                                    .add(fact.asText()));
                }
            }
        }
        List<Spoken> spoken = new ArrayList<>();
        first.forEach((rule, reason) -> spoken.add(new Spoken(
                rule,
                reason.path("says").asText(),
                reason.path("source").asText(),
                List.copyOf(facts.getOrDefault(rule, new TreeSet<>())))));
        return spoken;
    }
}
