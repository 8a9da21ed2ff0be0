package org.axlecause.policy;

import jakarta.enterprise.context.ApplicationScoped;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.FigureKind;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.ThresholdCode;
import org.axlecause.regimes.LegalBound;
import org.axlecause.regimes.Regime;
import org.axlecause.regimes.Regimes;
import org.axlecause.shared.PlainMeasure;
import org.jspecify.annotations.Nullable;

/** Finds where a clause would let pass what a regime refuses. */
@ApplicationScoped
class LawCheck {

    private final Regimes regimes;

    LawCheck(Regimes regimes) {
        this.regimes = regimes;
    }

    /** What is weaker than the law of one of these regimes, in words with the source of the law; empty where nothing is. */
    Optional<String> weakerThanLaw(ClauseWanted clause, List<String> codes, LocalDate day) {
        ClauseWord word = Vocabulary.released().find(clause.clause());
        if (word == null || clause.value() == null) {
            return Optional.empty();
        }
        BigDecimal value = valueOf(clause, word);
        return codes.stream()
                .map(regimes::find)
                .flatMap(Stream::ofNullable)
                .flatMap(regime -> bounds(clause, word, regime, day))
                .filter(law -> value != null && law.isStricterThan(value))
                .findFirst()
                .map(law -> "The clause '" + clause.key() + "' sets " + clause.says()
                        + ", which is weaker than the law of the regime " + law.regime() + ": "
                        + (law.bound().isLower() ? "at least " : "at most ") + inUnit(law.value(), clause, word)
                        + " (" + law.source() + "). Set a value that is at least as strict.");
    }

    private static Stream<LegalBound> bounds(ClauseWanted clause, ClauseWord word, Regime regime, LocalDate day) {
        if (word.clause() == ClauseCode.WORKSHOP_LIMIT) {
            FigureKind figure = ClauseCheck.figure(Objects.requireNonNull(clause.figure()))
                    .map(LimitedFigure::kind)
                    .orElseThrow();
            BrakeSystem brake =
                    BrakeSystem.PARKING.toString().equals(clause.brake()) ? BrakeSystem.PARKING : BrakeSystem.SERVICE;
            return regime.strictest(figure, brake, clause.axle(), day).stream();
        }
        Stream<LegalBound> measured = quantities(word).flatMap(quantity -> regime.strictest(quantity).stream());
        Aim aim = aim(word);
        return aim == null
                ? measured
                : Stream.concat(measured, regime.strictest(aim.figure, aim.brake, null, day).stream());
    }

    private static Stream<MeasuredQuantity> quantities(ClauseWord word) {
        ClauseCode clause = word.clause();
        if (clause == null) {
            return Stream.ofNullable(proved(word.threshold()));
        }
        return switch (clause) {
            case LINING_RENEWAL_THICKNESS -> Stream.of(MeasuredQuantity.LINING_THICKNESS);
            case PAD_RENEWAL_THICKNESS -> Stream.of(MeasuredQuantity.PAD_THICKNESS);
            case FRICTION_DANGER_THICKNESS ->
                Stream.of(MeasuredQuantity.LINING_THICKNESS, MeasuredQuantity.PAD_THICKNESS);
            default -> Stream.of();
        };
    }

    /** The quantity that a threshold of a part is held against; null where it is of a figure. */
    private static @Nullable MeasuredQuantity proved(@Nullable ThresholdCode threshold) {
        return threshold == null
                ? null
                : switch (threshold) {
                    case LINING_THICKNESS_LEAST -> MeasuredQuantity.LINING_THICKNESS;
                    case PAD_THICKNESS_LEAST -> MeasuredQuantity.PAD_THICKNESS;
                    case PEDAL_RESERVE_LEAST -> MeasuredQuantity.PEDAL_RESERVE;
                    default -> null;
                };
    }

    /** The figure that a clause without one of its own decides about; null where the law has none for it. */
    private static @Nullable Aim aim(ClauseWord word) {
        if (word.clause() == ClauseCode.IMBALANCE_TARGET_NOT_BEDDED) {
            return new Aim(FigureKind.IMBALANCE, BrakeSystem.SERVICE);
        }
        ThresholdCode threshold = word.threshold();
        return threshold == null
                ? null
                : switch (threshold) {
                    case ONE_WHEEL_LOW_IMBALANCE, RETEST_IMBALANCE ->
                        new Aim(FigureKind.IMBALANCE, BrakeSystem.SERVICE);
                    case PARKING_IMBALANCE, RETEST_PARKING_IMBALANCE ->
                        new Aim(FigureKind.IMBALANCE, BrakeSystem.PARKING);
                    case RETEST_PARKING_EFFICIENCY -> new Aim(FigureKind.EFFICIENCY, BrakeSystem.PARKING);
                    case FLUCTUATION_FAULT, RETEST_FLUCTUATION, RETEST_FLUCTUATION_DISC ->
                        new Aim(FigureKind.FLUCTUATION, BrakeSystem.SERVICE);
                    case RETEST_LAG -> new Aim(FigureKind.RISE_LAG, BrakeSystem.SERVICE);
                    default -> null;
                };
    }

    private static @Nullable BigDecimal valueOf(ClauseWanted clause, ClauseWord word) {
        return clause.figure() == null
                ? MergedPolicy.valueOf(clause, word)
                : ClauseCheck.figure(clause.figure())
                        .map(figure -> figure.toBase(
                                Objects.requireNonNull(clause.value()), Objects.requireNonNull(clause.unit())))
                        .orElse(null);
    }

    /** The law's value in the unit of the clause, so that the two can be compared at a glance. */
    private static String inUnit(BigDecimal law, ClauseWanted clause, ClauseWord word) {
        BigDecimal value = Objects.requireNonNull(clause.value());
        BigDecimal base = Objects.requireNonNull(valueOf(clause, word));
        BigDecimal shown = base.signum() == 0 ? law : law.multiply(value).divide(base, java.math.MathContext.DECIMAL64);
        return PlainMeasure.of(shown, clause.unit());
    }

    /**
     * A figure that a clause decides about.
     *
     * @param figure the figure
     * @param brake brake applied
     */
    private record Aim(FigureKind figure, BrakeSystem brake) {}
}
