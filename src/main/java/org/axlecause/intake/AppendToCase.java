package org.axlecause.intake;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.micrometer.core.instrument.Timer;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.axlecause.access.Actor;
import org.axlecause.casefile.CaseJudge;
import org.axlecause.casefile.CaseStore;
import org.axlecause.casefile.EntryReader;
import org.axlecause.casefile.EventStore;
import org.axlecause.casefile.KnownIdentity;
import org.axlecause.casefile.LockedCase;
import org.axlecause.casefile.MeasureTests;
import org.axlecause.casefile.NewEvent;
import org.axlecause.casefile.PersonalValue;
import org.axlecause.casefile.VehicleIdentityStore;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.DatabaseException;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** Appends events to one case in one transaction and has the case judged once. */
@ApplicationScoped
class AppendToCase {

    private final TenantTransaction transaction;
    private final CaseStore cases;
    private final EventStore events;
    private final VehicleIdentityStore identities;
    private final MeasureTests measureTests;
    private final CaseJudge judge;
    private final SiteCheck siteCheck;
    private final PolicyCheck policyCheck;
    private final IntakeMeters meters;
    private final Clock clock;

    AppendToCase(
            TenantTransaction transaction,
            CaseStore cases,
            EventStore events,
            VehicleIdentityStore identities,
            MeasureTests measureTests,
            CaseJudge judge,
            SiteCheck siteCheck,
            PolicyCheck policyCheck,
            IntakeMeters meters,
            Clock clock) {
        this.transaction = transaction;
        this.cases = cases;
        this.events = events;
        this.identities = identities;
        this.measureTests = measureTests;
        this.judge = judge;
        this.siteCheck = siteCheck;
        this.policyCheck = policyCheck;
        this.meters = meters;
        this.clock = clock;
    }

    /**
     * A receipt per event, by the index it was given.
     *
     * @param judging false where judging has faulted and the events are kept without it
     */
    Map<Integer, Receipt> append(String reference, Map<Integer, IncomingEvent> sent, Actor actor, boolean judging) {
        return transaction.callToAsk(actor.tenant(), () -> {
            OffsetDateTime now = OffsetDateTime.now(clock);
            LockedCase locked = cases.lock(
                    reference,
                    sent.values().stream().map(IncomingEvent::id).distinct().toList(),
                    now);
            Sorting sorting = new Sorting(locked, actor, now);
            sorting.sort(sent);
            if (!sorting.fresh.isEmpty()) {
                events.append(locked, List.copyOf(sorting.fresh.values()));
                identities.tie(reference, sorting.tokens);
                if (judging) {
                    judge(reference, sorting.entries);
                } else {
                    cases.markFailed(reference, now);
                }
            }
            return sorting.receipts(judging);
        });
    }

    private void judge(String reference, Map<EntryId, Entry> entries) {
        Timer.Sample judging = meters.begin();
        try {
            measureTests.keep(reference, entries);
            judge.judgeAndKeep(reference);
            transaction.sendKept();
            meters.done(judging);
        } catch (RuntimeException fault) {
            DatabaseException database = DatabaseException.behind(fault).orElse(null);
            if (database != null && (database.isUnavailable() || EventStore.isTaken(database))) {
                throw database;
            }
            meters.faulted(judging);
            throw new JudgingFaultException(fault);
        }
    }

    /** Tells fresh events from repeated, conflicting and forbidden ones. */
    private final class Sorting {

        private final LockedCase locked;
        private final String reference;
        private final Actor actor;
        private final OffsetDateTime now;
        private final Map<EntryId, NewEvent> fresh = new LinkedHashMap<>();
        private final Map<EntryId, Entry> entries = new TreeMap<>();
        private final Set<String> tokens = new TreeSet<>();
        private final Map<Integer, Receipt> refused = new TreeMap<>();
        private final Map<Integer, EntryId> stored = new TreeMap<>();
        private final Map<Integer, Standing> standings = new HashMap<>();
        private final Map<Integer, List<Problem.Cause>> warnings = new HashMap<>();

        Sorting(LockedCase locked, Actor actor, OffsetDateTime now) {
            this.locked = locked;
            this.reference = locked.reference();
            this.actor = actor;
            this.now = now;
        }

        void sort(Map<Integer, IncomingEvent> sent) {
            Map<Integer, IncomingEvent> allowed = allowed(sent);
            Map<PersonalValue, String> tokens = identities.tokens(allowed.values().stream()
                    .flatMap(event -> PersonalData.in(event.type(), event.data()).values().stream())
                    .distinct()
                    .toList());
            allowed.forEach((index, event) -> {
                JsonNode data = PersonalData.replaced(event.type(), event.data(), tokens::get);
                String digest = Canonical.digest(event, data);
                sort(index, event, data, digest, digestBefore(event.id()));
            });
        }

        private Map<Integer, IncomingEvent> allowed(Map<Integer, IncomingEvent> sent) {
            Map<Integer, IncomingEvent> allowed = new TreeMap<>();
            sent.forEach((index, event) -> siteCheck
                    .whatIsWrong(event, locked.site(), actor)
                    .or(() -> policyCheck.whatIsWrong(event, reference, sent.values(), actor))
                    .ifPresentOrElse(
                            problem -> refused.put(index, Receipt.refused(event.id(), reference, problem)),
                            () -> allowed.put(index, event)));
            return allowed;
        }

        private @Nullable String digestBefore(EntryId id) {
            NewEvent inThisBatch = fresh.get(id);
            KnownIdentity stored = locked.known().get(id);
            return inThisBatch != null ? inThisBatch.digest() : stored == null ? null : stored.digest();
        }

        private void sort(int index, IncomingEvent event, JsonNode data, String digest, @Nullable String before) {
            if (before == null) {
                fresh.put(event.id(), newEvent(event, data, digest));
                PersonalData.in(event.type(), data).values().forEach(token -> tokens.add(token.text()));
                entries.put(event.id(), EntryReader.read(event.type(), data));
                List<Problem.Cause> odd = new ArrayList<>(ContentCheck.warnings(event.time(), now));
                odd.addAll(ContentCheck.warnings(event.type(), event.data()));
                warnings.put(index, odd);
                keep(index, event.id(), Standing.ACCEPTED);
            } else if (before.equals(digest)) {
                keep(index, event.id(), Standing.DUPLICATE);
            } else {
                refused.put(index, Receipt.refused(event.id(), reference, conflict(event.id(), before, digest)));
            }
        }

        private void keep(int index, EntryId id, Standing standing) {
            stored.put(index, id);
            standings.put(index, standing);
        }

        private NewEvent newEvent(IncomingEvent event, JsonNode data, String digest) {
            ObjectNode body = event.attributes().deepCopy();
            body.set("data", data);
            return new NewEvent(
                    event.id(), event.type().toString(), event.time(), now, actor.name(), Json.text(body), digest);
        }

        private static Problem conflict(EntryId id, String before, String digest) {
            return RefusedException.identityConflict("The event " + id.id() + " of " + id.source()
                            + " was accepted with content of digest " + before + "; this content has digest " + digest
                            + ". Send other content under another id, and withdraw the first with an"
                            + " entry.withdrawn event.")
                    .problem();
        }

        Map<Integer, Receipt> receipts(boolean judged) {
            Map<Integer, Receipt> receipts = new TreeMap<>(refused);
            stored.forEach((index, id) -> receipts.put(
                    index,
                    Receipt.stored(
                            id,
                            standings.getOrDefault(index, Standing.DUPLICATE),
                            reference,
                            judged || fresh.isEmpty(),
                            warnings.getOrDefault(index, List.of()))));
            return receipts;
        }
    }
}
