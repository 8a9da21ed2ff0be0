package org.axlecause.inference;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.kie.api.KieBase;

/**
 * Sessions at rest, the last used first. Each serves one case at a time; one that did not come back clean, as after a
 * fault in a rule, or has served long enough is thrown away. Where there are as many as may be, the one that holds most
 * of what is asked for exchanges the rest, which costs less than to begin anew.
 */
final class WarmSessions {

    /** How many sessions are kept. */
    static final int MOST_AT_REST = 32;

    private final KieBase kieBase;
    private final int bound;
    private final Deque<WarmSession> atRest = new ArrayDeque<>();
    private final FactList.Known lists = new FactList.Known();

    WarmSessions(KieBase kieBase, int bound) {
        this.kieBase = kieBase;
        this.bound = bound;
    }

    /** A session that holds the shared facts and no others. */
    WarmSession take(List<? extends List<?>> facts) {
        SharedFacts shared = shared(facts);
        WarmSession found = takeFromRest(shared);
        if (found == null) {
            return WarmSession.with(kieBase.newKieSession(), shared, bound);
        }
        if (!found.shared().agree(shared)) {
            found.hold(shared);
        }
        return found;
    }

    private SharedFacts shared(List<? extends List<?>> facts) {
        return new SharedFacts(facts.stream().map(lists::of).toList());
    }

    void giveBack(WarmSession session) {
        WarmSession superfluous = session.isGood() ? putToRest(session) : session;
        if (superfluous != null) {
            superfluous.dispose();
        }
    }

    private synchronized @Nullable WarmSession takeFromRest(SharedFacts shared) {
        WarmSession nearest = null;
        int most = 0;
        for (Iterator<WarmSession> sessions = atRest.iterator(); sessions.hasNext(); ) {
            WarmSession session = sessions.next();
            if (session.shared().agree(shared)) {
                sessions.remove();
                return session;
            }
            int common = session.shared().common(shared);
            if (common >= most && 2 * common > shared.count()) {
                nearest = session;
                most = common;
            }
        }
        if (nearest == null || atRest.size() < MOST_AT_REST) {
            return null;
        }
        atRest.remove(nearest);
        return nearest;
    }

    private synchronized @Nullable WarmSession putToRest(WarmSession session) {
        atRest.addFirst(session);
        return atRest.size() > MOST_AT_REST ? atRest.removeLast() : null;
    }
}
