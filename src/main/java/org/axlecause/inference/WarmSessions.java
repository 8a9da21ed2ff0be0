package org.axlecause.inference;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.kie.api.KieBase;

/**
 * Sessions at rest, the last used first. Each serves one case at a time; one that did not come back clean, as after a
 * fault in a rule, is thrown away, and so is the longest unused where there are too many.
 */
final class WarmSessions {

    private static final int MOST_AT_REST = 32;

    private final KieBase kieBase;
    private final int bound;
    private final Deque<WarmSession> atRest = new ArrayDeque<>();

    WarmSessions(KieBase kieBase, int bound) {
        this.kieBase = kieBase;
        this.bound = bound;
    }

    /** A session that holds the shared facts and no others. */
    WarmSession take(List<? extends Collection<?>> shared) {
        WarmSession found = takeFromRest(shared);
        return found == null ? WarmSession.with(kieBase.newKieSession(), shared, bound) : found;
    }

    void giveBack(WarmSession session) {
        WarmSession superfluous = session.isClean() ? putToRest(session) : session;
        if (superfluous != null) {
            superfluous.dispose();
        }
    }

    private synchronized @Nullable WarmSession takeFromRest(List<? extends Collection<?>> shared) {
        for (Iterator<WarmSession> sessions = atRest.iterator(); sessions.hasNext(); ) {
            WarmSession session = sessions.next();
            if (session.holds(shared)) {
                sessions.remove();
                return session;
            }
        }
        return null;
    }

    private synchronized @Nullable WarmSession putToRest(WarmSession session) {
        atRest.addFirst(session);
        return atRest.size() > MOST_AT_REST ? atRest.removeLast() : null;
    }
}
