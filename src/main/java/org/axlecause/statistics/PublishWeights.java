package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.axlecause.access.Act;
import org.axlecause.access.ActStore;
import org.axlecause.access.Actor;
import org.axlecause.policy.PolicyVersionStore;
import org.axlecause.policy.Tags;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.axlecause.shared.TenantTransaction;
import org.axlecause.statistics.CauseWeightsViews.PublicationWanted;
import org.axlecause.statistics.CauseWeightsViews.VersionView;
import org.jspecify.annotations.Nullable;

/** Publishes proposed weights of causes, as policies are published, and shows what was published. */
@ApplicationScoped
class PublishWeights {

    private static final int LONGEST_REASON = 500;
    private static final int MOST_YEARS_AHEAD = 10;

    private final WeightsVersionStore versions;
    private final ProposalStore proposals;
    private final PolicyVersionStore policies;
    private final ActStore acts;
    private final TenantTransaction transaction;

    PublishWeights(
            WeightsVersionStore versions,
            ProposalStore proposals,
            PolicyVersionStore policies,
            ActStore acts,
            TenantTransaction transaction) {
        this.versions = versions;
        this.proposals = proposals;
        this.policies = policies;
        this.acts = acts;
        this.transaction = transaction;
    }

    /**
     * Publishes a proposal as the next version.
     *
     * @param expected If-Match as it was sent
     */
    VersionView publish(@Nullable String expected, @Nullable PublicationWanted wanted, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            LearnWeights.refuseSomeSites(actor);
            versions.writeOneAtATime();
            Proposal proposal = proposal(wanted);
            matched(proposal, expected);
            refuseUnfit(proposal);
            refuseOnePerson(proposal, actor);
            WeightsVersion before = versions.all().stream().findFirst().orElse(null);
            OffsetDateTime now = versions.now().truncatedTo(ChronoUnit.MICROS);
            WeightsVersion version = new WeightsVersion(
                    before == null ? 1 : before.version() + 1,
                    effectiveFrom(Objects.requireNonNull(wanted), now, before),
                    proposal.id(),
                    weights(proposal),
                    List.of(proposal.createdBy()),
                    Objects.requireNonNull(wanted.reason()).strip(),
                    now,
                    actor.name());
            versions.add(version);
            proposals.save(proposal.published());
            acts.note(
                    actor.name(),
                    Act.CAUSE_WEIGHTS_PUBLISHED,
                    proposal.id().toString(),
                    Map.of(
                            "version", String.valueOf(version.version()),
                            "effectiveFrom", version.effectiveFrom().toString()));
            return VersionView.whole(version, WeightsVersion.State.TO_COME);
        });
    }

    /** Every version, the newest first. */
    List<VersionView> all(Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            LearnWeights.refuseSomeSites(actor);
            Timetable timetable = versions.timetable();
            return versions.all().stream()
                    .map(version -> VersionView.line(version, timetable.stateOf(version)))
                    .toList();
        });
    }

    VersionView find(int version, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            LearnWeights.refuseSomeSites(actor);
            Timetable timetable = versions.timetable();
            return versions.find(version)
                    .map(found -> VersionView.whole(found, timetable.stateOf(found)))
                    .orElseThrow(
                            () -> RefusedException.notFound("No weights of causes have the version " + version + "."));
        });
    }

    private Proposal proposal(@Nullable PublicationWanted wanted) {
        String id = wanted == null ? null : wanted.proposal();
        if (id == null) {
            throw RefusedException.invalidPayload(List.of(new Problem.Cause(
                    "/proposal", "The id of a proposal is expected; GET /v1/cause-weights/proposals lists them.")));
        }
        try {
            return proposals.lock(LearnWeights.idOf(id)).orElseThrow(() -> LearnWeights.isNotThere(id));
        } catch (RefusedException unknown) {
            throw RefusedException.invalidPayload(List.of(new Problem.Cause(
                    "/proposal", "There is no proposal '" + id + "'; GET /v1/cause-weights/proposals lists them.")));
        }
    }

    private static void matched(Proposal proposal, @Nullable String expected) {
        if (expected == null) {
            throw RefusedException.because(
                    Reason.PRECONDITION_REQUIRED,
                    "Send If-Match with the ETag of the proposal that you publish; GET shows it.");
        }
        if (!Tags.match(expected, proposal.tag())) {
            throw RefusedException.because(
                    Reason.PRECONDITION_FAILED,
                    "If-Match is " + expected + ", but the proposal is " + proposal.state()
                            + " since. Get it again and look" + " at what it says now.");
        }
    }

    private static void refuseUnfit(Proposal proposal) {
        if (proposal.state() != Proposal.State.PROPOSED) {
            throw RefusedException.because(
                    Reason.CONFLICT,
                    "The proposal is " + proposal.state() + "; only one that is " + Proposal.State.PROPOSED
                            + " can be published.");
        }
    }

    /** The rule of two persons of any of the tenant's policies holds here too: these weights judge at all sites. */
    private void refuseOnePerson(Proposal proposal, Actor actor) {
        if (policies.wantTwoPersons() && proposal.createdBy().equals(actor.name())) {
            throw RefusedException.because(
                    Reason.NOT_ALLOWED,
                    "two-persons-needed",
                    "A policy wants two persons, and you have made this proposal. Let somebody publish it who has not.",
                    List.of());
        }
    }

    private static OffsetDateTime effectiveFrom(
            PublicationWanted wanted, OffsetDateTime now, @Nullable WeightsVersion before) {
        OffsetDateTime earliest = now.plus(Timetable.LEAD);
        if (before != null && before.effectiveFrom().isAfter(earliest)) {
            earliest = before.effectiveFrom();
        }
        OffsetDateTime latest = now.plusYears(MOST_YEARS_AHEAD);
        String reason = wanted.reason() == null ? "" : wanted.reason().strip();
        OffsetDateTime from = wanted.effectiveFrom();
        List<Problem.Cause> causes = new ArrayList<>();
        if (from == null || from.isBefore(earliest) || from.isAfter(latest)) {
            causes.add(new Problem.Cause(
                    "/effectiveFrom",
                    from + " can't be; expected is a moment from " + earliest + " to " + latest
                            + ": every replica must know of a version before it begins, and it begins no sooner than the"
                            + " version before."));
        }
        if (reason.isEmpty() || reason.length() > LONGEST_REASON) {
            causes.add(new Problem.Cause(
                    "/reason", "A reason of 1 to " + LONGEST_REASON + " characters is expected; history keeps it."));
        }
        if (!causes.isEmpty() || from == null) {
            throw RefusedException.invalidPayload(causes);
        }
        return from.withOffsetSameInstant(ZoneOffset.UTC).truncatedTo(ChronoUnit.MICROS);
    }

    private static List<WeightsVersion.Published> weights(Proposal proposal) {
        LearningTerms terms = proposal.terms();
        return terms == null ? List.of() : proposal.learning().published(terms);
    }
}
