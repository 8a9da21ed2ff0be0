package org.axlecause.statistics;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The split of a row of periods at which the shares before and after differ most, and whether that is more than chance.
 *
 * @param first place from 0 of the first period after the change
 * @param before all periods before it
 * @param after it and all periods from there
 * @param pValue probability that shares which never change differ that much at their best split: the smallest p-value of
 *     all splits times their number, which is too large rather than too small (Bonferroni; Miller and Siegmund 1982,
 *     Biometrics 38:1011, on how far)
 */
public record StepChange(int first, Proportion before, Proportion after, double pValue) {

    /** The strongest change; none where fewer than two periods have cases. */
    public static Optional<StepChange> strongest(List<Proportion> periods) {
        List<StepChange> splits = new ArrayList<>();
        Proportion all = periods.stream().reduce(new Proportion(0, 0), Proportion::plus);
        Proportion before = new Proportion(0, 0);
        for (int first = 1; first < periods.size(); first++) {
            before = before.plus(periods.get(first - 1));
            Proportion after = new Proportion(all.count() - before.count(), all.of() - before.of());
            if (before.of() > 0 && after.of() > 0 && periods.get(first).of() > 0) {
                double pValue = new TwoProportions(before, after).significance().pValue();
                splits.add(new StepChange(first, before, after, pValue));
            }
        }
        return splits.stream()
                .min((one, other) -> Double.compare(one.pValue, other.pValue))
                .map(best ->
                        new StepChange(best.first, best.before, best.after, Math.min(1, best.pValue * splits.size())));
    }
}
