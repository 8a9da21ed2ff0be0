package org.axlecause.statistics;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.axlecause.access.Act;
import org.axlecause.access.ActStore;
import org.axlecause.access.Actor;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.diagnosis.RankedCause;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Matter;
import org.axlecause.judgement.PastCases;
import org.axlecause.judgement.PastCases.Past;
import org.axlecause.judgement.PastCases.Run;
import org.axlecause.judgement.PastCases.Wanted;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Proposes weights of causes and works them out: counts the causes that were confirmed, learns weights from them, and
 * judges the cases held out anew by the book and by what was learned. Each step is one transaction that takes some cases
 * and moves on; what a lost replica had begun is begun anew by another.
 */
@ApplicationScoped
class LearnWeights {

    private static final Logger LOG = Logger.getLogger(LearnWeights.class);
    private static final List<String> SOURCES = List.of(Proposal.LEARNED, Proposal.BOOK);
    private static final Wanted ALL_CASES = new Wanted(null, null, null, null);

    private final ProposalStore proposals;
    private final ConfirmedCaseStore confirmedCases;
    private final WeightsVersionStore versions;
    private final PastCases pastCases;
    private final Judge judge;
    private final Snapshots snapshots;
    private final ActStore acts;
    private final TenantTransaction transaction;
    private final Clock clock;
    private final LearningTerms released = LearningTerms.released();
    private final int casesAtOnce;

    LearnWeights(
            ProposalStore proposals,
            ConfirmedCaseStore confirmedCases,
            WeightsVersionStore versions,
            PastCases pastCases,
            Judge judge,
            Snapshots snapshots,
            ActStore acts,
            TenantTransaction transaction,
            Clock clock,
            @ConfigProperty(name = "axlecause.learning.cases-at-once") int casesAtOnce) {
        this.proposals = proposals;
        this.confirmedCases = confirmedCases;
        this.versions = versions;
        this.pastCases = pastCases;
        this.judge = judge;
        this.snapshots = snapshots;
        this.acts = acts;
        this.transaction = transaction;
        this.clock = clock;
        this.casesAtOnce = casesAtOnce;
    }

    /**
     * Begins to learn from the cases that have ended by now, or proposes the book again, which needs no work.
     *
     * @param weights learned or book; null for learned
     */
    Proposal propose(@Nullable String weights, Actor actor) {
        if (weights != null && !SOURCES.contains(weights)) {
            throw RefusedException.invalidPayload(List.of(new Problem.Cause(
                    "/weights", "'" + weights + "' can't be proposed; expected is one of " + SOURCES + ".")));
        }
        boolean book = Proposal.BOOK.equals(weights);
        return transaction.call(actor.tenant(), () -> {
            refuseSomeSites(actor);
            versions.writeOneAtATime();
            if (!book && proposals.isOneAtWork()) {
                throw RefusedException.because(
                        Reason.CONFLICT, "Weights are being learned already. Wait for that proposal, or withdraw it.");
            }
            OffsetDateTime now = now();
            Proposal proposal = new Proposal(
                    UUID.randomUUID(),
                    book ? Proposal.State.PROPOSED : Proposal.State.COUNTING,
                    now,
                    book ? null : termsWithCellsTold(),
                    "",
                    Learning.NONE,
                    null,
                    now,
                    actor.name(),
                    book ? now : null);
            proposals.add(proposal);
            acts.note(
                    actor.name(),
                    Act.CAUSE_WEIGHTS_PROPOSED,
                    proposal.id().toString(),
                    Map.of("weights", proposal.source()));
            return proposal;
        });
    }

