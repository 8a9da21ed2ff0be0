package org.axlecause.policy;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.axlecause.access.Act;
import org.axlecause.access.ActStore;
import org.axlecause.access.Actor;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.Policy;
import org.axlecause.inference.RuleBase;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.PastCases;
import org.axlecause.judgement.PastCases.Past;
import org.axlecause.judgement.PastCases.Run;
import org.axlecause.judgement.PastCases.Wanted;
import org.axlecause.policy.TrialViews.TrialWanted;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.axlecause.shared.TenantTransaction;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** Begins, shows, cancels and does trials: what a draft would have done to past cases. */
@ApplicationScoped
public class TryPolicies {

    private static final int MOST_RUNNING = 5;
    private static final String DRAFT = "draft";

    private final TrialStore trials;
    private final ReadPolicies read;
    private final PastCases pastCases;
    private final SiteStore sites;
    private final ActStore acts;
    private final Policy baseline;
    private final RuleBase rules;
    private final TryCase tryCase;
    private final Judge judge;
    private final TenantTransaction transaction;
    private final Clock clock;
    private final int batch;

    TryPolicies(
            TrialStore trials,
            ReadPolicies read,
            PastCases pastCases,
            SiteStore sites,
            ActStore acts,
            Policy baseline,
            RuleBase rules,
            Judge judge,
            TenantTransaction transaction,
            Clock clock,
            @ConfigProperty(name = "axlecause.trials.batch") int batch) {
        this.trials = trials;
        this.read = read;
        this.pastCases = pastCases;
        this.sites = sites;
        this.acts = acts;
        this.baseline = baseline;
        this.rules = rules;
        this.judge = judge;
        this.tryCase = new TryCase(judge);
        this.transaction = transaction;
        this.clock = clock;
        this.batch = batch;
    }

