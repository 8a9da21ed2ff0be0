package org.axlecause.statistics;

import java.util.List;

/** Weeks in remission of 42 children (Freireich et al. 1963, Blood 21:699; Gehan 1965, Biometrika 52:203). */
final class SurvivalCurves {

    private SurvivalCurves() {}

    /** Treated with 6-mercaptopurine. */
    static KaplanMeier treated() {
        return KaplanMeier.of(List.of(
                new SurvivalTime(6, 3, 1),
                new SurvivalTime(7, 1, 0),
                new SurvivalTime(9, 0, 1),
                new SurvivalTime(10, 1, 1),
                new SurvivalTime(11, 0, 1),
                new SurvivalTime(13, 1, 0),
                new SurvivalTime(16, 1, 0),
                new SurvivalTime(17, 0, 1),
                new SurvivalTime(19, 0, 1),
                new SurvivalTime(20, 0, 1),
                new SurvivalTime(22, 1, 0),
                new SurvivalTime(23, 1, 0),
                new SurvivalTime(25, 0, 1),
                new SurvivalTime(32, 0, 2),
                new SurvivalTime(34, 0, 1),
                new SurvivalTime(35, 0, 1)));
    }

    static KaplanMeier placebo() {
        return KaplanMeier.of(List.of(
                new SurvivalTime(1, 2, 0),
                new SurvivalTime(2, 2, 0),
                new SurvivalTime(3, 1, 0),
                new SurvivalTime(4, 2, 0),
                new SurvivalTime(5, 2, 0),
                new SurvivalTime(8, 4, 0),
                new SurvivalTime(11, 2, 0),
                new SurvivalTime(12, 2, 0),
                new SurvivalTime(15, 1, 0),
                new SurvivalTime(17, 1, 0),
                new SurvivalTime(22, 1, 0),
                new SurvivalTime(23, 1, 0)));
    }
}