    /** Every proposal, the newest first. */
    List<Proposal> all(Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            refuseSomeSites(actor);
            return proposals.all();
        });
    }

    Proposal find(String id, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            refuseSomeSites(actor);
            return proposals.find(idOf(id)).orElseThrow(() -> isNotThere(id));
        });
    }

    /** Ends a proposal that was not published; what it has found so far stays. */
    Proposal withdraw(String id, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            refuseSomeSites(actor);
            Proposal proposal = proposals.lock(idOf(id)).orElseThrow(() -> isNotThere(id));
            if (proposal.state() == Proposal.State.PUBLISHED) {
                throw RefusedException.because(
                        Reason.CONFLICT,
                        "The proposal was published, and what is published stays. Propose the book, or learn anew, and"
                                + " publish that.");
            }
            if (proposal.state() == Proposal.State.WITHDRAWN) {
                return proposal;
            }
            Proposal withdrawn = proposal.ended(Proposal.State.WITHDRAWN, proposal.model(), now());
            proposals.save(withdrawn);
            acts.note(actor.name(), Act.CAUSE_WEIGHTS_WITHDRAWN, proposal.id().toString(), Map.of());
            return withdrawn;
        });
    }

    /** Takes the next cases of a proposal, all or nothing; false where there is nothing to do, or somebody is at it. */
    @ActivateRequestContext
    boolean step(ProposalStore.Due due) {
        return transaction.call(due.tenant(), () -> {
            Proposal proposal = proposals.claim(due.proposal()).orElse(null);
            LearningTerms own = proposal == null ? null : proposal.terms();
            if (proposal == null || own == null || !proposal.isAtWork()) {
                return false;
            }
            List<ConfirmedCase> cases = confirmedCases.after(proposal.position(), proposal.asOf(), casesAtOnce);
            boolean counting = proposal.state() == Proposal.State.COUNTING;
            if (cases.isEmpty()) {
                proposals.save(counting ? counted(proposal, own) : scored(proposal, own));
            } else {
                proposals.save(proposal.grown(
                        counting ? count(cases, proposal, own) : score(cases, proposal, own),
                        cases.get(cases.size() - 1).reference()));
            }
            return true;
        });
    }

    private Learning count(List<ConfirmedCase> cases, Proposal proposal, LearningTerms own) {
        VehicleSplit split = new VehicleSplit(proposal.id(), own.heldOutShare());
        return each(
                cases,
                (found, matter) -> split.holdsOut(found.vehicle())
                        ? Learning.HELD_OUT
                        : Learning.counted(judge.axleShares(matter), found));
    }

    private Learning score(List<ConfirmedCase> cases, Proposal proposal, LearningTerms own) {
        VehicleSplit split = new VehicleSplit(proposal.id(), own.heldOutShare());
        CauseWeights learned =
                WeightsVersion.causeWeights(null, proposal.learning().published(own));
        return each(
                cases.stream().filter(found -> split.holdsOut(found.vehicle())).toList(), (found, matter) -> {
                    List<RankedCause> byBook = judge.atArrival(matter.weighedBy(CauseWeights.BOOK));
                    List<RankedCause> byLearned = judge.atArrival(matter.weighedBy(learned));
                    return byBook == null || byLearned == null
                            ? Learning.NONE
                            : Learning.scored(byBook, byLearned, found);
                });
    }

    /** What the cases tell in which something was confirmed and whose vehicle is known, in the order of their references. */
    private Learning each(List<ConfirmedCase> cases, BiFunction<ConfirmedCase, Matter, Learning> tells) {
        List<ConfirmedCase> telling = cases.stream()
                .filter(found -> found.vehicleKnown() && !found.causes().isEmpty())
                .toList();
        if (telling.isEmpty()) {
            return Learning.NONE;
        }
        Map<String, ConfirmedCase> byReference =
                telling.stream().collect(Collectors.toMap(ConfirmedCase::reference, Function.identity()));
        Run run = new Run(
                telling.get(0).reference(), telling.get(telling.size() - 1).reference(), telling.size());
        return pastCases.recall(ALL_CASES, run).stream()
                .map(Past::matter)
                .map(matter -> {
                    ConfirmedCase found = byReference.get(matter.history().reference());
                    return found == null ? Learning.NONE : told(found, matter, tells);
                })
                .reduce(Learning.NONE, Learning::plus);
    }

    private static Learning told(
            ConfirmedCase found, Matter matter, BiFunction<ConfirmedCase, Matter, Learning> tells) {
        try {
            return tells.apply(found, matter);
        } catch (RuntimeException fault) {
            LOG.errorf(fault, "The case %s could not be judged anew for what is learned", found.reference());
            return Learning.FAILED;
        }
    }

    private Proposal counted(Proposal proposal, LearningTerms own) {
        return proposal.learning().published(own).isEmpty()
                ? proposal.ended(Proposal.State.NOTHING_LEARNED, null, now())
                : proposal.counted();
    }

    private Proposal scored(Proposal proposal, LearningTerms own) {
        Learning learning = proposal.learning();
        if (learning.before().isEmpty()) {
            return proposal.ended(Proposal.State.NOTHING_LEARNED, null, now());
        }
        return proposal.ended(
                Proposal.State.PROPOSED,
                ProposedModel.of(
                        proposal.asOf().toInstant(),
                        own,
                        learning.seen(),
                        calibration(learning.before()),
                        calibration(learning.after())),
                now());
    }

    private Calibration calibration(List<Learning.ForecastCount> counts) {
        return Calibration.of(
                counts.stream().map(Learning.ForecastCount::forecasts).toList(),
                snapshots.terms().calibrationBins());
    }

    /** What is withheld where it is told teaches nothing either, since the weights would tell it. */
    private LearningTerms termsWithCellsTold() {
        return new LearningTerms(
                released.priorStrength(),
                Math.max(released.leastCases(), snapshots.leastCell()),
                released.heldOutShare());
    }

    static void refuseSomeSites(Actor actor) {
        if (actor.sites() != null) {
            throw RefusedException.notAllowed(
                    "Weights of causes are learned from all sites and hold at all of them; this"
                            + " key may see some sites alone.");
        }
    }

    static UUID idOf(String id) {
        try {
            return UUID.fromString(id);
        } catch (IllegalArgumentException none) {
            throw isNotThere(id);
        }
    }

    static RefusedException isNotThere(String id) {
        return RefusedException.notFound("There is no proposal '" + id + "'.");
    }

    private OffsetDateTime now() {
        return OffsetDateTime.now(clock).truncatedTo(ChronoUnit.MICROS);
    }
}
