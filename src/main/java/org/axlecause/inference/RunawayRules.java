package org.axlecause.inference;

/** The rules went on firing beyond their bound: a fault of the rule base, never of the case. */
public final class RunawayRules extends RuntimeException {

    private static final long serialVersionUID = 1L;

    RunawayRules(int bound) {
        super("The rule base fired " + bound + " times on one case and was stopped; a rule makes what it matches.");
    }
}
