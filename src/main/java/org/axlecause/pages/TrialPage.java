package org.axlecause.pages;

import java.util.List;
import org.axlecause.policy.TrialResult;
import org.axlecause.policy.TrialViews.TrialView;

/**
 * A trial as far as it has come.
 *
 * @param trial the trial
 * @param all of all cases
 * @param byCause by the root cause that ranks first
 * @param bySite by site
 * @param examples changed cases
 */
public record TrialPage(TrialView trial, Tally all, List<Tally> byCause, List<Tally> bySite, List<Example> examples) {

    /** Whether it is still being done. */
    public boolean running() {
        return trial.state().equals("running");
    }

    /**
     * Numbers of some cases.
     *
     * @param of which cases
     * @param tally the numbers
     * @param money what the required and agreed work would have cost more; empty where its price is the same
     * @param withRecommended the same with the recommended work
     */
    public record Tally(String of, TrialResult.Tally tally, String money, String withRecommended) {

        /** Whether a price would have been another. */
        public boolean priced() {
            return !money.isEmpty() || !withRecommended.isEmpty();
        }
    }

    /**
     * A changed case.
     *
     * @param reference its reference
     * @param site its site
     * @param cause the cause in words
     * @param changes what the draft changes, in words
     * @param money what the required and agreed work would have cost more; empty where its price is the same
     */
    public record Example(String reference, String site, String cause, List<String> changes, String money) {}
}
