package org.axlecause.facts;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/**
 * How likely a figure that is held against a limit lies beyond it in truth (JCGM 106:2012). It stands beside the verdict,
 * which follows the figure as read.
 *
 * @param figure the figure as read
 * @param limit the limit it is held against
 * @param nonConforming probability that the true value breaks the limit
 * @param misreading probability that one reading on another tester of the same accuracy gives the wrong verdict; null
 *     where the verdict is clear
 */
public record LimitRisk(
        Figure figure,
        Limit limit,
        BigDecimal nonConforming,
        @Nullable BigDecimal misreading) implements Shown {

    /** Whether the figure as read breaks the limit. */
    public boolean isBroken() {
        return limit.isBrokenBy(figure);
    }

    /** Probability that the verdict by the figure as read is wrong. */
    public BigDecimal ofWrongVerdict() {
        return isBroken() ? BigDecimal.ONE.subtract(nonConforming) : nonConforming;
    }

    /** Whether the verdict may be wrong with more than that probability. */
    public boolean isTooClose(BigDecimal most) {
        return ofWrongVerdict().compareTo(most) > 0;
    }

    /** The doubt in words. */
    public String says() {
        String verdict = isBroken() ? "is beyond" : "keeps";
        return figure.kind() + " " + figure.place() + " = " + FigureWords.of(figure.kind(), figure.value()) + " ("
                + figure.stage() + " test, " + figure.brake() + " brake) " + verdict + " the " + limit.bound() + " of "
                + FigureWords.of(limit.kind(), limit.value())
                + (limit.severity() == null ? "" : " (" + limit.severity() + ")")
                + ", but with a probability of " + percent(ofWrongVerdict()) + " the true value "
                + (isBroken() ? "keeps it" : "is beyond it")
                + ": too close to call"
                + (misreading == null
                        ? "."
                        : ". One reading on another tester of the same accuracy would still misjudge it with "
                                + percent(misreading) + ".");
    }

    @Override
    public String shown() {
        return says();
    }

    private static String percent(BigDecimal probability) {
        return probability.movePointRight(2).setScale(0, RoundingMode.HALF_EVEN).toPlainString() + " %";
    }
}
