package org.axlecause.pages;

import java.util.List;

/**
 * A case as both policies judge it.
 *
 * @param trial id of the trial
 * @param policy name of the policy
 * @param reference reference of the case
 * @param vehicle the vehicle
 * @param rows lines of work side by side, changed ones first
 * @param before advice on use, faults and price by the policy that judges it
 * @param after the same by the draft
 */
public record TrialCasePage(
        String trial, String policy, String reference, String vehicle, List<Row> rows, Side before, Side after) {

    /**
     * A line of the work by both policies.
     *
     * @param title what is done where
     * @param before what the policy that judges it makes of it
     * @param after what the draft makes of it
     * @param change added, dropped, otherwise or the same
     */
    public record Row(String title, String before, String after, String change) {}

    /**
     * One of the two sides.
     *
     * @param fitness advice on use
     * @param faults deficiencies
     * @param price sums
     * @param labour work whose price is missing
     * @param parts parts whose price is missing
     */
    public record Side(
            String fitness, List<String> faults, List<String> price, List<String> labour, List<String> parts) {}
}
