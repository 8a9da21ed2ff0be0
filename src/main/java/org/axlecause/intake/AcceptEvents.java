package org.axlecause.intake;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Function;
import org.axlecause.access.Actor;
import org.axlecause.casefile.EventStore;
import org.axlecause.facts.EntryId;
import org.axlecause.shared.DatabaseException;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.RefusedException.Reason;
import org.jboss.logging.Logger;

/**
 * Accepts what was sent, case by case in the order of references: the events of one case are one transaction and one
 * judgement, and what is wrong with one event or one case never sinks the others.
 */
@ApplicationScoped
public class AcceptEvents {

    private static final Logger LOG = Logger.getLogger(AcceptEvents.class);
    private static final int MOST_TRIES = 3;

    private final AppendToCase appendToCase;
    private final IntakeMeters meters;

    AcceptEvents(AppendToCase appendToCase, IntakeMeters meters) {
        this.appendToCase = appendToCase;
        this.meters = meters;
    }

    /** One receipt per attempt, in order. */
    List<Receipt> accept(List<Attempt> attempts, Actor actor) {
        Map<Integer, Receipt> receipts = new TreeMap<>();
        Map<String, Map<Integer, IncomingEvent>> cases = new TreeMap<>();
        for (int i = 0; i < attempts.size(); i++) {
            Attempt attempt = attempts.get(i);
            IncomingEvent event = attempt.event();
            Problem problem = attempt.problem();
            if (event != null) {
                cases.computeIfAbsent(event.subject(), reference -> new TreeMap<>())
                        .put(i, event);
            } else if (problem != null) {
                receipts.put(i, Receipt.unread(attempt, problem));
            }
        }
        cases.forEach((reference, events) -> receipts.putAll(ofCase(reference, events, actor)));
        receipts.values().forEach(receipt -> meters.count(receipt.standing()));
        return new ArrayList<>(receipts.values());
    }

    private Map<Integer, Receipt> ofCase(String reference, Map<Integer, IncomingEvent> events, Actor actor) {
        boolean judging = true;
        for (int tries = 1; ; tries++) {
            try {
                return appendToCase.append(reference, events, actor, judging);
            } catch (JudgingFaultException fault) {
                LOG.errorf(fault, "Judging faulted; its events are kept without a new judgement");
                judging = false;
            } catch (RefusedException refused) {
                return each(events, event -> Receipt.refused(event, reference, refused.problem()));
            } catch (RuntimeException fault) {
                if (tries >= MOST_TRIES || !isTaken(fault)) {
                    return failed(reference, events, fault);
                }
            }
        }
    }

    private static boolean isTaken(RuntimeException fault) {
        return DatabaseException.behind(fault).filter(EventStore::isTaken).isPresent();
    }

    private static Map<Integer, Receipt> failed(
            String reference, Map<Integer, IncomingEvent> events, RuntimeException fault) {
        String id = UUID.randomUUID().toString();
        LOG.errorf(fault, "Fault %s while accepting events", id);
        Problem problem = RefusedException.because(
                        Reason.UNAVAILABLE,
                        "Nothing was stored; send it again. If it stays so, tell the operator this id: " + id)
                .problem();
        return each(events, event -> Receipt.failed(event, reference, problem));
    }

    private static Map<Integer, Receipt> each(Map<Integer, IncomingEvent> events, Function<EntryId, Receipt> receipt) {
        Map<Integer, Receipt> receipts = new TreeMap<>();
        events.forEach((index, event) -> receipts.put(index, receipt.apply(event.id())));
        return receipts;
    }
}
