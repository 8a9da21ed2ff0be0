package org.axlecause.repair;

import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.axlecause.facts.Because;
import org.axlecause.facts.FitnessGround;
import org.axlecause.facts.FitnessLevel;
import org.axlecause.facts.Reason;

/**
 * Advice on use of the vehicle; never a certificate.
 *
 * @param level the strictest level that a ground asks for
 * @param because the grounds of that level
 */
public record Fitness(FitnessLevel level, List<Reason> because) {

    public Fitness {
        because = List.copyOf(because);
    }

    /** The strictest of the grounds; nothing is established where there is none. */
    public static Fitness of(List<FitnessGround> grounds, Function<Because, Reason> explain) {
        FitnessLevel level = grounds.stream()
                .map(FitnessGround::level)
                .max(Comparator.naturalOrder())
                .orElse(FitnessLevel.NOT_ESTABLISHED);
        return new Fitness(
                level,
                grounds.stream()
                        .filter(ground -> ground.level() == level)
                        .map(FitnessGround::because)
                        .distinct()
                        .sorted()
                        .map(explain)
                        .toList());
    }
}