    /** Begins a trial of the draft as it is now. */
    public Trial begin(String name, @Nullable TrialWanted sent, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            PolicyDraft draft = read.draft(name, actor);
            Wanted wanted = wanted(sent, draft.document(), actor);
            if (trials.running() >= MOST_RUNNING) {
                throw RefusedException.because(
                        Reason.CONFLICT, MOST_RUNNING + " trials are running already. Wait for one, or cancel it.");
            }
            List<Run> runs = pastCases.runs(wanted, batch);
            Trial trial = new Trial(
                    UUID.randomUUID(),
                    name,
                    draft.document(),
                    wanted,
                    runs.isEmpty() ? Trial.State.DONE : Trial.State.RUNNING,
                    runs.stream().mapToInt(Run::cases).sum(),
                    0,
                    rules.version(),
                    TrialResult.NONE,
                    now(),
                    actor.name(),
                    runs.isEmpty() ? now() : null);
            trials.add(trial, runs);
            acts.note(
                    actor.name(),
                    Act.POLICY_TRIAL_BEGUN,
                    name,
                    Map.of("trial", trial.id().toString(), "cases", String.valueOf(trial.cases())));
            return trial;
        });
    }

    /** A trial of cases that the actor may see. */
    public Trial find(String id, Actor actor) {
        return transaction.call(actor.tenant(), () -> found(id, actor));
    }

    /** Ends a trial before its time; what it has found so far stays. */
    public Trial cancel(String id, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            Trial trial = trials.lock(found(id, actor).id()).orElseThrow();
            if (trial.state() != Trial.State.RUNNING) {
                return trial;
            }
            Trial cancelled = trial.ended(Trial.State.CANCELLED, now());
            trials.removeFree(trial.id());
            trials.save(cancelled);
            acts.note(
                    actor.name(),
                    Act.POLICY_TRIAL_CANCELLED,
                    trial.name(),
                    Map.of("trial", trial.id().toString()));
            return cancelled;
        });
    }

    /** A case of a trial as both policies judge it, as two case documents. */
    public TrialViews.SideBySide sideBySide(String id, String reference, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            Trial trial = found(id, actor);
            Past past = pastCases.recall(trial.wanted(), new Run(reference, reference, 1)).stream()
                    .findFirst()
                    .map(TryCase::withoutDepartures)
                    .orElseThrow(() -> RefusedException.notFound("The trial has no case " + reference + "."));
            Past drafted = new Past(past.by(draft(trial, past)), past.region(), null);
            return TrialViews.SideBySide.of(
                    pastCases.document(past, judge.judge(past.matter())),
                    pastCases.document(drafted, judge.judge(drafted.matter())));
        });
    }

    /** Does one batch of a trial, all or nothing; false where none is left to take. */
    @ActivateRequestContext
    boolean doBatch(TrialStore.Due due) {
        return transaction.call(due.tenant(), () -> {
            TrialStore.Batch claimed = trials.claim(due.trial()).orElse(null);
            Trial seen = trials.find(due.trial()).orElse(null);
            if (claimed == null || seen == null) {
                return false;
            }
            TrialResult found = TrialResult.NONE;
            if (seen.state() == Trial.State.RUNNING) {
                Map<String, Policy> merged = new HashMap<>();
                List<Past> recalled = pastCases.recall(seen.wanted(), claimed.run());
                Map<String, String> documents = pastCases.lastingDocuments(recalled);
                for (Past past : recalled) {
                    Policy draft = merged.computeIfAbsent(past.matter().site().site(), site -> draft(seen, past));
                    String reference = past.matter().history().reference();
                    found = found.plus(tryCase.tried(past, draft, documents.get(reference)));
                }
            }
            trials.remove(due.trial(), claimed.number());
            Trial trial = trials.lock(due.trial()).orElseThrow();
            if (trial.state() == Trial.State.RUNNING) {
                Trial grown = trial.with(found);
                trials.save(trials.isWorkedOff(due.trial()) ? grown.ended(Trial.State.DONE, now()) : grown);
            }
            return true;
        });
    }

    private Policy draft(Trial trial, Past past) {
        return MergedPolicy.of(
                        trial.document(), past.region(), past.matter().site().site())
                .toPolicy(trial.name() + " " + DRAFT, 0, baseline);
    }

    private Trial found(String id, Actor actor) {
        UUID trial;
        try {
            trial = UUID.fromString(id);
        } catch (IllegalArgumentException none) {
            throw RefusedException.notFound("There is no trial '" + id + "'.");
        }
        return trials.find(trial)
                .filter(found -> found.isWithin(actor.sites()))
                .orElseThrow(() -> RefusedException.notFound("There is no trial '" + id + "'."));
    }

    /** The cases that were asked for, at sites that the draft covers and the actor may touch. */
    private Wanted wanted(@Nullable TrialWanted sent, PolicyDocument draft, Actor actor) {
        TrialWanted asked = sent == null ? new TrialWanted(null, null, null, null) : sent;
        List<Problem.Cause> causes = new ArrayList<>();
        Set<String> known = new TreeSet<>();
        sites.all().stream()
                .map(Site::site)
                .filter(site -> actor.maySee(site) && draft.covers(site))
                .forEach(known::add);
        List<String> named = asked.sites();
        if (named != null) {
            for (int index = 0; index < named.size(); index++) {
                if (named.get(index) == null || !known.contains(named.get(index))) {
                    causes.add(new Problem.Cause(
                            "/sites/" + index, "'" + named.get(index) + "' is no site that the draft covers."));
                }
            }
        }
        String cause = asked.cause();
        if (cause != null
                && Stream.of(CauseCode.values())
                        .noneMatch(code -> code.toString().equals(cause))) {
            causes.add(new Problem.Cause("/cause", "'" + cause + "' is no code of a cause."));
        }
        if (asked.from() != null && asked.to() != null && !asked.from().isBefore(asked.to())) {
            causes.add(new Problem.Cause("/to", asked.to() + " is not after " + asked.from() + "."));
        }
        if (!causes.isEmpty()) {
            throw RefusedException.invalidPayload(causes);
        }
        boolean all = named == null && actor.sites() == null && draft.covers() == null;
        return new Wanted(
                all ? null : named == null ? List.copyOf(known) : List.copyOf(new TreeSet<>(named)),
                asked.from(),
                asked.to(),
                cause);
    }

    private OffsetDateTime now() {
        return OffsetDateTime.now(clock).truncatedTo(ChronoUnit.MICROS);
    }
}
