package org.axlecause.judgement;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Figure;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.Limit;
import org.axlecause.facts.Place;
import org.axlecause.facts.Policy;
import org.axlecause.facts.RegimeTerms;
import org.axlecause.facts.RetestComparison;
import org.axlecause.facts.Threshold;
import org.axlecause.facts.ThresholdCode;
import org.jspecify.annotations.Nullable;

/** Sets the figures of the final tests beside those of the arrival tests, with the regime's limit and the workshop's target. */
final class Comparisons {

    private static final Set<FigureKind> COMPARED = EnumSet.of(
            FigureKind.PEAK,
            FigureKind.DRAG,
            FigureKind.FLUCTUATION,
            FigureKind.IMBALANCE,
            FigureKind.EFFICIENCY,
            FigureKind.RISE_LAG,
            FigureKind.RELEASE_LAG,
            FigureKind.RELEASE_TIME,
            FigureKind.RESIDUAL);

    private static final Map<FigureKind, ThresholdCode> SERVICE_TARGETS = new EnumMap<>(Map.of(
            FigureKind.IMBALANCE, ThresholdCode.RETEST_IMBALANCE,
            FigureKind.RISE_LAG, ThresholdCode.RETEST_LAG,
            FigureKind.DRAG, ThresholdCode.RETEST_DRAG,
            FigureKind.FLUCTUATION, ThresholdCode.RETEST_FLUCTUATION));

    private static final Map<FigureKind, ThresholdCode> PARKING_TARGETS =
            new EnumMap<>(Map.of(FigureKind.IMBALANCE, ThresholdCode.RETEST_PARKING_IMBALANCE));

    private Comparisons() {}

    static List<RetestComparison> of(Tests tests, Policy policy, @Nullable RegimeTerms terms) {
        Map<Key, BigDecimal> before = new HashMap<>();
        for (Figure figure : tests.figures(Tests.BEFORE)) {
            if (figure.value() != null) {
                before.put(Key.of(figure), figure.value());
            }
        }
        List<RetestComparison> comparisons = new ArrayList<>();
        for (Figure figure : tests.figures(Tests.AFTER)) {
            if (COMPARED.contains(figure.kind()) && figure.value() != null) {
                comparisons.add(comparison(figure, before.get(Key.of(figure)), policy, terms));
            }
        }
        return comparisons;
    }

    private static RetestComparison comparison(
            Figure figure, @Nullable BigDecimal before, Policy policy, @Nullable RegimeTerms terms) {
        BigDecimal after = Objects.requireNonNull(figure.value());
        Limit limit = strictest(figure, terms);
        BigDecimal target = target(figure, policy);
        boolean lowIsGood = !figure.kind().isBetterHigh();
        return new RetestComparison(
                figure.kind(),
                figure.brake(),
                figure.place(),
                before,
                after,
                limit == null || !limit.bound().refuses(after, limit.value()),
                target == null ? null : lowIsGood ? after.compareTo(target) <= 0 : after.compareTo(target) >= 0,
                limit == null ? null : limit.value(),
                target);
    }

    /** The limit that refuses first. */
    private static @Nullable Limit strictest(Figure figure, @Nullable RegimeTerms terms) {
        Limit strictest = null;
        if (terms != null) {
            for (Limit limit : terms.limits()) {
                if (limit.kind() == figure.kind()
                        && limit.brake() == figure.brake()
                        && limit.place().equals(figure.place())
                        && (strictest == null || limit.bound().refuses(strictest.value(), limit.value()))) {
                    strictest = limit;
                }
            }
        }
        return strictest;
    }

    private static @Nullable BigDecimal target(Figure figure, Policy policy) {
        ThresholdCode code =
                (figure.brake() == BrakeSystem.PARKING ? PARKING_TARGETS : SERVICE_TARGETS).get(figure.kind());
        return policy.thresholds().stream()
                .filter(threshold -> threshold.code() == code)
                .map(Threshold::value)
                .findFirst()
                .orElse(null);
    }

    private record Key(FigureKind kind, BrakeSystem brake, Place place) {

        static Key of(Figure figure) {
            return new Key(figure.kind(), figure.brake(), figure.place());
        }
    }
}
