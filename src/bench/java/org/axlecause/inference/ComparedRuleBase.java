package org.axlecause.inference;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.axlecause.facts.Conclusion;

/**
 * The whole rule base, each of whose calls is drawn by plain Java as well; a call whose conclusions differ in anything
 * fails. It keeps the calls and serves one thread.
 */
public final class ComparedRuleBase extends RuleBase {

    private final HandWrittenRules handWritten = new HandWrittenRules();
    private final List<Call> calls = new ArrayList<>();
    private final Map<String, Integer> drawn = new TreeMap<>();

    /** Compiles all rules. */
    public ComparedRuleBase() {
        super(RuleBench.engine());
    }

    /**
     * Facts that the rules were asked about.
     *
     * @param shared those that many cases share
     * @param facts those of the case
     */
    public record Call(List<? extends List<?>> shared, List<?> facts) {}

    /** The calls since this was asked last, in their order. */
    public List<Call> takeCalls() {
        List<Call> taken = List.copyOf(calls);
        calls.clear();
        return taken;
    }

    /** How many conclusions each rule has drawn, by its id; rules that have drawn none are not named. */
    public Map<String, Integer> drawn() {
        return drawn;
    }

    @Override
    public Conclusions conclude(List<? extends List<?>> shared, Collection<?> facts) {
        Conclusions concluded = super.conclude(shared, facts);
        Conclusions byHand = handWritten.conclude(shared, facts);
        if (!concluded.byType().equals(byHand.byType())) {
            throw new IllegalStateException(differences(concluded, byHand) + " from the facts " + facts);
        }
        concluded
                .byType()
                .values()
                .forEach(all -> all.forEach(one -> drawn.merge(one.because().rule(), 1, Integer::sum)));
        calls.add(new Call(shared, List.copyOf(facts)));
        return concluded;
    }

    private static String differences(Conclusions concluded, Conclusions byHand) {
        Map<Conclusion, Integer> more = new LinkedHashMap<>();
        concluded.byType().values().forEach(all -> all.forEach(one -> more.merge(one, 1, Integer::sum)));
        byHand.byType().values().forEach(all -> all.forEach(one -> more.merge(one, -1, Integer::sum)));
        List<Conclusion> byTheRules = new ArrayList<>();
        List<Conclusion> byTheHand = new ArrayList<>();
        more.forEach((one, times) -> {
            if (times != 0) {
                (times > 0 ? byTheRules : byTheHand).add(one);
            }
        });
        return "Only the rule base concludes " + byTheRules + ", only the plain Java " + byTheHand;
    }
}
