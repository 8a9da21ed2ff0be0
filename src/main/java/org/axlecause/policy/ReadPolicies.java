package org.axlecause.policy;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.access.Actor;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.policy.PolicyViews.ComparisonView;
import org.axlecause.policy.PolicyViews.EffectiveClauseView;
import org.axlecause.policy.PolicyViews.EffectiveView;
import org.axlecause.policy.PolicyViews.PolicyView;
import org.axlecause.policy.PolicyViews.VersionView;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** Shows policies to those who may see them: drafts, versions, what holds at a site, and what differs. */
@ApplicationScoped
public class ReadPolicies {

    private static final String DRAFT = "draft";

    private final PolicyVersionStore versions;
    private final PolicyDraftStore drafts;
    private final LayerRights rights;
    private final SiteStore sites;
    private final TenantTransaction transaction;
    private final Clock clock;

    ReadPolicies(
            PolicyVersionStore versions,
            PolicyDraftStore drafts,
            LayerRights rights,
            SiteStore sites,
            TenantTransaction transaction,
            Clock clock) {
        this.versions = versions;
        this.drafts = drafts;
        this.rights = rights;
        this.sites = sites;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** The policies that the actor may see, by name. */
    public List<PolicyView> all(Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            Map<String, PolicyView> views = new TreeMap<>();
            for (PolicyVersion version : versions.latest()) {
                if (isSeen(version.document(), actor)) {
                    views.put(
                            version.name(),
                            new PolicyView(version.name(), version.version(), version.effectiveFrom(), false));
                }
            }
            for (PolicyDraft draft : drafts.all()) {
                if (isSeen(draft.document(), actor)) {
                    PolicyView known = views.get(draft.name());
                    views.put(
                            draft.name(),
                            new PolicyView(
                                    draft.name(),
                                    known == null ? null : known.latest(),
                                    known == null ? null : known.effectiveFrom(),
                                    true));
                }
            }
            return List.copyOf(views.values());
        });
    }

    /** The draft of a policy. */
    public PolicyDraft draft(String name, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            PolicyDraft draft = drafts.find(name)
                    .orElseThrow(() -> RefusedException.notFound("The policy '" + name
                            + "' has no draft. Write one with PUT /v1/policies/" + name + "/draft."));
            rights.refuseUnseen(name, draft.document(), actor);
            return draft;
        });
    }

    /** The versions of a policy, the newest first. */
    public List<VersionView> versions(String name, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            List<PolicyVersion> all = versions.versions(name).stream()
                    .filter(version -> isSeen(version.document(), actor))
                    .toList();
            if (all.isEmpty()) {
                throw RefusedException.notFound("The policy '" + name + "' has no version yet.");
            }
            return all.stream()
                    .map(version -> VersionView.of(version, isSuperseded(version, all), null))
                    .toList();
        });
    }

    /** A version of a policy. */
    public VersionView version(String name, int number, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            PolicyVersion version = found(name, number, actor);
            return VersionView.of(
                    version, isSuperseded(version, versions.versions(name)), rights.shown(version.document(), actor));
        });
    }

    /** A version as it holds at a site; the one in effect there today unless a number is given. */
    public EffectiveView effective(String name, String code, @Nullable Integer number, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            Site site = sites.find(code)
                    .filter(known -> actor.maySee(known.site()))
                    .orElseThrow(() -> RefusedException.notFound("There is no site '" + code + "'."));
            PolicyVersion version = number == null ? today(name, site) : found(name, number, actor);
            List<EffectiveClauseView> clauses =
                    MergedPolicy.of(version.document(), site.region(), site.site()).all().values().stream()
                            .map(EffectiveClauseView::of)
                            .toList();
            return new EffectiveView(name, version.version(), site.site(), site.region(), clauses);
        });
    }

    /** What the second of two versions, or the draft, sets otherwise than the first. */
    public ComparisonView comparison(String name, @Nullable String from, @Nullable String to, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            ComparePolicies comparison = ComparePolicies.of(
                    rights.shown(document(name, "from", from, actor), actor),
                    rights.shown(document(name, "to", to, actor), actor));
            return new ComparisonView(
                    name, String.valueOf(from), String.valueOf(to), comparison.words(), comparison.table());
        });
    }

    /** The newest published document of a policy, or null where none is published. */
    @Nullable
    PolicyDocument latest(String name) {
        return versions.versions(name).stream()
                .findFirst()
                .map(PolicyVersion::document)
                .orElse(null);
    }

    private PolicyDocument document(String name, String parameter, @Nullable String which, Actor actor) {
        if (DRAFT.equals(which)) {
            return draft(name, actor).document();
        }
        if (which == null || !which.matches("[1-9][0-9]{0,5}")) {
            throw RefusedException.invalidPayload(List.of(new Problem.Cause(
                    "/" + parameter, "'" + which + "' is no version; expected is a number such as 1, or draft.")));
        }
        return found(name, Integer.parseInt(which), actor).document();
    }

    private PolicyVersion found(String name, int number, Actor actor) {
        return versions.find(name, number)
                .filter(version -> isSeen(version.document(), actor))
                .orElseThrow(
                        () -> RefusedException.notFound("The policy '" + name + "' has no version " + number + "."));
    }

    private PolicyVersion today(String name, Site site) {
        LocalDate day = LocalDate.now(clock.withZone(site.zone()));
        return versions.inEffect(site.site(), day)
                .filter(key -> key.name().equals(name))
                .flatMap(key -> versions.find(key.name(), key.version()))
                .orElseThrow(() -> RefusedException.notFound(
                        "No version of the policy '" + name + "' is in effect at " + site.site() + " on " + day + "."));
    }

    private boolean isSuperseded(PolicyVersion version, List<PolicyVersion> all) {
        LocalDate today = LocalDate.now(clock.withZone(ZoneOffset.UTC));
        return all.stream()
                .anyMatch(later -> later.version() > version.version()
                        && !later.effectiveFrom().isAfter(today));
    }

    private boolean isSeen(PolicyDocument document, Actor actor) {
        return actor.sites() == null || actor.sites().stream().anyMatch(document::covers);
    }
}
