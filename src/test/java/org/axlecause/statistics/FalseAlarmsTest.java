package org.axlecause.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.axlecause.statistics.ReferenceRates.Standardised;
import org.axlecause.statistics.ReferenceRates.Stratum;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What is found in chains whose truth is known, because it was drawn: nothing where nothing is, and what was planted. */
class FalseAlarmsTest {

    private static final long SEED = Long.getLong("statistics.seed", 20_260_802L);
    private static final int CHAINS = 200;
    private static final int SITES = 40;
    private static final int MONTHS = 24;
    private static final int CASES_A_MONTH = 400;
    /** Rate of false discoveries that the judgements are asked for. */
    private static final double RATE = 0.05;
    /** Rate of returns by stratum: newer to older vehicles, with few and with many kilometres. */
    private static final double[] RETURNS = {0.02, 0.03, 0.05, 0.07, 0.10, 0.15};
    /** Share of cases with each cause. */
    private static final double[] CAUSES = {0.16, 0.12, 0.09, 0.07, 0.05, 0.03, 0.02, 0.01};

    private static final int HABIT_SITE = 7;
    private static final double HABIT = 2.1;
    private static final int OLD_VEHICLES_SITE = 20;
    private static final int BATCH_CAUSE = 4;
    private static final int BATCH_FROM = 15;
    private static final double BATCH = 1.7;

    @BeforeAll
    static void tell() {
        System.out.println("Chains drawn with -Dstatistics.seed=" + SEED);
    }

    @Test
    void without_plants_no_more_sites_stand_out_than_stated() {
        SplittableRandom chance = new SplittableRandom(SEED);
        int chainsWithDiscovery = 0;
        int beyondInner = 0;
        int beyondOuter = 0;

        for (int chain = 0; chain < CHAINS; chain++) {
            Funnel funnel = Funnel.ofRatios(sites(chance, 1).standardised());
            chainsWithDiscovery += discoveries(funnel).isEmpty() ? 0 : 1;
            beyondInner += count(funnel, ConfidenceLevel.OF_95_PERCENT);
            beyondOuter += count(funnel, ConfidenceLevel.OF_99_8_PERCENT);
        }

        System.out.printf(
                "Sites without plants: %d of %d chains with a discovery, %d and %d of %d sites beyond the limits%n",
                chainsWithDiscovery, CHAINS, beyondInner, beyondOuter, CHAINS * SITES);
        assertThat(chainsWithDiscovery).isLessThanOrEqualTo((int) (CHAINS * RATE));
        assertThat(beyondInner).isPositive().isLessThanOrEqualTo((int) (CHAINS * SITES * 0.05));
        assertThat(beyondOuter).isLessThanOrEqualTo((int) (CHAINS * SITES * 0.002));
    }

    @Test
    void the_site_with_the_habit_stands_out_and_the_one_with_old_vehicles_does_not() {
        SplittableRandom chance = new SplittableRandom(SEED + 1);
        int habitFound = 0;
        int oldVehiclesCalledBad = 0;
        int oldVehiclesLookBad = 0;
        int others = 0;
        double falseShares = 0;

        for (int chain = 0; chain < CHAINS; chain++) {
            Sites sites = sites(chance, HABIT);
            List<Integer> found = discoveries(Funnel.ofRatios(sites.standardised()));
            habitFound += found.contains(HABIT_SITE) ? 1 : 0;
            oldVehiclesCalledBad += found.contains(OLD_VEHICLES_SITE) ? 1 : 0;
            long wrong = found.stream().filter(site -> site != HABIT_SITE).count();
            others += (int) wrong;
            falseShares += found.isEmpty() ? 0 : (double) wrong / found.size();
            Funnel crude = Funnel.ofShares(sites.crudeShare(), sites.crude());
            oldVehiclesLookBad += crude.points().get(OLD_VEHICLES_SITE).verdict() == Funnel.Verdict.WITHIN ? 0 : 1;
        }

        System.out.printf(
                "Sites with a habit: found in %d of %d chains, %d other discoveries; old vehicles look bad in %d%n",
                habitFound, CHAINS, others, oldVehiclesLookBad);
        assertThat(habitFound).isGreaterThanOrEqualTo(CHAINS * 98 / 100);
        assertThat(oldVehiclesCalledBad).isLessThanOrEqualTo((int) (CHAINS * RATE));
        assertThat(oldVehiclesLookBad).isGreaterThan(CHAINS / 2);
        assertThat(falseShares / CHAINS).as("rate of false discoveries").isLessThanOrEqualTo(RATE);
    }

    @Test
    void without_plants_no_more_steps_are_told_than_stated() {
        SplittableRandom chance = new SplittableRandom(SEED + 2);
        int chainsWithDiscovery = 0;

        for (int chain = 0; chain < CHAINS; chain++) {
            chainsWithDiscovery += steps(chance, 1).isEmpty() ? 0 : 1;
        }

        System.out.printf("Months without plants: %d of %d chains with a discovery%n", chainsWithDiscovery, CHAINS);
        assertThat(chainsWithDiscovery).isLessThanOrEqualTo((int) (CHAINS * RATE));
    }

