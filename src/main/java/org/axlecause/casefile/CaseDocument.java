package org.axlecause.casefile;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.axlecause.facts.EntryId;
import org.axlecause.judgement.Judgement;
import org.axlecause.shared.Json;

/**
 * The case document: the judgement in the contract's words, with the vehicle as it was sent but for its personal data.
 *
 * @param members each member as it is written, in their order
 */
record CaseDocument(Map<String, String> members) {

    /**
     * The document of a judgement.
     *
     * @param judgement what was judged
     * @param rulebook version of the rule base
     * @param data data of the case's presentations as sent
     */
    static CaseDocument of(Judgement judgement, String rulebook, Map<EntryId, JsonNode> data) {
        Map<String, String> judged = Json.members(judgement);
        judged.remove("presentation");
        judged.remove("openedDay");
        Map<String, String> document = new LinkedHashMap<>();
        judged.forEach((name, member) -> {
            if (name.equals(judged.containsKey("regime") ? "regime" : "policy")) {
                addVehicle(document, judgement, data);
            }
            document.put(name, member);
            if (name.equals("policy")) {
                document.put("rulebook", Json.text(rulebook));
            }
        });
        return new CaseDocument(document);
    }

    /** The document as it is stored and served. */
    String text() {
        return members.entrySet().stream()
                .map(member -> '"' + member.getKey() + "\":" + member.getValue())
                .collect(Collectors.joining(",", "{", "}"));
    }

    private static void addVehicle(Map<String, String> document, Judgement judgement, Map<EntryId, JsonNode> data) {
        EntryId presentation = judgement.presentation();
        JsonNode sent = presentation == null ? null : data.get(presentation);
        if (sent != null) {
            ObjectNode vehicle = ((ObjectNode) sent.path("vehicle")).deepCopy();
            vehicle.remove(List.of("registration", "vin"));
            document.put("vehicle", Json.text(vehicle));
        }
    }
}
