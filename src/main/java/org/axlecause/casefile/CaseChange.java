package org.axlecause.casefile;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.axlecause.facts.VerificationOutcome;
import org.axlecause.shared.Json;
import org.jspecify.annotations.Nullable;

/**
 * What a judgement has changed on its case.
 *
 * @param reference reference of the case
 * @param site code of its site; null while no vehicle was presented
 * @param version number of distinct events judged
 * @param status highest status that holds
 * @param changed members of the case document that differ from the one before, by name
 * @param verified whether the repair is proven now and was not before
 */
public record CaseChange(
        String reference, @Nullable String site, int version, String status, List<String> changed, boolean verified) {

    /** They name the case and count its events; that they move says nothing. */
    private static final Set<String> LABELS = Set.of("reference", "version");

    public CaseChange {
        changed = List.copyOf(changed);
    }

    /** The change from one document to the next; the first has none before it. */
    static CaseChange between(@Nullable String before, CaseColumns columns, String reference, CaseDocument after) {
        Map<String, String> old = before == null ? Map.of() : Json.members(before);
        return new CaseChange(
                reference,
                columns.site(),
                columns.version(),
                columns.status(),
                changed(old, after.members()),
                isVerified(after.members()) && !isVerified(old));
    }

    private static List<String> changed(Map<String, String> old, Map<String, String> now) {
        Set<String> names = new TreeSet<>(old.keySet());
        names.addAll(now.keySet());
        names.removeAll(LABELS);
        names.removeIf(name -> alike(old.get(name), now.get(name)));
        return List.copyOf(names);
    }

    /** An empty list says as little as none; only what is as long can say the same in another order. */
    private static boolean alike(@Nullable String old, @Nullable String now) {
        String said = said(old);
        String saidNow = said(now);
        return said.equals(saidNow)
                || (said.length() == saidNow.length() && read(said).equals(read(saidNow)));
    }

    private static String said(@Nullable String member) {
        return member == null || member.equals("[]") || member.equals("{}") ? "" : member;
    }

    private static boolean isVerified(Map<String, String> document) {
        return read(said(document.get("verification")))
                .path("outcome")
                .asText()
                .equals(VerificationOutcome.VERIFIED.toString());
    }

    private static JsonNode read(String said) {
        return said.isEmpty() ? MissingNode.getInstance() : Json.read(said);
    }
}