    @Test
    void the_batch_is_found_in_its_cause_and_near_its_month() {
        SplittableRandom chance = new SplittableRandom(SEED + 3);
        int found = 0;
        int near = 0;
        int others = 0;
        double falseShares = 0;

        for (int chain = 0; chain < CHAINS; chain++) {
            List<Step> steps = steps(chance, BATCH);
            int wrong = 0;
            for (Step step : steps) {
                if (step.cause() == BATCH_CAUSE) {
                    found++;
                    near += Math.abs(step.change().first() - BATCH_FROM) <= 2 ? 1 : 0;
                    assertThat(step.change().after().share())
                            .isGreaterThan(step.change().before().share());
                } else {
                    wrong++;
                }
            }
            others += wrong;
            falseShares += steps.isEmpty() ? 0 : (double) wrong / steps.size();
        }

        System.out.printf(
                "Months with a batch: found in %d of %d chains, %d within two months, %d other discoveries%n",
                found, CHAINS, near, others);
        assertThat(found).isGreaterThanOrEqualTo(CHAINS * 98 / 100);
        assertThat(near).isGreaterThanOrEqualTo(CHAINS * 80 / 100);
        assertThat(falseShares / CHAINS).as("rate of false discoveries").isLessThanOrEqualTo(RATE);
    }

    /** The e-Handbook's three standard errors: about once in 370 values of a steady process. */
    @Test
    void a_steady_month_leaves_the_limits_of_its_chart_about_once_in_370() {
        SplittableRandom chance = new SplittableRandom(SEED + 4);
        int out = 0;
        int months = 0;

        for (int chain = 0; chain < CHAINS; chain++) {
            for (double share : List.of(0.16, 0.12, 0.09)) {
                out += ControlChart.ofShares(months(chance, share, 1)).out().size();
                months += MONTHS;
            }
        }

        System.out.printf("Charts without plants: %d of %d months out%n", out, months);
        assertThat(out).isBetween(1, months / 370 + 3 * (int) Math.sqrt(months / 370.0));
    }

    private record Sites(List<List<Stratum>> bySite) {

        private List<Funnel.Count> standardised() {
            ReferenceRates rates =
                    ReferenceRates.of(bySite.stream().flatMap(List::stream).toList());
            List<Funnel.Count> counts = new ArrayList<>();
            for (int site = 0; site < bySite.size(); site++) {
                Standardised standardised = rates.standardise(bySite.get(site));
                counts.add(new Funnel.Count("site " + site, standardised.observed(), standardised.expected()));
            }
            return counts;
        }

        private Proportion all(List<Stratum> strata) {
            return strata.stream().map(Stratum::counts).reduce(new Proportion(0, 0), Proportion::plus);
        }

        private double crudeShare() {
            return all(bySite.stream().flatMap(List::stream).toList()).share();
        }

        private List<Funnel.Count> crude() {
            return bySite.stream()
                    .map(strata -> all(strata))
                    .map(all -> new Funnel.Count("site", all.count(), (double) all.of()))
                    .toList();
        }
    }

    /** Sites of 60 to 1200 cases, each with a mix of vehicles of its own; one sees old vehicles above all. */
    private static Sites sites(SplittableRandom chance, double habit) {
        List<List<Stratum>> bySite = new ArrayList<>();
        for (int site = 0; site < SITES; site++) {
            boolean old = site == OLD_VEHICLES_SITE;
            int cases = site == HABIT_SITE || old ? 800 : (int) (60 * Math.exp(chance.nextDouble() * 3));
            double lean = old ? 3 : 2 * (chance.nextDouble() - 0.5);
            double[] mix = IntStream.range(0, RETURNS.length)
                    .mapToDouble(stratum -> Math.exp(lean * stratum / (RETURNS.length - 1)))
                    .toArray();
            double sum = IntStream.range(0, mix.length)
                    .mapToDouble(index -> mix[index])
                    .sum();
            List<Stratum> strata = new ArrayList<>();
            for (int stratum = 0; stratum < RETURNS.length; stratum++) {
                int size = (int) Math.round(cases * mix[stratum] / sum);
                double share = RETURNS[stratum] * (site == HABIT_SITE ? habit : 1);
                strata.add(new Stratum("stratum " + stratum, drawn(chance, size, share)));
            }
            bySite.add(strata);
        }
        return new Sites(bySite);
    }

    private static List<Integer> discoveries(Funnel funnel) {
        return found(funnel.points().stream().map(Funnel.Point::pValue).toList());
    }

    private static int count(Funnel funnel, ConfidenceLevel level) {
        return (int) funnel.points().stream()
                .filter(point -> point.pValue() < 1 - level.level())
                .count();
    }

    private record Step(int cause, StepChange change) {}

    private static List<Step> steps(SplittableRandom chance, double batch) {
        List<StepChange> changes = new ArrayList<>();
        for (int cause = 0; cause < CAUSES.length; cause++) {
            List<Proportion> months = months(chance, CAUSES[cause], cause == BATCH_CAUSE ? batch : 1);
            changes.add(StepChange.strongest(months).orElseThrow());
        }
        return found(changes.stream().map(StepChange::pValue).toList()).stream()
                .map(cause -> new Step(cause, changes.get(cause)))
                .toList();
    }

    private static List<Proportion> months(SplittableRandom chance, double share, double batch) {
        return IntStream.range(0, MONTHS)
                .mapToObj(month -> drawn(chance, CASES_A_MONTH, share * (month < BATCH_FROM ? 1 : batch)))
                .toList();
    }

    private static List<Integer> found(List<Double> pValues) {
        List<Boolean> discoveries = new FalseDiscovery(pValues).discoveries(RATE);
        return IntStream.range(0, discoveries.size())
                .filter(discoveries::get)
                .boxed()
                .toList();
    }

    private static Proportion drawn(SplittableRandom chance, int size, double share) {
        int count = 0;
        for (int draw = 0; draw < size; draw++) {
            count += chance.nextDouble() < share ? 1 : 0;
        }
        return new Proportion(count, size);
    }
}
