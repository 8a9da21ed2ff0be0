package org.axlecause.casefile;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.EntryId;
import org.axlecause.judgement.Judgement;
import org.axlecause.shared.Json;

/** Writes the case document: the judgement in the contract's words, with the vehicle as it was sent but for its personal data. */
final class CaseDocument {

    private CaseDocument() {}

    /**
     * The document as it is stored and served.
     *
     * @param judgement what was judged
     * @param rulebook version of the rule base
     * @param data data of the case's events as sent
     */
    static String of(Judgement judgement, String rulebook, Map<EntryId, JsonNode> data) {
        ObjectNode judged = Json.mapper().valueToTree(judgement);
        judged.remove("presentation");
        judged.remove("openedDay");
        ObjectNode document = Json.mapper().createObjectNode();
        judged.properties().forEach(member -> {
            if (member.getKey().equals(judged.has("regime") ? "regime" : "policy")) {
                addVehicle(document, judgement, data);
            }
            document.set(member.getKey(), member.getValue());
            if (member.getKey().equals("policy")) {
                document.put("rulebook", rulebook);
            }
        });
        try {
            return Json.mapper().writeValueAsString(document);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException("A case document is plain JSON", impossible);
        }
    }

    private static void addVehicle(ObjectNode document, Judgement judgement, Map<EntryId, JsonNode> data) {
        EntryId presentation = judgement.presentation();
        JsonNode sent = presentation == null ? null : data.get(presentation);
        if (sent != null) {
            ObjectNode vehicle = ((ObjectNode) sent.path("vehicle")).deepCopy();
            vehicle.remove(List.of("registration", "vin"));
            document.set("vehicle", vehicle);
        }
    }
}
