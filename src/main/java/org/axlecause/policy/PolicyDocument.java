package org.axlecause.policy;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.axlecause.shared.Json;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A policy in its three layers; each holds only what it sets over the layer above. */
@Schema(
        name = "PolicyDocument",
        description = "A policy in its layers; each holds only what it sets over the one above.")
public record PolicyDocument(
        @Schema(description = "What the policy is for, in a sentence.") @Nullable
        String means,

        @Schema(description = "Codes of the only sites that it judges; left out for all.") @Nullable
        List<String> covers,

        @Schema(description = "Whether somebody other than its authors must publish it.") @Nullable
        Boolean twoPersons,

        @Nullable List<ClauseWanted> chain,

        @Schema(description = "Clauses by region.") @Nullable
        Map<String, List<ClauseWanted>> regions,

        @Schema(description = "Clauses by code of the site.") @Nullable
        Map<String, List<ClauseWanted>> sites) {

    /** A document that sets nothing over the baseline. */
    public static final PolicyDocument EMPTY = new PolicyDocument("", null, null, null, null, null);

    List<ClauseWanted> ofChain() {
        return Objects.requireNonNullElse(chain, List.of());
    }

    Map<String, List<ClauseWanted>> ofRegions() {
        return new TreeMap<>(Objects.requireNonNullElse(regions, Map.of()));
    }

    Map<String, List<ClauseWanted>> ofSites() {
        return new TreeMap<>(Objects.requireNonNullElse(sites, Map.of()));
    }

    boolean wantsTwoPersons() {
        return Boolean.TRUE.equals(twoPersons);
    }

    boolean covers(String site) {
        return covers == null || covers.contains(site);
    }

    /** The same document with these layers of sites. */
    PolicyDocument withSites(Map<String, List<ClauseWanted>> others) {
        return new PolicyDocument(means, covers, twoPersons, chain, regions, others);
    }

    /** What one of its layers sets; nothing where it hasn't such a layer. */
    public List<ClauseWanted> of(LayerName layer) {
        return switch (layer.layer()) {
            case REGION -> ofRegions().getOrDefault(layer.code(), List.of());
            case SITE -> ofSites().getOrDefault(layer.code(), List.of());
            default -> ofChain();
        };
    }

    /** The same document with another layer in place of one; an empty one is left out. */
    public PolicyDocument with(LayerName layer, List<ClauseWanted> clauses) {
        return switch (layer.layer()) {
            case REGION ->
                new PolicyDocument(
                        means, covers, twoPersons, chain, replaced(ofRegions(), layer.code(), clauses), sites);
            case SITE -> withSites(replaced(ofSites(), layer.code(), clauses));
            default -> new PolicyDocument(means, covers, twoPersons, clauses, regions, sites);
        };
    }

    private static Map<String, List<ClauseWanted>> replaced(
            Map<String, List<ClauseWanted>> layers, String code, List<ClauseWanted> clauses) {
        if (clauses.isEmpty()) {
            layers.remove(code);
        } else {
            layers.put(code, clauses);
        }
        return layers;
    }

    /** The same document without clauses that are no word of this release. */
    public PolicyDocument known() {
        return new PolicyDocument(means, covers, twoPersons, known(ofChain()), known(ofRegions()), known(ofSites()));
    }

    private static Map<String, List<ClauseWanted>> known(Map<String, List<ClauseWanted>> layers) {
        layers.replaceAll((code, layer) -> known(layer));
        return layers;
    }

    private static List<ClauseWanted> known(@Nullable List<ClauseWanted> layer) {
        return Objects.requireNonNullElse(layer, List.<ClauseWanted>of()).stream()
                .filter(clause -> clause != null && Vocabulary.released().find(clause.clause()) != null)
                .toList();
    }

    /** The document as it is stored. */
    public String toJson() {
        return Json.text(this);
    }

    /** A document that was stored. */
    public static PolicyDocument of(String json) {
        try {
            return Json.mapper().readValue(json, PolicyDocument.class);
        } catch (JsonProcessingException broken) {
            throw new IllegalStateException("A kept policy can't be read", broken);
        }
    }
}
