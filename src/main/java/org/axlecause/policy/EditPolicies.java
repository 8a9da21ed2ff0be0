package org.axlecause.policy;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Pattern;
import org.axlecause.access.Act;
import org.axlecause.access.ActStore;
import org.axlecause.access.Actor;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.policy.PolicyViews.PublicationView;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** Writes drafts of policies and publishes them. */
@ApplicationScoped
public class EditPolicies {

    private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9-]{0,62}");
    private static final int LONGEST_REASON = 500;

    private final PolicyVersionStore versions;
    private final PolicyDraftStore drafts;
    private final ReadPolicies read;
    private final DocumentCheck check;
    private final LayerRights rights;
    private final SiteStore sites;
    private final ActStore acts;
    private final PolicyWatch watch;
    private final TenantTransaction transaction;
    private final Clock clock;

    EditPolicies(
            PolicyVersionStore versions,
            PolicyDraftStore drafts,
            ReadPolicies read,
            DocumentCheck check,
            LayerRights rights,
            SiteStore sites,
            ActStore acts,
            PolicyWatch watch,
            TenantTransaction transaction,
            Clock clock) {
        this.versions = versions;
        this.drafts = drafts;
        this.read = read;
        this.check = check;
        this.rights = rights;
        this.sites = sites;
        this.acts = acts;
        this.watch = watch;
        this.transaction = transaction;
        this.clock = clock;
    }

    /**
     * Writes the draft of a policy in place of the one before.
     *
     * @param expected If-Match as it was sent; needed where there is a draft
     */
    public PolicyDraft write(String name, @Nullable String expected, @Nullable PolicyDocument sent, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            refuseName(name);
            versions.writeOneAtATime();
            PolicyDraft before = drafts.find(name).orElse(null);
            PolicyDocument base = before == null ? read.latest(name) : before.document();
            rights.refuseUnseen(name, base, actor);
            matched(before, expected);
            PolicyDocument document = check.checked(rights.written(sent, base, actor), today());
            TreeSet<String> authors = new TreeSet<>(before == null ? List.of() : before.authors());
            authors.add(actor.name());
            PolicyDraft draft =
                    new PolicyDraft(name, UUID.randomUUID(), document, List.copyOf(authors), now(), actor.name());
            drafts.save(draft);
            acts.note(
                    actor.name(),
                    Act.POLICY_DRAFT_WRITTEN,
                    name,
                    Map.of("tag", draft.tag().toString()));
            return draft;
        });
    }

    /** Publishes the draft of a policy as its next version. */
    public PolicyVersion publish(
            String name, @Nullable String expected, @Nullable PublicationView wanted, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            versions.writeOneAtATime();
            PolicyDraft draft = drafts.find(name)
                    .orElseThrow(() -> RefusedException.notFound("The policy '" + name
                            + "' has no draft. Write one with PUT /v1/policies/" + name + "/draft."));
            PolicyVersion before = versions.versions(name).stream().findFirst().orElse(null);
            PolicyDocument last = before == null ? null : before.document();
            rights.refuseUnseen(name, draft.document(), actor);
            matched(draft, expected);
            rights.refusePublication(draft.document(), last, actor);
            refuseOnePerson(draft, last, actor);
            LocalDate from = effectiveFrom(wanted, draft.document(), before);
            check.checked(draft.document(), from);
            refuseOverlap(draft, from);
            PolicyVersion version = new PolicyVersion(
                    name,
                    before == null ? 1 : before.version() + 1,
                    from,
                    draft.document(),
                    draft.document().covers(),
                    draft.authors(),
                    Objects.requireNonNull(Objects.requireNonNull(wanted).reason())
                            .strip(),
                    now(),
                    actor.name());
            versions.add(version);
            drafts.remove(name);
            acts.note(
                    actor.name(),
                    Act.POLICY_PUBLISHED,
                    name,
                    Map.of("version", String.valueOf(version.version()), "effectiveFrom", from.toString()));
            watch.published(version);
            return version;
        });
    }

    private void refuseName(String name) {
        if (!NAME.matcher(name).matches() || name.equals(PolicyFile.baseline().name())) {
            throw RefusedException.invalidPayload(List.of(new Problem.Cause(
                    "/name",
                    "'" + name
                            + "' can't be the name of a policy; use 1 to 63 of a-z 0-9 and -, other than baseline.")));
        }
    }

    private static void matched(@Nullable PolicyDraft draft, @Nullable String expected) {
        if (draft != null && expected == null) {
            throw RefusedException.because(
                    Reason.PRECONDITION_REQUIRED,
                    "Send If-Match with the ETag of the draft that you change; GET shows it.");
        }
        if (expected == null
                || (draft != null && Tags.match(expected, draft.tag().toString()))) {
            return;
        }
        throw RefusedException.because(
                Reason.PRECONDITION_FAILED,
                "If-Match is " + expected + ", but "
                        + (draft == null
                                ? "there is no draft"
                                : "the draft was written by " + draft.writtenBy() + " since")
                        + ". Get the draft again and repeat the change.");
    }

    /** A rule that is in force, or that the draft brings in, can't be left out by the one whom it binds. */
    private static void refuseOnePerson(PolicyDraft draft, @Nullable PolicyDocument last, Actor actor) {
        boolean wanted = draft.document().wantsTwoPersons() || (last != null && last.wantsTwoPersons());
        if (wanted && draft.authors().contains(actor.name())) {
            throw RefusedException.because(
                    Reason.NOT_ALLOWED,
                    "two-persons-needed",
                    "The policy wants two persons, and you have written on this draft. Let somebody publish it who has"
                            + " not.",
                    List.of());
        }
    }

    private LocalDate effectiveFrom(
            @Nullable PublicationView wanted, PolicyDocument document, @Nullable PolicyVersion before) {
        String reason =
                wanted == null || wanted.reason() == null ? "" : wanted.reason().strip();
        LocalDate from = wanted == null ? null : wanted.effectiveFrom();
        LocalDate earliest = earliest(document);
        if (before != null && before.effectiveFrom().isAfter(earliest)) {
            earliest = before.effectiveFrom();
        }
        List<Problem.Cause> causes = new java.util.ArrayList<>();
        if (reason.isEmpty() || reason.length() > LONGEST_REASON) {
            causes.add(new Problem.Cause(
                    "/reason", "A reason of 1 to " + LONGEST_REASON + " characters is expected; history keeps it."));
        }
        if (from == null || from.isBefore(earliest)) {
            causes.add(new Problem.Cause(
                    "/effectiveFrom",
                    from + " can't be; expected is " + earliest
                            + " or later: a day that is past at none of its sites, and not before that of the version"
                            + " before."));
        }
        if (!causes.isEmpty() || from == null) {
            throw RefusedException.invalidPayload(causes);
        }
        return from;
    }

    /** The latest of the present days of the sites that are covered. */
    private LocalDate earliest(PolicyDocument document) {
        return sites.all().stream()
                .filter(site -> document.covers(site.site()))
                .map(Site::zone)
                .map(zone -> LocalDate.now(clock.withZone(zone)))
                .max(Comparator.naturalOrder())
                .orElse(today());
    }

    private void refuseOverlap(PolicyDraft draft, LocalDate from) {
        for (PolicyVersion other : versions.beside(draft.name(), from)) {
            List<String> covers = draft.document().covers();
            List<String> both = sites.all().stream()
                    .map(Site::site)
                    .filter(site -> (covers == null || covers.contains(site)) && other.covers(site))
                    .toList();
            boolean all = covers == null && other.covers() == null;
            if (all || !both.isEmpty()) {
                throw RefusedException.because(
                        Reason.CONFLICT,
                        "policies-overlap",
                        "Version " + other.version() + " of the policy '" + other.name() + "' judges "
                                + (all ? "all sites" : String.join(", ", both)) + " as well, and a site has one policy."
                                + " Name the sites under `covers` here or there.",
                        List.of());
            }
        }
    }

    private LocalDate today() {
        return LocalDate.now(clock.withZone(ZoneOffset.UTC));
    }

    private OffsetDateTime now() {
        return OffsetDateTime.now(clock).truncatedTo(ChronoUnit.MICROS);
    }
}
