package org.axlecause.inference;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.Conclusion;
import org.jspecify.annotations.Nullable;
import org.kie.api.runtime.ClassObjectFilter;
import org.kie.api.runtime.KieSession;
import org.kie.api.runtime.rule.AgendaFilter;
import org.kie.api.runtime.rule.FactHandle;

/**
 * A session of the engine that keeps the facts that many cases share. One case at a time brings in its own and takes
 * them out again; conclusions go with their grounds. It is clean while it holds exactly what it held before any case.
 */
final class WarmSession {

    private static final ClassObjectFilter CONCLUSIONS = new ClassObjectFilter(Conclusion.class);

    private static final AgendaFilter EVERY_RULE = match -> true;
    private static final AgendaFilter NO_RULE = match -> false;

    /**
     * After so many cases it serves no more: the engine keeps matches of facts that were taken out, of some rules and for
     * as long as the session lives.
     */
    static final int MOST_CASES = 500;

    private final KieSession session;
    private final int bound;
    private final List<List<FactHandle>> handles = new ArrayList<>();
    private final List<FactHandle> ofTheCase = new ArrayList<>();
    private SharedFacts shared;
    private long atRest;
    private AgendaFilter whileClearing = EVERY_RULE;
    private boolean clean;
    private int served;

    private WarmSession(KieSession session, SharedFacts shared, int bound) {
        this.session = session;
        this.shared = shared;
        this.bound = bound;
        for (int at = 0; at < shared.size(); at++) {
            handles.add(shared.get(at).stream().map(session::insert).toList());
        }
        settle();
    }

    /** Takes over a new session and brings the shared facts in. */
    static WarmSession with(KieSession session, SharedFacts shared, int bound) {
        try {
            return new WarmSession(session, shared, bound);
        } catch (RuntimeException fault) {
            session.dispose();
            throw fault;
        }
    }

    /** What it holds while no case is in it. */
    SharedFacts shared() {
        return shared;
    }

    /** Exchanges the facts that differ for those of the other, which are of the same kinds; a fault ends the session. */
    void hold(SharedFacts others) {
        clean = false;
        try {
            exchange(others);
        } catch (RuntimeException fault) {
            session.dispose();
            throw fault;
        }
    }

    private void exchange(SharedFacts others) {
        List<List<@Nullable FactHandle>> kept = new ArrayList<>();
        for (int at = 0; at < shared.size(); at++) {
            kept.add(shared.agree(others, at) ? handles.get(at) : keepFrom(at, others.get(at)));
        }
        fire(whileClearing);
        for (int at = 0; at < shared.size(); at++) {
            handles.set(at, filledUp(kept.get(at), others.get(at)));
        }
        shared = others;
        settle();
    }

    /** The handles of facts that stay, with gaps for those that are missing; all others are taken out. */
    private List<@Nullable FactHandle> keepFrom(int at, List<?> wanted) {
        Map<Object, Deque<FactHandle>> held = new HashMap<>();
        for (int fact = 0; fact < handles.get(at).size(); fact++) {
            held.computeIfAbsent(shared.get(at).get(fact), none -> new ArrayDeque<>())
                    .add(handles.get(at).get(fact));
        }
        List<@Nullable FactHandle> kept = new ArrayList<>();
        for (Object fact : wanted) {
            Deque<FactHandle> same = held.get(fact);
            kept.add(same == null ? null : same.poll());
        }
        held.values().forEach(same -> same.forEach(session::delete));
        return kept;
    }

    private List<FactHandle> filledUp(List<@Nullable FactHandle> kept, List<?> wanted) {
        List<FactHandle> filled = new ArrayList<>();
        for (int fact = 0; fact < wanted.size(); fact++) {
            FactHandle handle = kept.get(fact);
            filled.add(handle == null ? session.insert(wanted.get(fact)) : handle);
        }
        return filled;
    }

    private void settle() {
        fire(EVERY_RULE);
        atRest = session.getFactCount();
        whileClearing = atRest == shared.count() ? NO_RULE : EVERY_RULE;
        clean = true;
    }

    /** Whether it can serve another case. */
    boolean isGood() {
        return clean && served < MOST_CASES;
    }

    /** All conclusions, in no stated order. */
    List<Conclusion> conclude(Collection<?> facts) {
        clean = false;
        served++;
        facts.forEach(fact -> ofTheCase.add(session.insert(fact)));
        fire(EVERY_RULE);
        List<Conclusion> drawn = new ArrayList<>();
        for (Object concluded : session.getObjects(CONCLUSIONS)) {
            drawn.add((Conclusion) concluded);
        }
        return drawn;
    }

    /**
     * Takes the facts of the case out again, and with them what was concluded from them. Rules would draw conclusions
     * from facts that are half taken out already; where the shared facts alone lead to none, no rule is let.
     */
    void clear() {
        ofTheCase.forEach(session::delete);
        ofTheCase.clear();
        fire(whileClearing);
        clean = session.getFactCount() == atRest;
    }

    void dispose() {
        session.dispose();
    }

    private void fire(AgendaFilter filter) {
        if (session.fireAllRules(filter, bound) >= bound) {
            throw new RunawayRules(bound);
        }
    }
}
