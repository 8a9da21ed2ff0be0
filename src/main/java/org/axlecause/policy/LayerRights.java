package org.axlecause.policy;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.axlecause.access.Actor;
import org.axlecause.shared.RefusedException;
import org.jspecify.annotations.Nullable;

/**
 * What a key of some sites may do to a policy: see it where it covers one of them, and set the layers of these sites alone.
 * Chain and region are for keys of all sites, so that nobody unlocks what binds him.
 */
@ApplicationScoped
class LayerRights {

    /** Refuses, as if there were none, a policy that covers no site of the actor. */
    void refuseUnseen(String name, @Nullable PolicyDocument document, Actor actor) {
        Set<String> own = actor.sites();
        if (own != null && (document == null || own.stream().noneMatch(document::covers))) {
            throw RefusedException.notFound("There is no policy '" + name + "'.");
        }
    }

    /** What an actor sees of a document. */
    PolicyDocument shown(PolicyDocument document, Actor actor) {
        Set<String> own = actor.sites();
        return own == null ? document : document.withSites(of(document, own));
    }

    /** The document that results from what an actor has sent. */
    @Nullable
    PolicyDocument written(@Nullable PolicyDocument sent, @Nullable PolicyDocument base, Actor actor) {
        Set<String> own = actor.sites();
        if (own == null || sent == null || base == null) {
            return sent;
        }
        PolicyDocument shown = shown(base, actor);
        boolean others = sent.ofSites().keySet().stream().anyMatch(site -> !own.contains(site));
        if (others || !alike(sent, shown)) {
            throw RefusedException.notAllowed("This key is one of the sites "
                    + String.join(", ", own.stream().sorted().toList())
                    + " and sets their layers alone. Leave everything else as GET shows it.");
        }
        Map<String, List<ClauseWanted>> layers = new TreeMap<>(base.ofSites());
        layers.keySet().removeAll(own);
        layers.putAll(sent.ofSites());
        return base.withSites(layers);
    }

    /** Refuses a publication by which more would change than the layers of the actor's sites. */
    void refusePublication(PolicyDocument draft, @Nullable PolicyDocument last, Actor actor) {
        Set<String> own = actor.sites();
        if (own == null) {
            return;
        }
        PolicyDocument before = Objects.requireNonNullElse(last, PolicyDocument.EMPTY);
        Map<String, List<ClauseWanted>> others = draft.ofSites();
        Map<String, List<ClauseWanted>> othersBefore = before.ofSites();
        others.keySet().removeAll(own);
        othersBefore.keySet().removeAll(own);
        if (!alike(draft, before) || !others.equals(othersBefore)) {
            throw RefusedException.notAllowed(
                    "The draft changes more than the layers of this key's sites. Let somebody publish it who may touch all"
                            + " sites.");
        }
    }

    private static boolean alike(PolicyDocument one, PolicyDocument other) {
        return one.withSites(Map.of()).equals(other.withSites(Map.of()));
    }

    private static Map<String, List<ClauseWanted>> of(PolicyDocument document, Set<String> sites) {
        Map<String, List<ClauseWanted>> layers = document.ofSites();
        layers.keySet().retainAll(sites);
        return layers;
    }
}
