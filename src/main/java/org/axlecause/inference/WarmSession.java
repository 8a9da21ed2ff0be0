package org.axlecause.inference;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.axlecause.facts.Conclusion;
import org.kie.api.runtime.ClassObjectFilter;
import org.kie.api.runtime.KieSession;
import org.kie.api.runtime.rule.FactHandle;

/**
 * A session of the engine that keeps the facts that many cases share. One case at a time brings in its own and takes
 * them out again; conclusions go with their grounds. It is clean while it holds exactly what it held before any case.
 */
final class WarmSession {

    private static final ClassObjectFilter CONCLUSIONS = new ClassObjectFilter(Conclusion.class);

    private final KieSession session;
    private final List<? extends Collection<?>> shared;
    private final int bound;
    private final long atRest;
    private final List<FactHandle> ofTheCase = new ArrayList<>();
    private boolean clean;

    private WarmSession(KieSession session, List<? extends Collection<?>> shared, int bound) {
        this.session = session;
        this.shared = shared;
        this.bound = bound;
        shared.forEach(facts -> facts.forEach(session::insert));
        fire();
        this.atRest = session.getFactCount();
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
        fire();
        List<Conclusion> drawn = new ArrayList<>();
        for (Object concluded : session.getObjects(CONCLUSIONS)) {
            drawn.add((Conclusion) concluded);
        }
        return drawn;
    }

    /** Takes the facts of the case out again, and with them what was concluded from them. */
    void clear() {
        ofTheCase.forEach(session::delete);
        ofTheCase.clear();
        fire();
        clean = session.getFactCount() == atRest;
    }

    void dispose() {
        session.dispose();
    }

    private void fire() {
        if (session.fireAllRules(bound) >= bound) {
            throw new RunawayRules(bound);
        }
    }
}
