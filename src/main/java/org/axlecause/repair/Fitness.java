package org.axlecause.repair;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.axlecause.facts.Because;
import org.axlecause.facts.Decision;
import org.axlecause.facts.FitnessGround;
import org.axlecause.facts.FitnessLevel;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.Reason;
import org.axlecause.facts.RefusedWork;

/**
 * Advice on use of the vehicle; never a certificate.
 *
 * @param level the strictest level that a ground asks for
 * @param refused required lines that were refused or put off, whatever the level
 * @param because the grounds of that level
 */
public record Fitness(FitnessLevel level, List<Refusal> refused, List<Reason> because) {

    public Fitness {
        refused = List.copyOf(refused);
        because = List.copyOf(because);
    }

    /**
     * A required line that was refused or put off.
     *
     * @param line id of the line
     * @param decision refused or later
     * @param means what that means for the vehicle, in words
     * @param because grounds
     */
    public record Refusal(String line, Decision decision, String means, List<Reason> because) {

        public Refusal {
            because = List.copyOf(because);
        }
    }

    /** The strictest of the grounds; nothing is established where there is none. */
    public static Fitness of(
            List<FitnessGround> grounds, List<RefusedWork> refused, Function<Because, Reason> explain) {
        FitnessLevel level = grounds.stream()
                .map(FitnessGround::level)
                .max(Comparator.naturalOrder())
                .orElse(FitnessLevel.NOT_ESTABLISHED);
        return new Fitness(
                level,
                refusals(refused, explain),
                grounds.stream()
                        .filter(ground -> ground.level() == level)
                        .map(FitnessGround::because)
                        .distinct()
                        .sorted()
                        .map(explain)
                        .toList());
    }

    private static List<Refusal> refusals(List<RefusedWork> refused, Function<Because, Reason> explain) {
        Map<LineKey, Decision> decisions = new TreeMap<>();
        Map<LineKey, TreeSet<Because>> grounds = new TreeMap<>();
        for (RefusedWork work : refused) {
            decisions.put(work.line(), work.decision());
            grounds.computeIfAbsent(work.line(), key -> new TreeSet<>()).add(work.because());
        }
        return decisions.entrySet().stream()
                .map(entry -> new Refusal(
                        entry.getKey().id(),
                        entry.getValue(),
                        means(entry.getKey(), entry.getValue()),
                        grounds.getOrDefault(entry.getKey(), new TreeSet<>()).stream()
                                .map(explain)
                                .toList()))
                .toList();
    }

    private static String means(LineKey line, Decision decision) {
        String what = line.action() + " " + line.item() + " at " + line.place();
        return decision == Decision.REFUSED
                ? "To " + what
                        + " is required and was refused. The fault that calls for it stays, the repair cannot be"
                        + " verified, and the vehicle should not be used before it is done."
                : "To " + what + " is required and was put off. Until it is done the fault that calls for it stays, the"
                        + " repair cannot be verified, and the vehicle should not be used.";
    }
}
