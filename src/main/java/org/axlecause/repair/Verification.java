package org.axlecause.repair;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.axlecause.facts.Because;
import org.axlecause.facts.Reason;
import org.axlecause.facts.RetestComparison;
import org.axlecause.facts.VerificationGround;
import org.axlecause.facts.VerificationOutcome;
import org.axlecause.facts.VerificationSign;
import org.jspecify.annotations.Nullable;

/**
 * What the final test and the looks after the work prove.
 *
 * @param outcome the verdict
 * @param comparisons figures before and after, by axle and wheel
 * @param open what keeps the repair from being verified
 * @param inspection what the official test said afterwards; null until it is on record
 * @param because grounds
 */
public record Verification(
        VerificationOutcome outcome,
        List<BeforeAndAfter> comparisons,
        List<String> open,
        @Nullable LaterInspection inspection,
        List<Reason> because) {

    public Verification {
        comparisons = List.copyOf(comparisons);
        open = List.copyOf(open);
        because = List.copyOf(because);
    }

    /** The verdict that the grounds allow; one that speaks against it outweighs all that speak for it. */
    public static Verification of(
            List<VerificationGround> grounds,
            List<RetestComparison> comparisons,
            @Nullable LaterInspection inspection,
            Function<Because, Reason> explain) {
        return new Verification(
                outcome(grounds),
                comparisons.stream()
                        .sorted(Comparator.comparing(RetestComparison::place)
                                .thenComparing(RetestComparison::brake)
                                .thenComparing(RetestComparison::kind))
                        .map(BeforeAndAfter::of)
                        .toList(),
                grounds.stream()
                        .filter(ground -> ground.sign() != VerificationSign.CURED)
                        .sorted(Comparator.comparing(VerificationGround::place)
                                .thenComparing(VerificationGround::because))
                        .flatMap(ground -> ground.because().facts().stream().limit(1))
                        .distinct()
                        .toList(),
                inspection,
                grounds.stream()
                        .map(VerificationGround::because)
                        .distinct()
                        .sorted()
                        .map(explain)
                        .toList());
    }

    private static VerificationOutcome outcome(List<VerificationGround> grounds) {
        Set<VerificationSign> signs = grounds.stream()
                .map(VerificationGround::sign)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(VerificationSign.class)));
        boolean tested = signs.contains(VerificationSign.CURED)
                || signs.contains(VerificationSign.IMPROVED)
                || signs.contains(VerificationSign.NOT_CURED);
        if (!tested) {
            return VerificationOutcome.NOT_TESTED;
        }
        if (signs.contains(VerificationSign.NOT_CURED)) {
            return VerificationOutcome.NOT_CURED;
        }
        return signs.equals(EnumSet.of(VerificationSign.CURED))
                ? VerificationOutcome.VERIFIED
                : VerificationOutcome.IMPROVED;
    }
}
