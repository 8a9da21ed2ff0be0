package org.axlecause;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.axlecause.bench.Measured;
import org.axlecause.bench.ServiceRun;
import org.axlecause.inference.ComparedRuleBase.Call;
import org.axlecause.inference.HandWrittenRules;
import org.axlecause.inference.RuleBase;
import org.axlecause.inference.RuleBench;

/**
 * The processor time of the rule base as a multiple of that of plain Java, which is seen to draw the same conclusions
 * before: the calls of some judgings are made again and again by each in turn, collector and compiler included.
 */
public final class RuleBaseRun implements ServiceRun {

    private static final OperatingSystemMXBean SYSTEM =
            ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
    private static final int ROUNDS = 5;
    private static final double MOST = 12;
    private static final double NANOSECONDS_PER_MICROSECOND = 1e3;

    /** Rounds before those that count: the compiler has hundreds of rules to see often enough on either side. */
    private static final int WARM_UP = 12;

    /** Processor time of a turn of a round; a call of the rule base takes some hundred times as long as the clock's step. */
    private static final long TURN = 2_000_000_000L;

    @Override
    public List<Measured> run() throws IOException {
        CompareRuleBase compare = new CompareRuleBase();
        List<Call> story = compare.scenarios();
        compare.toldInShort();
        compare.clauses();
        List<Call> drawn = compare.drawnRepairs();
        compare.drawnFacts();
        List<Measured> measured = new ArrayList<>(measured("a repair, at each step", story));
        measured.addAll(measured("drawn repairs, at each step", drawn));
        return measured;
    }

    private static List<Measured> measured(String what, List<Call> calls) {
        RuleBase ruleBase = RuleBench.all();
        HandWrittenRules handWritten = new HandWrittenRules();
        List<Double> rules = new ArrayList<>();
        List<Double> hand = new ArrayList<>();
        List<Double> times = new ArrayList<>();
        for (int round = -WARM_UP; round < ROUNDS; round++) {
            double one = micros(calls, call -> ruleBase.conclude(call.shared(), call.facts()));
            double other = micros(calls, call -> handWritten.conclude(call.shared(), call.facts()));
            if (round >= 0) {
                rules.add(one);
                hand.add(other);
                times.add(one / other);
            }
        }
        return List.of(
                Measured.of("rule base, a call", what, rules, "CPU us"),
                Measured.of("plain Java, a call", what, hand, "CPU us"),
                Measured.atMost(MOST, "rule base / plain Java", what, times, ""));
    }

    /** Processor time of a call, over so many turns of all calls as take long enough to be told. */
    private static double micros(List<Call> calls, Consumer<Call> draw) {
        long begin = SYSTEM.getProcessCpuTime();
        long spent = 0;
        long made = 0;
        while (spent < TURN) {
            calls.forEach(draw);
            made += calls.size();
            spent = SYSTEM.getProcessCpuTime() - begin;
        }
        return spent / NANOSECONDS_PER_MICROSECOND / made;
    }
}
