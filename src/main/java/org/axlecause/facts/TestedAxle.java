package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * The latest valid test of a brake shows this axle; only the second call of the rule base sees it.
 *
 * @param place the axle
 * @param brake brake that was tested
 * @param stage stage of that test
 * @param imbalance difference of the peaks of its wheels over the higher one; null where that test doesn't tell
 */
public record TestedAxle(
        Place place,
        BrakeSystem brake,
        Stage stage,
        @Nullable BigDecimal imbalance) implements Shown {

    @Override
    public String shown() {
        return brake + " brake of " + place + " tested (" + stage + ")"
                + (imbalance == null
                        ? ""
                        : ", difference of its wheels " + FigureWords.of(FigureKind.PEAK_IMBALANCE, imbalance));
    }
}
