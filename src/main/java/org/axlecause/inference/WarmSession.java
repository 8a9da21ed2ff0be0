package org.axlecause.inference;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.axlecause.facts.Conclusion;
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

    private final KieSession session;
    private final List<? extends Collection<?>> shared;
    private final int bound;
    private final long atRest;
    private final AgendaFilter whileClearing;
    private final List<FactHandle> ofTheCase = new ArrayList<>();
    private boolean clean;

    private WarmSession(KieSession session, List<? extends Collection<?>> shared, int bound) {
        this.session = session;
        this.shared = shared;
        this.bound = bound;
        shared.forEach(facts -> facts.forEach(session::insert));
        fire(EVERY_RULE);
        this.atRest = session.getFactCount();
        this.whileClearing =
                atRest == shared.stream().mapToLong(Collection::size).sum() ? NO_RULE : EVERY_RULE;
        this.clean = true;
    }

    /** Takes over a new session and brings the shared facts in. */
    static WarmSession with(KieSession session, List<? extends Collection<?>> shared, int bound) {
        try {
            return new WarmSession(session, shared, bound);
        } catch (RuntimeException fault) {
            session.dispose();
            throw fault;
        }
    }

    boolean holds(List<? extends Collection<?>> facts) {
        return shared.equals(facts);
    }

    boolean isClean() {
        return clean;
    }

    /** All conclusions, in no stated order. */
    List<Conclusion> conclude(Collection<?> facts) {
        clean = false;
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
