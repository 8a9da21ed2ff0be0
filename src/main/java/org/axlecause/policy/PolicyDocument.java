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
    static final PolicyDocument EMPTY = new PolicyDocument("", null, null, null, null, null);

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

    /** The document as it is stored. */
    String toJson() {
        return Json.text(this);
    }

    static PolicyDocument of(String json) {
        try {
            return Json.mapper().readValue(json, PolicyDocument.class);
        } catch (JsonProcessingException broken) {
            throw new IllegalStateException("A kept policy can't be read", broken);
        }
    }
}
