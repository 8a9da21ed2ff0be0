package org.axlecause.inference;

import java.util.Collection;
import java.util.List;
import org.axlecause.handwritten.HandWritten;

/** What the rule base does, done by plain Java: the same facts in, the same conclusions out in the same order. */
public final class HandWrittenRules {

    private final HandWritten rules = new HandWritten();

    /** Draws all conclusions from the facts of a case beside those that many cases share. */
    public Conclusions conclude(List<? extends List<?>> shared, Collection<?> facts) {
        return Conclusions.of(rules.conclude(shared, facts));
    }
}
