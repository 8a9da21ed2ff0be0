package org.axlecause.handwritten;

import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.Conclusion;

/** What is known of one type of facts, in the order in which it became known. */
class Known<T> {

    private final List<T> all = new ArrayList<>();
    private int shared;

    /** All of them; no copy. */
    List<T> all() {
        return all;
    }

    boolean isEmpty() {
        return all.isEmpty();
    }

    /** Takes a fact over that was told, however often it was told before. */
    void tell(T fact) {
        all.add(fact);
    }

    /** Keeps a conclusion, once. */
    final void draw(T conclusion) {
        if (!isKnown(conclusion)) {
            tell(conclusion);
        }
    }

    /** Only what the same rule has concluded can be equal. */
    private boolean isKnown(T conclusion) {
        String rule = ruleOf(conclusion);
        for (int at = all.size() - 1; at >= shared; at--) {
            T known = all.get(at);
            if (ruleOf(known).equals(rule) && known.equals(conclusion)) {
                return true;
            }
        }
        return false;
    }

    private static String ruleOf(Object conclusion) {
        return ((Conclusion) conclusion).because().rule();
    }

    /** Keeps what is known now when all else is forgotten. */
    final void share() {
        shared = all.size();
    }

    /** Forgets what became known after the shared facts. */
    final void forget() {
        if (all.size() > shared) {
            forget(all.subList(shared, all.size()));
        }
    }

    void forget(List<T> latest) {
        latest.clear();
    }
}
